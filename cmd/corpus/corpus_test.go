package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/corpus/internal/faults"
	"understitch/cmd/corpus/internal/plan"
	"understitch/cmd/corpus/internal/tally"
	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/ruletest"
)

// A few hundred garments, each kind of fault several times. The targets are
// those of docs/corpus.md, which gives the figures of some thousands.
func TestFaultsAreFoundOnceAndCleanGarmentsStaySilent(t *testing.T) {
	dir := t.TempDir()
	expected, err := write(dir, plan.Size{Garments: 480, Sizes: 4, Faults: 0.6, Seed: 20})
	require.NoError(t, err)
	cases, err := tally.Run(dir, expected)
	require.NoError(t, err)
	n := tally.Of(cases)
	var said bytes.Buffer
	n.Print(&said)

	require.Equal(t, 288, n.Planted)
	require.Equal(t, 192, n.Clean)
	require.Empty(t, n.Unread, said.String())
	require.GreaterOrEqual(t, float64(n.Found), 0.995*float64(n.Planted), said.String())
	require.Empty(t, n.Twice, said.String())
	require.Empty(t, n.Disturbed, said.String())
	require.Greater(t, n.Passed, 200*n.Clean, "hardly anything was looked at")
	// Garments of paper pieces have no outlines to look at: some 25 looks each, of hundreds.
	require.Less(t, n.NotPossible, n.Passed/50, "much could not be checked, which keeps any garment silent")

	planted := map[string]bool{}
	for _, c := range cases {
		planted[c.Fault] = true
	}
	for _, f := range faults.All(4) {
		require.True(t, planted[f.Name], "no garment has the fault %q", f.Name)
	}
}

// Wherever on the paper they are drafted, and whichever way round, the rules
// say the same of the corpus's garments.
func TestGarmentsAreTheSameInEveryFrame(t *testing.T) {
	dir := t.TempDir()
	_, err := write(dir, plan.Size{Garments: 60, Sizes: 2, Faults: 0.5, Seed: 31})
	require.NoError(t, err)
	house, diags := spec.LoadHouse(filepath.Join(dir, "house.hcl"))
	require.False(t, model.Errors(diags))
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	settings, diags := engine.Settings(house.Model())
	require.Empty(t, diags)
	files, err := filepath.Glob(filepath.Join(dir, "*.garment.hcl"))
	require.NoError(t, err)
	require.Len(t, files, 60)
	var garments []ruletest.Garment
	for _, file := range files {
		doc, diags := spec.Load(file, house)
		require.False(t, model.Errors(diags))
		garments = append(garments, ruletest.Garment{Name: filepath.Base(file), Draft: func() *model.Garment {
			g, diags := doc.Garment(doc.BaseSize())
			require.False(t, model.Errors(diags))
			return g
		}})
	}
	ruletest.SameInEveryFrame(t, engine, settings, garments, 10000, map[string]string{
		"waiver-current":  "waivers are held against what was found once all sizes are checked",
		"pleat-fold":      unplanted["pleat-fold"],
		"lacing-gap":      unplanted["lacing-gap"],
		"template-points": unplanted["template-points"],
		"tape-pair":       "none of these garments names a tape for each half of a closure",
	})
}

