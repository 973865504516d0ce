package closures

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/inspect"
	"understitch/rules/ruletest"
)

func TestExamples(t *testing.T) {
	ruletest.Rule(t, TapeCut)
	ruletest.Rule(t, Edges)
	ruletest.Rule(t, TapePair)
	ruletest.Rule(t, ZipLength)
	ruletest.Rule(t, ButtonSpacing)
	ruletest.Rule(t, LacingGap)
}

// taped is a garment with two paper edges closed by a tape.
func taped(pitch, head, clear, first, second float64, more ...string) string {
	return fmt.Sprintf(`
garment "test" { unit = "mm" }
tape "hook" {
  kind  = "hook-and-eye"
  pitch = %v
  head  = %v
  clear = %v
}
layer "brief" {
  side = "inner"
  piece "front" {
    edge "gusset" { length = %v }
    edge "rest"   { length = 700 }
  }
  piece "back" {
    edge "gusset" { length = %v }
    edge "rest"   { length = 700 }
  }
}
closure "gusset" {
  kind  = "tape"
  tape  = tape.hook
  edges = [brief.front.gusset, brief.back.gusset]
  %s
}
`, pitch, head, clear, first, second, strings.Join(more, "\n"))
}

// look runs one rule over a spec and gives what it came to.
func look(t *testing.T, rule *rules.Rule, src string) rules.Result {
	t.Helper()
	engine, err := rules.New([]*rules.Rule{rule})
	require.NoError(t, err)
	report := (&inspect.Inspector{Engine: engine}).Source(t.Context(), "no-house-here/test.garment.hcl", []byte(src), inspect.Options{})
	require.Empty(t, report.Diagnostics)
	return report.Result
}

// The spans follow from the layout, head 9 mm and 1.5 mm clear (closed form);
// the pitches are those of tapes by length (common practice, no source).
func TestTapeCutSpans(t *testing.T) {
	for _, c := range []struct {
		pitch, length float64
		cut           bool
	}{
		{19.05, 45, true}, {19.05, 48, false}, {19.05, 50, false}, {19.05, 55, true}, {19.05, 60, true},
		{19.05, 64, true}, {19.05, 67, false}, {19.05, 70, true}, {19.05, 11.9, false}, {19.05, 12, true},
		{19.05, 26.1, true}, {19.05, 26.2, false}, {19.05, 31, false}, {19.05, 31.05, true}, {19.05, 83.25, true}, {19.05, 83.3, false},
		{12.7, 12, true}, {12.7, 13.4, true}, {12.7, 13.5, false}, {12.7, 24.6, false}, {12.7, 24.7, true},
		{12.7, 26.1, true}, {12.7, 38.8, true}, {12.7, 38.9, false}, {12.7, 51.5, true}, {12.7, 51.6, false},
		{25.4, 11.9, false}, {25.4, 12, true}, {25.4, 38.1, true}, {25.4, 64.2, true}, {25.4, 63, true}, {25.4, 115, true},
		{38.1, 64.2, true}, {38.1, 11, false}, {38.1, 178.5, true}, {38.1, 100, true},
	} {
		t.Run(fmt.Sprintf("%v mm at a pitch of %v", c.length, c.pitch), func(t *testing.T) {
			// An end of a span is hit but for the rounding of decimal fractions.
			if c.cut {
				for _, l := range []float64{c.length - 1e-9, c.length + 1e-9} {
					if len(look(t, TapeCut, taped(c.pitch, 9, 1.5, l, l)).Findings) == 0 {
						return
					}
				}
				t.Fatal("can be cut, and is found at fault")
			}
			require.Len(t, look(t, TapeCut, taped(c.pitch, 9, 1.5, c.length, c.length)).Findings, 1)
		})
	}
}

func TestTapeCutRoom(t *testing.T) {
	for _, c := range []struct {
		name          string
		pitch, length float64
		room          float64
	}{
		{"midway in the gaps", 19.05, 57.15, 7.05},
		{"near the lower end", 19.05, 51.10, 1},
		{"near the upper end", 19.05, 44.15, 1},
		{"two spans hold it, the wider room counts", 38.1, 60, 9.9},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, TapeCut, taped(c.pitch, 9, 1.5, c.length, c.length))
			require.Empty(t, result.Findings)
			require.Len(t, result.Closest, 1)
			require.InDelta(t, c.room, result.Closest[0].Margin, 1e-9)
		})
	}
}

