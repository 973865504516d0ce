package report

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/inspect"
)

var walk = &rules.Rule{Name: "seam-walk", Family: "seams", Severity: rules.Error}

func finding(severity rules.Severity, line int) rules.Finding {
	return rules.Finding{Outcome: rules.Outcome{
		Rule: walk, Subject: "seam.side", Status: rules.Found, Severity: severity, Message: "it does not walk",
		Numeric: true, Measured: 4.1, Limit: 3.2, Margin: -0.9, Off: 4.1, Unit: rules.Millimetres, Size: "40",
		Place: model.Place{File: "a.garment.hcl", Start: model.Pos{Line: line, Column: 3}, End: model.Pos{Line: line, Column: 20}},
	}, Sizes: []string{"38", "40"}}
}

func inspected(findings ...rules.Finding) *inspect.Report {
	return &inspect.Report{File: "shop/a.garment.hcl", Garment: "a", Result: rules.Result{Findings: findings, Passed: 7}}
}

func TestVerdict(t *testing.T) {
	broken := inspect.Unread("b.garment.hcl", "the file is empty")
	half := inspected(finding(rules.Error, 1))
	half.Diagnostics = broken.Diagnostics
	undone := inspected()
	undone.Result.NotPossible = []rules.Finding{{Outcome: rules.Outcome{Rule: walk, Reason: "no drawing"}}}
	nothing := &inspect.Report{File: "n.garment.hcl", Garment: "n"}
	for _, c := range []struct {
		name    string
		reports []*inspect.Report
		least   rules.Severity
		want    string
		forbids bool
	}{
		{"clean", []*inspect.Report{inspected()}, rules.Error, "may be cut", false},
		{"an error", []*inspect.Report{inspected(finding(rules.Error, 1))}, rules.Error, "do not cut: 1 error", true},
		{"a warning", []*inspect.Report{inspected(finding(rules.Warning, 1))}, rules.Error, "may be cut: 1 warning", false},
		{"a warning that counts", []*inspect.Report{inspected(finding(rules.Warning, 1))}, rules.Warning, "do not cut: 1 warning", true},
		{"a note that counts", []*inspect.Report{inspected(finding(rules.Note, 1))}, rules.Note, "do not cut: 1 note", true},
		{"unreadable", []*inspect.Report{broken}, rules.Error, "cannot say: the spec cannot be read", false},
		{"an error in what could be read", []*inspect.Report{half}, rules.Error, "do not cut: 1 error, not checked in full", true},
		{"checked in part", []*inspect.Report{undone}, rules.Error, "may be cut: as far as could be checked, 1 check was not possible", false},
		{"nothing checked", []*inspect.Report{nothing}, rules.Error, "cannot say: nothing could be checked", false},
		{"one of several", []*inspect.Report{inspected(), broken, inspected(finding(rules.Error, 1))}, rules.Error, "do not cut: 1 of 3 garments", true},
		{"several unread", []*inspect.Report{inspected(), broken, broken}, rules.Error, "cannot say: 2 of 3 garments", false},
		{"all clean", []*inspect.Report{inspected(), inspected()}, rules.Error, "may be cut: all 2 garments", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := Of(c.reports, Options{Least: c.least})
			require.Equal(t, c.want, d.Verdict().String())
			require.Equal(t, c.forbids, d.Forbids())
		})
	}
}

// A finding keeps its fingerprint when lines move, when the figure changes and
// when the folder is named otherwise, and shares it with no other.
func TestFingerprint(t *testing.T) {
	print := func(r *inspect.Report) string {
		return Of([]*inspect.Report{r}, Options{}).Garments[0].Findings[0].Fingerprint
	}
	first := print(inspected(finding(rules.Error, 12)))
	require.Len(t, first, 24)

	moved := finding(rules.Warning, 99)
	moved.Measured = 2
	other := inspected(moved)
	other.File = "a.garment.hcl"
	require.Equal(t, first, print(other))

	notch := finding(rules.Error, 12)
	notch.Key = "waist"
	require.NotEqual(t, first, print(inspected(notch)))
	elsewhere := finding(rules.Error, 12)
	elsewhere.Subject = "seam.front"
	require.NotEqual(t, first, print(inspected(elsewhere)))
}

