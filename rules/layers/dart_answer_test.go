package layers

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/inspect"
)

// darted is a bodice front over its lining, each with the darts given; the
// lining is 20 cm across like the shell.
func darted(outer, inner string) string {
	const piece = `
layer %q {
  side = %q
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, -5], [20, -5]] }
    edge "side"   { line = [[20, -5], [20, 35]] }
    edge "hem"    { line = [[20, 35], [0, 35]] }
    edge "centre" { line = [[0, 35], [0, -5]] }
%s  }
}
`
	return "garment \"bodice\" { unit = \"cm\" }\nlevel \"bust\" { y = 0 }\nlevel \"waist\" { y = 20 }\n" +
		fmt.Sprintf(piece, "shell", "outer", outer) + fmt.Sprintf(piece, "lining", "inner", inner) +
		"inside \"front\" {\n  outer = shell.front\n  inner = lining.front\n}\n"
}

// twoPoint is a dart inside the piece, onHem one on its hem, both in centimetres.
func twoPoint(name string, x, y, intake, up, down float64) string {
	return fmt.Sprintf("dart %q {\n centre = [%g, %g]\n intake = %g\n up = %g\n down = %g\n}\n", name, x, y, intake, up, down)
}

func onHem(name string, fromCentre, intake, long, lean float64) string {
	return fmt.Sprintf("dart %q {\n on = hem\n at = %g\n intake = %g\n tip = [%g, %g]\n}\n", name, 20-fromCentre, intake, fromCentre+lean, 35-long)
}

// Closed form: the figures are the differences of the drafts.
func TestDartAnswer(t *testing.T) {
	waist := twoPoint("waist", 9, 20, 2, 12, 10)
	hem := onHem("hem", 9, 2, 12, 0)
	for _, c := range []struct {
		name, outer, inner string
		want               map[string]float64
		severity           string
	}{
		{"alike", waist, waist, nil, ""},
		{"within the limit", waist, twoPoint("waist", 9.3, 20, 2, 12, 10), nil, ""},
		{"to the right", waist, twoPoint("waist", 9.8, 20, 2, 12, 10), map[string]float64{"place": 8}, "warning"},
		{"the inner one is shorter below", waist, twoPoint("waist", 9, 20, 2, 12, 8.5), map[string]float64{"lower point": 15}, "note"},
		{"the inner one is longer", waist, twoPoint("waist", 9, 20, 2, 13.5, 10), map[string]float64{"upper point": 15}, "warning"},
		{"longer, and both take out nothing, as in the smallest size", twoPoint("waist", 9, 20, 0, 12, 10), twoPoint("waist", 9, 20, 0, 13.5, 10), map[string]float64{"upper point": 15}, "warning"},
		{"on the hem, and both take out nothing", onHem("hem", 9, 0, 12, 0), onHem("hem", 9, 0, 13.5, 0), map[string]float64{"tip": 15}, "warning"},
		{"shorter and as much shallower", waist, twoPoint("waist", 9, 20, 1.5, 9, 7.5), nil, ""},
		{"another name, near by", waist, twoPoint("fitting", 9.8, 20, 2, 12, 10), map[string]float64{"place": 8}, "warning"},
		{"another name, further off", waist, twoPoint("fitting", 11.6, 20, 2, 12, 10), nil, ""},
		{"one for two", waist + twoPoint("side", 12, 20, 2, 12, 10), twoPoint("waist", 10.5, 20, 4, 12, 10), nil, ""},
		{"two for two", waist + twoPoint("side", 14, 20, 2, 12, 10), waist + twoPoint("side", 13.2, 20, 2, 12, 10), map[string]float64{"place": 8}, "warning"},
		{"one on an edge for one with two points", waist, hem, nil, ""},
		{"answered by nothing", waist, "", nil, ""},
		{"on an edge", hem, hem, nil, ""},
		{"on an edge, nearer to the centre", hem, onHem("hem", 8.2, 2, 12, 0), map[string]float64{"place": 8}, "warning"},
		{"on an edge, shorter", hem, onHem("hem", 9, 2, 10.5, 0), map[string]float64{"tip": 15}, "note"},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := look(t, DartAnswer, darted(c.outer, c.inner)).Findings
			want := map[string]float64{}
			for key, figure := range c.want {
				for _, f := range found {
					if strings.HasPrefix(f.Key, key+" of ") {
						want[f.Key] = figure
					}
				}
			}
			require.Len(t, want, len(c.want))
			requireKeyed(t, want, found)
			for _, f := range found {
				require.Equal(t, c.severity, f.Severity.String())
			}
		})
	}
}

