package demo

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// rink is what is found in the rink dress with parts of its spec changed.
func rink(t *testing.T, swap ...string) []rules.Finding {
	t.Helper()
	return changed(t, "rink-dress", swap...)
}

// changed is what is found in a garment of the wardrobe with parts of its spec
// changed: each first occurrence of the one text is replaced by the other.
func changed(t *testing.T, garment string, swap ...string) []rules.Finding {
	t.Helper()
	files := fstest.MapFS{}
	file := garment + ".garment.hcl"
	for _, name := range []string{"house.hcl", file} {
		src, err := fs.ReadFile(Files(), name)
		require.NoError(t, err)
		text := string(src)
		for i := 0; name != "house.hcl" && i < len(swap); i += 2 {
			require.Contains(t, text, swap[i])
			text = strings.Replace(text, swap[i], swap[i+1], 1)
		}
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	in := &inspect.Inspector{Engine: engine, FS: files}
	report := in.File(t.Context(), file, inspect.Options{Today: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)})
	require.Empty(t, report.Diagnostics)
	return report.Result.Findings
}

// followed are the rules that a finding tells of as notes, once each.
func followed(f rules.Finding) []string {
	var out []string
	for _, o := range f.Follow {
		if len(out) == 0 || out[len(out)-1] != o.Rule.Name {
			out = append(out, o.Rule.Name)
		}
	}
	return out
}

// The rink dress has a fitting's alterations on both layers. Where one of them
// is forgotten or slips, on a side of a seam or on a layer, there is one finding,
// which names the alteration, the edge and by how much, and tells what comes of it.
func TestABrokenAlterationIsFoundByName(t *testing.T) {
	const edges = "edges  = [shell.front.side, shell.back.side, brief.front.side, brief.back.side]"
	const amounts = "inward = { bust = 0, waist = 0.3, tummy = 0.1 }\n}"
	brief := func(amounts string) string {
		return "\nalter \"second-fitting-brief\" {\n  edges  = [brief.front.side, brief.back.side]\n  inward = { " + amounts + " }\n}"
	}
	for _, c := range []struct {
		name     string
		swap     []string
		severity rules.Severity
		says     []string
		follow   []string
	}{
		{"on the shell only", []string{edges, "edges  = [shell.front.side, shell.back.side]"}, rules.Error, []string{
			"alter.second-fitting re-drew shell.front.side, and nothing re-drew brief.front.side, which lies under it in inside.front",
			"So it is with shell.back.side and brief.back.side, which lies under it in inside.back",
			"3 mm in against nothing at the waist level, 1 mm in against nothing at the tummy level",
		}, []string{"inner-within-outer"}},
		{"on the brief only", []string{edges, "edges  = [brief.front.side, brief.back.side]"}, rules.Note, []string{
			"alter.second-fitting re-drew brief.front.side, and nothing re-drew shell.front.side, which lies over it in inside.front",
			"The room between them is still what is asked for",
		}, nil},
		{"not on the shell's back", []string{edges, "edges  = [shell.front.side, brief.front.side, brief.back.side]"}, rules.Warning, []string{
			"alter.second-fitting re-drew shell.front.side, and nothing re-drew shell.back.side, which it is sewn to by seam.shell-side",
		}, []string{"seam-walk"}},
		{"not on the brief's back", []string{edges, "edges  = [shell.front.side, shell.back.side, brief.front.side]"}, rules.Error, []string{
			"alter.second-fitting re-drew brief.front.side, and nothing re-drew brief.back.side, which it is sewn to by seam.brief-side",
		}, []string{"seam-walk", "inner-within-outer"}},
		{"by less at the waist of the brief", []string{edges, "edges  = [shell.front.side, shell.back.side]", amounts, amounts + brief("bust = 0, waist = 0.1, tummy = 0.1")},
			rules.Note, []string{
				"alter.second-fitting re-drew shell.front.side, and brief.front.side, which lies under it in inside.front, was not altered alike: 3 mm in against 1 mm in at the waist level.",
			}, nil},
		{"by nothing at the waist of the brief", []string{edges, "edges  = [shell.front.side, shell.back.side]", amounts, amounts + brief("bust = 0, waist = 0, tummy = 0.1")},
			rules.Error, []string{
				"alter.second-fitting re-drew shell.front.side, and brief.front.side, which lies under it in inside.front, was not altered alike: 3 mm in against nothing at the waist level.",
			}, []string{"inner-within-outer"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := rink(t, c.swap...)
			require.Len(t, found, 1)
			f := found[0]
			require.Equal(t, "alteration-partner", f.Rule.Name)
			require.Equal(t, "alter.second-fitting", f.Subject)
			require.Equal(t, c.severity, f.Severity)
			for _, says := range c.says {
				require.Contains(t, f.Message, says)
			}
			require.Equal(t, c.follow, followed(f))
			require.NotNil(t, f.Mend)
		})
	}
}

// An end that was moved and its neighbour's left is one finding, whatever else is
// no longer as it must be by it.
func TestAnOutlineWithAGapIsOneFinding(t *testing.T) {
	const centre = `edge "centre" { line = [[0, 51.2], [0, -12]] }`
	for _, c := range []struct {
		name, was, is, mend string
		follow              []string
	}{
		{"the centre ends inside the neck", centre, `edge "centre" { line = [[0, 51.2], [0.4, -12]] }`,
			"end shell.front.centre where shell.front.neck starts", []string{"shared-edge", "inner-within-outer"}},
		{"the centre starts inside the hem", centre, `edge "centre" { line = [[0.4, 51.2], [0, -12]] }`,
			"start shell.front.centre where shell.front.hem ends", []string{"inner-within-outer"}},
		{"the neck starts above the centre", `edge "neck" { curve = [[0, -12],`, `edge "neck" { curve = [[0, -12.4],`,
			"start shell.front.neck where shell.front.centre ends", []string{"shared-edge"}},
		{"the hem ends above the centre", `[3, 51.2], [0, 51.2]]`, `[3, 51.2], [0, 50.8]]`,
			"end shell.front.hem where shell.front.centre starts", []string{"fold-straight"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := rink(t, c.was, c.is)
			require.Len(t, found, 1)
			require.Equal(t, "outline-closed", found[0].Rule.Name)
			require.Equal(t, "shell.front", found[0].Subject)
			require.Equal(t, c.follow, followed(found[0]))
			require.Contains(t, found[0].Mend.Title, c.mend)
			require.Len(t, found[0].Related, 1+len(found[0].Follow))
		})
	}
	t.Run("another fault of the same piece is found besides", func(t *testing.T) {
		var found []string
		for _, f := range rink(t, centre, `edge "centre" { line = [[0, 51.2], [0.4, -12]] }`, "hem        = [draft.tummy + 9.2, 43.5]", "hem        = [draft.tummy + 9.2, 44.1]") {
			found = append(found, f.Rule.Name)
		}
		require.Contains(t, found, "outline-closed")
		require.Contains(t, found, "seam-walk")
		require.NotContains(t, found, "shared-edge")
	})
}