// The tally tells what is missed, said twice and disturbed, so that the test
// above can fail.
func TestTally(t *testing.T) {
	fault := tally.Expect{Fault: "a fault", Rule: "seam-walk", Subject: "seam.side"}
	finding := func(rule, subject, severity string) tally.Finding {
		return tally.Finding{Rule: rule, Subject: subject, Severity: severity}
	}
	walk := finding("seam-walk", "seam.side", "error")
	for _, c := range []struct {
		name                                   string
		expect                                 tally.Expect
		findings                               []tally.Finding
		found, missed, twice, again, disturbed int
	}{
		{"found", fault, []tally.Finding{walk}, 1, 0, 0, 0, 0},
		{"missed", fault, nil, 0, 1, 0, 0, 0},
		{"found at another thing", fault, []tally.Finding{finding("seam-walk", "seam.back", "error")}, 0, 1, 0, 1, 0},
		{"found by another rule", fault, []tally.Finding{finding("ease-side", "seam.side", "error")}, 0, 1, 1, 0, 0},
		{"by two rules", fault, []tally.Finding{walk, finding("hem-drop", "inside.back", "warning")}, 1, 0, 1, 0, 0},
		{"with a note", fault, []tally.Finding{walk, finding("suppression", "lining", "note")}, 1, 0, 0, 0, 0},
		{"twice by one rule", fault, []tally.Finding{walk, walk}, 1, 0, 0, 1, 0},
		{"in order, silent", tally.Expect{}, nil, 0, 0, 0, 0, 0},
		{"in order, with a note", tally.Expect{}, []tally.Finding{finding("suppression", "lining", "note")}, 0, 0, 0, 0, 0},
		{"in order, with a warning", tally.Expect{}, []tally.Finding{finding("suppression", "lining", "warning")}, 0, 0, 0, 0, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			n := tally.Of([]tally.Case{{Expect: c.expect, Findings: c.findings}})
			require.Equal(t, []int{c.found, c.missed, c.twice, c.again, c.disturbed},
				[]int{n.Found, len(n.Missed), len(n.Twice), len(n.Again), len(n.Disturbed)})
		})
	}
}

func TestEveryRuleHasAFault(t *testing.T) {
	planted := map[string]bool{}
	names := map[string]bool{}
	for _, f := range faults.All(4) {
		planted[f.Rule] = true
		require.False(t, names[f.Name], "two kinds of fault are called %q", f.Name)
		names[f.Name] = true
	}
	for _, r := range builtin.Rules() {
		if unplanted[r.Name] == "" {
			require.True(t, planted[r.Name], "no fault is planted for %s", r.Name)
		}
	}
}

// unplanted are the rules for which no fault is planted, and why.
var unplanted = map[string]string{
	"pleat-fold":      "no garment of the corpus states how a pleat is folded",
	"lacing-gap":      "no garment of the corpus states the gap of a lacing",
	"template-points": "no garment of the corpus states points that a template passes through",
}

// The same flags write the same bytes, and another seed another wardrobe.
func TestWritesTheSameAgain(t *testing.T) {
	folder := func(seed string) map[string]string {
		dir := t.TempDir()
		require.NoError(t, run([]string{"--garments", "40", "--sizes", "4", "--faults", "0.5", "--seed", seed, dir}, io.Discard, io.Discard))
		entries, err := os.ReadDir(dir)
		require.NoError(t, err)
		out := map[string]string{}
		for _, e := range entries {
			text, err := os.ReadFile(filepath.Join(dir, e.Name()))
			require.NoError(t, err)
			out[e.Name()] = string(text)
		}
		return out
	}
	first := folder("3")
	require.Len(t, first, 42, "the garments, the house and what is expected")
	require.Equal(t, first, folder("3"))
	require.NotEqual(t, first, folder("4"))

	var expected []tally.Expect
	require.NoError(t, json.Unmarshal([]byte(first["expected.json"]), &expected))
	faulty := 0
	for _, e := range expected {
		require.Contains(t, first, e.File)
		if e.Fault != "" {
			faulty++
			require.Contains(t, first[e.File], "# Planted: "+e.Fault)
		}
	}
	require.Equal(t, 20, faulty)
}

func TestRefusesFlagsThatMakeNoSense(t *testing.T) {
	for _, args := range [][]string{
		{}, {"a", "b"}, {"--garments", "0", "a"}, {"--sizes", "0", "a"}, {"--faults", "1.5", "a"}, {"--faults", "NaN", "a"}, {"--size", "3", "a"},
	} {
		require.Error(t, run(args, io.Discard, io.Discard), strings.Join(args, " "))
	}
}

// The page lists each kind of fault with the rule that must find it.
func TestThePageListsAllFaults(t *testing.T) {
	page, err := os.ReadFile("../../docs/corpus.md")
	require.NoError(t, err)
	for _, f := range faults.All(4) {
		require.Contains(t, string(page), "| "+f.Name+" | `"+f.Rule+"` |\n")
	}
}