// What the pieces differ by between the dart and their sides is allowed for: a
// lining with 2 cm more at the centre, for a pleat, has its dart so much further
// from there, or not.
func TestDartAnswerAllowsForWhatThePiecesDifferBy(t *testing.T) {
	pleated := func(dart string) string {
		src := darted(twoPoint("waist", 9, 20, 2, 12, 10)+onHem("hem", 9, 2, 8, 0), dart)
		lining := src[strings.Index(src, `layer "lining"`):]
		wide := strings.NewReplacer("[0, -5]", "[-2, -5]", "[0, 35]", "[-2, 35]", "inner = lining.front", "inner = lining.front\n  clearance = { bust = [-2, 0], waist = [-2, 0] }")
		return strings.Replace(src, lining, wide.Replace(lining), 1)
	}
	at := func(x float64) string { return twoPoint("waist", x, 20, 2, 12, 10) + onHem("hem", x, 2, 8, 0) }
	require.Empty(t, look(t, DartAnswer, pleated(at(9))).Findings)
	require.Empty(t, look(t, DartAnswer, pleated(at(7))).Findings)
	require.Len(t, look(t, DartAnswer, pleated(at(6.6))).Findings, 2)
	require.Len(t, look(t, DartAnswer, pleated(at(9.4))).Findings, 2)
}

func TestDartAnswerMessages(t *testing.T) {
	for _, c := range []struct{ name, outer, inner, message, mend string }{
		{"moved", twoPoint("waist", 9, 20, 2, 12, 10), twoPoint("waist", 9.8, 20, 2, 12, 10),
			"lining.front.dart.waist lies 8 mm to the right of shell.front.dart.waist, which it answers; no more than 3 mm is meant. Move the one or the other.",
			"move lining.front.dart.waist back by 8 mm, or shell.front.dart.waist as far the other way"},
		{"moved both ways", twoPoint("waist", 9, 20, 2, 12, 10), twoPoint("waist", 8.6, 20.5, 2, 12, 10),
			"lining.front.dart.waist lies 4 mm to the left of and 5 mm lower than shell.front.dart.waist, which it answers; no more than 3 mm is meant. Move the one or the other.",
			"move lining.front.dart.waist back by 5 mm, or shell.front.dart.waist as far the other way"},
		{"moved along an edge", onHem("hem", 9, 2, 12, 0), onHem("hem", 8.2, 2, 12, 0),
			"lining.front.dart.hem lies 8 mm nearer to the end of shell.front.hem than shell.front.dart.hem, which it answers; no more than 3 mm is meant. " +
				"Move the one or the other.",
			"move lining.front.dart.hem back by 8 mm, or shell.front.dart.hem as far the other way"},
		{"shorter", twoPoint("waist", 9, 20, 2, 12, 10), twoPoint("waist", 9, 20, 1.9, 12, 8.5),
			"lining.front.dart.waist is 1.5 cm shorter to its lower point than shell.front.dart.waist, which it answers; " +
				"no more than 6 mm is meant beside the 5 mm that the darts differ by. Draw both to one point.",
			"lengthen lining.front.dart.waist by 1.5 cm, or shorten shell.front.dart.waist by as much"},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := look(t, DartAnswer, strings.Replace(darted(c.outer, c.inner), "lining.front\n", "lining.front\n  clearance = { waist = [-0.1, 0] }\n", 1)).Findings
			require.Len(t, found, 1)
			require.Equal(t, c.message, found[0].Message)
			require.Equal(t, c.mend, found[0].Mend.Title)
			require.Len(t, found[0].Related, 1)
		})
	}
}

