package layers

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSuppression(t *testing.T) {
	inside := func(clearance string) string {
		out := ""
		for _, piece := range []string{"front", "back"} {
			out += "inside \"" + piece + "\" {\n outer = shell." + piece + "\n inner = lining." + piece + "\n clearance = " + clearance + "\n}\n"
		}
		return out
	}
	const body = "body {\n bust = 88\n waist = 70\n}\n"
	stated := []string{"level \"bust\"  { y = 0 }\nlevel \"waist\" { y = 18 }",
		body + "level \"bust\" {\n y = 0\n body = body.bust\n}\nlevel \"waist\" {\n y = 18\n body = body.waist\n}",
		`side = "outer"`, "side = \"outer\"\n  ease = { bust = [3, 5], waist = [6, 8] }", `side = "inner"`, "side = \"inner\"\n  ease = { bust = [1, 3], waist = [1, 3] }"}
	open := []string{`seam "lining-side" { join = [lining.front.side, lining.back.side] }`, ""}
	for _, c := range []struct {
		name   string
		change []string
		more   string
		want   map[string]float64 // past what is stated
	}{
		{"a dart let out on the shell alone", nil, "", map[string]float64{"bust to waist": 28}},
		{"by less: a note", []string{"intake = 0.8", "intake = 1.2"}, "", map[string]float64{"bust to waist": 20}},
		{"answered in the lining's seams", []string{"[18, 18]", "[18.7, 18]", "[18, 18]", "[18.7, 18]"}, "", nil},
		{"clearances that say so", nil, inside("{ bust = [0, 0.5], waist = [1, 1.5] }"), nil},
		{"clearances that ask for nothing at one level", nil, inside("{ bust = [0, 0.5], waist = [0, null] }"), nil},
		{"clearances that allow a part of it", nil, inside("{ bust = [0.4, 0.6], waist = [1, 1.2] }"), nil},
		{"clearances alike at both levels", nil, inside("{ bust = [0.5, 0.6], waist = [0.5, 1.2] }"), nil},
		{"a clearance at one level alone says nothing of a change", nil, inside("{ bust = [0, 2] }"), map[string]float64{"bust to waist": 28}},
		{"eases of both layers that say so", stated, "", nil},
		{"a lining that is open", open, "", nil},
		{"a lining that is open, laid piece on piece", open, inside("{ bust = [0, null] }"), map[string]float64{"bust to waist": 28}},
		{"laid piece on piece, as is stated", open, inside("{ bust = [0, 0.5], waist = [1, 1.5] }"), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, Suppression, change(t, suppressionBad, c.change...)+c.more)
			require.Empty(t, result.NotPossible)
			requireKeyed(t, c.want, result.Findings)
		})
	}
}

func TestSuppressionSteps(t *testing.T) {
	for _, c := range []struct {
		name, intake, severity string
	}{
		{"2 cm is a note still", "1", "note"},
		{"just past 2 cm warns", "0.98", "warning"},
		{"just past 1 cm is a note", "1.24", "note"},
		{"1 cm passes", "1.25", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			// Both pieces, each a half on the fold: four darts of 1.5 cm give a room of 2 cm at either level.
			src := change(t, suppressionGood, "intake = 1.5", "intake = "+c.intake, "intake = 1.5", "intake = "+c.intake)
			result := look(t, Suppression, src)
			if c.severity == "" {
				require.Empty(t, result.Findings)
				return
			}
			require.Len(t, result.Findings, 1)
			require.Equal(t, c.severity, result.Findings[0].Severity.String())
		})
	}
}

func TestSuppressionMessage(t *testing.T) {
	require.Equal(t, "from the bust to the waist level lining takes out 2.8 cm more round than shell: shell goes from 92 cm to 76.8 cm, "+
		"lining from 90 cm to 72 cm. Look for a dart or seam that was altered on one layer only, or state the clearances that are meant at both levels.",
		look(t, Suppression, suppressionBad).Findings[0].Message)
}

// Below an edge that both layers share they part as they may.
func TestSuppressionBelowASharedEdge(t *testing.T) {
	src := change(t, suppressionBad, `level "bust"  { y = 0 }`, `level "bust"  { y = -5 }`)
	requireKeyed(t, map[string]float64{"bust to waist": 28}, look(t, Suppression, src).Findings)
	share := "share \"top\" {\n outer = [shell.front.top, shell.back.top]\n inner = [lining.front.top, lining.back.top]\n match = \"eased\"\n ease = [-5, 5]\n}\n"
	requireKeyed(t, nil, look(t, Suppression, src+share).Findings)
}

// A level at which the room leaps falls back below it: that is one fault. Half-way
// to the hem the room is 2.75 cm again, after 4.8 cm at the waist (closed form).
func TestSuppressionLeapsOnce(t *testing.T) {
	src := suppressionBad + "level \"hip\" { y = 25.5 }\n"
	requireKeyed(t, map[string]float64{"bust to waist": 28}, look(t, Suppression, src).Findings)
	t.Run("what falls on is another", func(t *testing.T) {
		narrower := change(t, src, "[18, 18], [20.4, 26]", "[18, 18], [17, 26]", "[18, 18], [20.4, 26]", "[18, 18], [17, 26]", "[[20.4, 26], [0, 26]]", "[[17, 26], [0, 26]]", "[[20.4, 26], [0, 26]]", "[[17, 26], [0, 26]]")
		require.Len(t, look(t, Suppression, narrower).Findings, 2)
	})
}