func TestTapeCutMessage(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{
			"between two and three hooks", taped(19.05, 9, 1.5, 50, 50),
			"closure.gusset is 50 mm long, and tape.hook cannot be cut there without meeting one of its hooks. It can be cut at " +
				"45.1 mm with two hooks (4.9 mm shorter), best at 38.1 mm, with 5 mm clear of metal at both ends, or at " +
				"50.1 mm with three hooks (0.1 mm longer), best at 57.2 mm, with 5 mm clear of metal at both ends.",
		},
		{
			"shorter than one hook needs", taped(19.05, 9, 1.5, 8, 8),
			"closure.gusset is 8 mm long, and tape.hook cannot be cut there without meeting one of its hooks. It can be cut at " +
				"12 mm with one hook (4 mm longer), best at 19.1 mm, with 5 mm clear of metal at both ends.",
		},
		{
			"a tape without gaps", taped(10, 9, 1.5, 50, 50),
			"tape.hook cannot be cut anywhere: at a pitch of 10 mm, with 9 mm of metal and 1.5 mm clear on either side of a cut, " +
				"its hooks leave no gap. Look at its pitch, head and clear again.",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, TapeCut, c.src)
			require.Len(t, result.Findings, 1)
			require.Equal(t, c.want, result.Findings[0].Message)
		})
	}
}

// Whatever length a message names can be cut, also when drafted as written.
func TestTapeCutNamesLengthsThatCanBeCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := &model.Tape{
			Pitch: rapid.Float64Range(12, 50).Draw(t, "pitch"),
			Head:  rapid.Float64Range(4, 10).Draw(t, "head"),
			Clear: rapid.Float64Range(0, 0.9).Draw(t, "clear"),
		}
		length := rapid.Float64Range(5, 400).Draw(t, "length")
		p := &rules.Pass{Garment: &model.Garment{Unit: model.Millimetre}}
		w, choices := tape.Nearest(length)
		require.NotEmpty(t, choices)
		require.Contains(t, choices, w)
		for _, c := range choices {
			if c.High-c.Low < 0.1 {
				continue // too narrow to name a whole tenth in it
			}
			near := shownInside(p, c, length)
			require.GreaterOrEqual(t, near, c.Low-1e-6)
			require.LessOrEqual(t, near, c.High+1e-6)
		}
	})
}

func TestTapeCutLooksAtTapesOnly(t *testing.T) {
	src := strings.Replace(taped(19.05, 9, 1.5, 50, 50), `kind  = "tape"`, `kind  = "lacing"`, 1)
	result := look(t, TapeCut, src)
	require.Empty(t, result.Findings)
	require.Empty(t, result.NotPossible)
	require.Zero(t, result.Passed)
}

func TestEdges(t *testing.T) {
	for _, c := range []struct{ name, src string }{
		{"equal", taped(19.05, 9, 1.5, 57, 57)},
		{"within a sixteenth of an inch", taped(19.05, 9, 1.5, 57, 58.5)},
		{"a little off", strings.Replace(taped(19.05, 9, 1.5, 57, 59), "gusset]", "gusset] # fault closure-edges warning -2mm", 1)},
		{"far off", strings.Replace(taped(19.05, 9, 1.5, 61, 57), "gusset]", "gusset] # fault closure-edges error 4mm", 1)},
		{"both halves of a mirrored piece", strings.Replace(taped(19.05, 9, 1.5, 57, 70), "brief.back.gusset]", "brief.front.gusset]", 1)},
	} {
		t.Run(c.name, func(t *testing.T) {
			report := ruletest.Spec(t, Edges, c.src)
			require.Empty(t, report.Result.NotPossible)
			require.Equal(t, 1, report.Result.Passed+len(report.Result.Findings))
		})
	}
}

func TestEdgesBetweenMarks(t *testing.T) {
	src := taped(19.05, 9, 1.5, 300, 310, "from = start", "to = hip")
	src = strings.Replace(src, `layer "brief"`, "level \"hip\" {}\nlayer \"brief\"", 1)
	t.Run("a level that a paper edge does not mark", func(t *testing.T) {
		result := look(t, Edges, src)
		require.Len(t, result.NotPossible, 1)
		require.Equal(t, `brief.front.gusset has no drawing and no notch called "hip" that would mark the level`, result.NotPossible[0].Reason)
	})
	notch := func(at int) string {
		return fmt.Sprintf("notch \"hip\" {\n on = gusset\n at = %d\n }\n", at)
	}
	src = strings.Replace(src, `edge "rest"`, notch(200)+`edge "rest"`, 1)
	i := strings.LastIndex(src, `edge "rest"`)
	t.Run("notches at one distance", func(t *testing.T) {
		require.Empty(t, look(t, Edges, src[:i]+notch(200)+src[i:]).Findings)
	})
	t.Run("notches at two", func(t *testing.T) {
		result := look(t, Edges, src[:i]+notch(206)+src[i:])
		require.Len(t, result.Findings, 1)
		require.Equal(t, "brief.back.gusset is 6 mm longer than brief.front.gusset, "+
			"which it is closed to (206 mm against 200 mm); no more than 1.6 mm is allowed. Shorten the one or lengthen the other.",
			result.Findings[0].Message)
	})
}

// A tape that leaves no gap is at fault where it states its pitch.
func TestTapeWithoutGapsPointsAtItsPitch(t *testing.T) {
	src := taped(10, 9, 1.5, 50, 50)
	f := look(t, TapeCut, src).Findings
	require.Len(t, f, 1)
	require.Equal(t, "  pitch = 10", strings.Split(src, "\n")[f[0].Place.Start.Line-1])
	require.Equal(t, 11, f[0].Place.Start.Column)
}