// Of a dart that is made shorter, or opens elsewhere on a shared edge, one rule
// of the family tells.
func TestDartsAreToldOnce(t *testing.T) {
	share := "share \"hem\" {\n outer = shell.front.hem\n inner = lining.front.hem\n}\n"
	sideDart := func(y float64) string {
		return fmt.Sprintf("dart \"bust\" {\n on = side\n at = %g\n intake = 2\n tip = [9, %g]\n}\n", y+5, y)
	}
	for _, c := range []struct{ name, src, rule string }{
		{"shorter above: the widths", darted(twoPoint("waist", 9, 20, 2, 12, 10), twoPoint("waist", 9, 20, 2, 9, 10)), "inner-within-outer"},
		{"let out: the widths", darted(twoPoint("waist", 9, 20, 2, 12, 10), twoPoint("waist", 9, 20, 1, 12, 10)), "inner-within-outer"},
		{"the kink of a straight shared edge moves: the share", darted(onHem("hem", 9, 2, 8, 0), onHem("hem", 7, 2, 8, 0)) + share, "shared-edge"},
		{"a bust dart moved along the side", darted(sideDart(8), sideDart(9)), "dart-answer"},
	} {
		t.Run(c.name, func(t *testing.T) {
			engine, err := rules.New([]*rules.Rule{SharedEdge, InnerWithinOuter, DartAnswer, Girth, Suppression})
			require.NoError(t, err)
			report := (&inspect.Inspector{Engine: engine}).Source(t.Context(), "no-house-here/test.garment.hcl", []byte(c.src), inspect.Options{})
			require.Empty(t, report.Diagnostics)
			told := map[string]bool{}
			for _, f := range report.Result.Findings {
				told[f.Rule.Name] = true
			}
			require.Equal(t, map[string]bool{c.rule: true}, told)
		})
	}
}

// Paper darts are compared by their places along, in whichever way fits best
// where nothing tells how the pieces were measured.
func TestDartAnswerOnPaper(t *testing.T) {
	paper := func(outer, inner float64) string {
		piece := "layer %q {\n side = %q\n piece \"front\" {\n edge \"waist\" { length = 24 }\n edge \"side\" { length = 40 }\n edge \"hem\" { length = 30 }\n" +
			" width = { waist = 24 }\n dart \"waist\" {\n on = waist\n at = %g\n intake = 2\n }\n }\n}\n"
		return "garment \"skirt\" { unit = \"cm\" }\nlevel \"waist\" {}\n" + fmt.Sprintf(piece, "shell", "outer", outer) +
			fmt.Sprintf(piece, "lining", "inner", inner) + "inside \"front\" {\n outer = shell.front\n inner = lining.front\n}\n"
	}
	share := "share \"waist\" {\n outer = shell.front.waist\n inner = lining.front.waist\n match = \"length\"\n}\n"
	require.Empty(t, look(t, DartAnswer, paper(9, 9.2)).Findings)
	require.Len(t, look(t, DartAnswer, paper(9, 9.8)).Findings, 1)
	require.Empty(t, look(t, DartAnswer, paper(9, 15)).Findings, "measured from the other end")
	require.Len(t, look(t, DartAnswer, paper(9, 15)+share).Findings, 1)
}

// Without a frame darts with two points cannot be laid on each other.
func TestDartAnswerWithoutAFrame(t *testing.T) {
	waist := twoPoint("waist", 9, 20, 2, 12, 10)
	src := darted(waist, waist)
	i := strings.LastIndex(src, "fold = centre\n")
	src = src[:i] + "levels = { bust = 0, waist = 21 }\n    " + src[i:]
	result := look(t, DartAnswer, src)
	require.Empty(t, result.Findings)
	require.Equal(t, map[string]string{"": "shell.front and lining.front are not drawn in one frame: they have the waist level at different heights, and the inside names no share to lay them together by"},
		reasons(result.NotPossible))
	aligned := strings.Replace(src, "inner = lining.front\n", "inner = lining.front\n  align = \"centre\"\n", 1) +
		"share \"centre\" {\n outer = shell.front.centre\n inner = lining.front.centre\n}\n"
	require.Empty(t, look(t, DartAnswer, aligned).NotPossible)
	moved := strings.Replace(aligned, "centre = [9, 20]", "centre = [9.8, 20]", 1)
	require.Len(t, look(t, DartAnswer, moved).Findings, 1)
}