// A figure that no number can be given for is left out, whole.
func TestFigureWithoutEnd(t *testing.T) {
	open := finding(rules.Error, 1)
	open.Limit = math.Inf(1)
	plain := finding(rules.Error, 2)
	plain.Numeric = false
	d := Of([]*inspect.Report{inspected(open, plain)}, Options{})
	for _, f := range d.Garments[0].Findings {
		require.Nil(t, f.Figure)
	}
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, d))
	require.NotContains(t, b.String(), "measured")
}

// What is exactly as it is meant to be is not a close call; what has used up
// its room is.
func TestClosest(t *testing.T) {
	exact, tight, low := finding(rules.Off, 1), finding(rules.Off, 2), finding(rules.Off, 3)
	exact.Measured, exact.Limit, exact.Margin = 1e-14, 1.6, 1.6
	tight.Measured, tight.Limit, tight.Margin = -1.5, 1.6, 0.1
	low.Measured, low.Limit, low.Margin = 0, 0, 0
	r := inspected()
	r.Result.Closest = []rules.Finding{exact, tight, low}
	closest := Of([]*inspect.Report{r}, Options{Closest: 5}).Garments[0].Closest
	require.Len(t, closest, 2)
	require.Equal(t, 0.1, closest[0].Margin)
	require.Len(t, Of([]*inspect.Report{r}, Options{Closest: 1}).Garments[0].Closest, 1)
}

// The passes that are listed are the same whether or not the others were left
// out before.
func TestTrimmedReportsListTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var passes []rules.Finding
		for range rapid.IntRange(0, 12).Draw(t, "passes") {
			f := finding(rules.Off, 1)
			f.Subject = rapid.SampledFrom([]string{"seam.a", "seam.b", "seam.c"}).Draw(t, "subject")
			f.Key = rapid.SampledFrom([]string{"", "length", "corner a", "corner b"}).Draw(t, "key")
			f.Measured = rapid.SampledFrom([]float64{0, 1, 2, 2.001}).Draw(t, "measured")
			f.Limit, f.Margin = 3, 3-f.Measured
			passes = append(passes, f)
		}
		most := rapid.IntRange(0, 4).Draw(t, "most")
		r := inspected()
		r.Result.Closest = passes
		whole := Of([]*inspect.Report{r}, Options{Closest: most}).Garments
		Trim(r, most)
		require.Equal(t, whole, Of([]*inspect.Report{r}, Options{Closest: most}).Garments)
		if most == 0 {
			require.Empty(t, r.Result.Closest)
		}
	})
}

// Findings that say the same of several things are one entry, in the place of
// the first; others stay apart.
func TestFold(t *testing.T) {
	edge := func(subject string, line int) Finding {
		return Finding{Rule: "edge-unused", Severity: "warning", Subject: subject, Message: "nothing is done with " + subject,
			Range: model.Place{File: "a", Start: model.Pos{Line: line}}}
	}
	mended := edge("shell.d", 4)
	mended.Mend = &rules.Mend{Title: "sew it"}
	worse := edge("shell.e", 5)
	worse.Severity = "error"
	entries := fold([]Finding{edge("shell.a", 1), {Rule: "seam-walk", Message: "other"}, edge("shell.b", 2), mended, worse, edge("shell.c", 3)})
	require.Len(t, entries, 4)
	require.Equal(t, "shell.a", entries[0].Subject)
	require.Equal(t, []Finding{edge("shell.b", 2), edge("shell.c", 3)}, entries[0].likewise)
}

// JSON keeps what JSON can, and lets nothing through that steers a terminal.
func TestWriteJSON(t *testing.T) {
	text := "a\x1b[31m \u009b2J \u202e <b> & 袖"
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, map[string]string{"title": text}))
	require.NotContains(t, b.String(), "\x1b")
	require.NotContains(t, b.String(), "\u009b")
	require.NotContains(t, b.String(), "\u202e")
	require.Contains(t, b.String(), "<b> & 袖")
	var back map[string]string
	require.NoError(t, json.Unmarshal(b.Bytes(), &back))
	require.Equal(t, text, back["title"])
}

// A writer that fails is told, by every format.
func TestWriteFails(t *testing.T) {
	d := Of([]*inspect.Report{inspected(finding(rules.Error, 1))}, Options{})
	for _, f := range Formats() {
		require.ErrorIs(t, f.Write(full{}, d, Look{Width: 80}), errFull, f.Name)
	}
}
