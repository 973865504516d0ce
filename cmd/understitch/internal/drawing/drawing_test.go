package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
	"understitch/model/spec"
)

// plan is a garment of two rectangles, the inner one smaller by 1 cm at the side,
// closed by a tape.
const plan = `garment "plan" { unit = "cm" }
level "waist" { y = 10 }
tape "snap" {
  kind  = "snap"
  pitch = mm(25)
  head  = mm(8)
  clear = mm(2)
}
layer "shell" {
  side = "outer"
  piece "front" {
    allowance = 1.5
    fold      = centre
    grain     = [[5, 5], [5, 25]]
    edge "top" { line = [[0, 0], [20, 0]] }
    edge "side" { line = [[20, 0], [20, 30]] }
    edge "hem" { line = [[20, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
    notch "waist" {
      on    = side
      level = waist
      kind  = "double"
    }
    dart "waist" {
      centre = [8, 10]
      intake = 2
      up     = 5
      down   = 6
    }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    allowance = 1
    fold      = centre
    edge "top" { line = [[0, 0], [19, 0]] }
    edge "side" { line = [[19, 0], [19, 30]] }
    edge "hem" { line = [[19, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
    notch "waist" {
      on = side
      at = 10.4
    }
  }
}
seam "side" { join = [shell.front.side, lining.front.side] }
share "top" {
  outer = [shell.front.top]
  inner = [lining.front.top]
  match = "eased"
  ease  = [-4, 4]
}
inside "front" {
  outer = shell.front
  inner = lining.front
}
closure "hem" {
  kind  = "tape"
  tape  = tape.snap
  edges = [lining.front.hem, lining.front.hem]
}
`

func garment(t *testing.T, text string) *model.Garment {
	t.Helper()
	doc, diags := spec.Read("plan.garment.hcl", []byte(text), nil)
	require.False(t, model.Errors(diags), diags)
	g, diags := doc.Garment("")
	require.False(t, model.Errors(diags), diags)
	return g
}

func panel(t *testing.T, s *Sheet, kind PanelKind, subject string) *Panel {
	t.Helper()
	i := slices.IndexFunc(s.Panels, func(p *Panel) bool { return p.Kind == kind && p.Subject == subject })
	require.GreaterOrEqual(t, i, 0, subject)
	require.Empty(t, s.Panels[i].Missing)
	return s.Panels[i]
}

func marks(p *Panel, kind Kind) []Mark {
	var out []Mark
	for _, m := range p.Marks {
		if m.Kind == kind {
			out = append(out, m)
		}
	}
	return out
}

// What is drawn lies where the model has it, to full scale.
func TestLaidPanel(t *testing.T) {
	p := panel(t, Of(garment(t, plan), nil, Options{}), Laid, "inside.front")
	require.Equal(t, []string{"shell", "lining"}, p.Layers)
	side := func(kind Kind, subject string) *curve.Path {
		for _, m := range marks(p, kind) {
			if m.Subject == subject {
				return m.Line
			}
		}
		return nil
	}
	require.Equal(t, curve.Point{X: 200}, side(StitchLine, "shell.front.side").Start())
	require.Equal(t, curve.Point{X: 190}, side(StitchLine, "lining.front.side").Start())
	require.InDelta(t, 215, side(CutLine, "shell.front.side").Bounds().Max.X, 1e-6, "1.5 cm outside")
	require.Nil(t, side(CutLine, "shell.front.centre"), "nothing is cut on the fold")
	require.NotNil(t, side(FoldLine, "shell.front.centre"))

	cuts := 0
	for _, m := range marks(p, NotchMark) {
		if m.Subject == "shell.front.notch.waist" {
			cuts++
			require.InDelta(t, 15, m.Line.Length(), 1e-9, "across the allowance")
			require.InDelta(t, 100, m.Line.Start().Y, 3+1e-9)
		}
	}
	require.Equal(t, 2, cuts, "a double notch is two cuts")
	require.Len(t, marks(p, DartTip), 2)
	words := marks(p, LevelWidth)
	require.Len(t, words, 1)
	require.Equal(t, []string{"waist", "room -1 cm", "18 less 19"}, words[0].Text, "the dart takes 2 cm")
}

// An inside is laid by the share it names, whatever frame the inner is drawn in.
func TestLaidByAShare(t *testing.T) {
	text := strings.Replace(plan, "inner = lining.front\n}", "inner = lining.front\n  align = \"top\"\n  align_end = start\n}", 1)
	text = strings.NewReplacer("[[0, 0], [19, 0]]", "[[70, 40], [89, 40]]", "[[19, 0], [19, 30]]", "[[89, 40], [89, 70]]",
		"[[19, 30], [0, 30]]", "[[89, 70], [70, 70]]").Replace(text)
	at := strings.LastIndex(text, "[[0, 30], [0, 0]]")
	text = text[:at] + "[[70, 70], [70, 40]]" + text[at+len("[[0, 30], [0, 0]]"):]
	p := panel(t, Of(garment(t, text), nil, Options{}), Laid, "inside.front")
	for _, m := range marks(p, StitchLine) {
		if m.Subject == "lining.front.side" {
			require.InDelta(t, 0, m.Line.Start().Y, 1e-6)
			require.InDelta(t, 190, m.Line.Start().X, 1e-6, "the starts lie together")
		}
	}
}

// A strip lays notch against notch: the double one at 10 cm and its partner, 4 mm
// further on.
func TestStrip(t *testing.T) {
	p := panel(t, Of(garment(t, plan), nil, Options{}), Strip, "seam.side")
	pairs := marks(p, PairLine)
	require.Len(t, pairs, 1)
	require.InDelta(t, 4, pairs[0].Line.End().X-pairs[0].Line.Start().X, 1e-6)
	require.Equal(t, []string{"4 mm off"}, marks(p, Figure)[0].Text)
	require.Equal(t, []string{"30 cm along 30 cm"}, p.Facts)
}

// A tape is drawn as it is cut. 38 cm (the hem and its other half) hold 15 snaps
// at 25 mm with (380-14*25-8)/2 = 11 mm to the metal on the tape and 25-8-11 = 6 mm
// to that beyond the cut; no other number keeps 2 mm clear (closed form).
func TestTape(t *testing.T) {
	p := panel(t, Of(garment(t, plan), nil, Options{}), Taped, "closure.hem")
	require.Len(t, marks(p, Metal), 15+2, "and one on either side that falls away")
	ends := marks(p, CutEnd)
	require.Len(t, ends, 2)
	require.InDelta(t, 380, ends[1].Line.Start().X, 1e-9)
	require.Equal(t, []string{"cut at 38 cm: 15 at a pitch of 2.5 cm, 6 mm clear of metal at both ends"}, p.Facts)
	for _, m := range marks(p, Metal) {
		box := m.Line.Bounds()
		require.InDelta(t, 8, box.Width(), 1e-9)
		for _, x := range []float64{0, 380} {
			require.False(t, box.Min.X < x && x < box.Max.X, "no cut through metal")
		}
	}
}

func TestFindingsArePinned(t *testing.T) {
	g := garment(t, plan)
	for _, c := range []struct {
		name    string
		finding Finding
		panel   PanelKind
		subject string
		at      curve.Point
	}{
		{"an inside at a level", Finding{Subject: "inside.front", Key: "waist"}, Laid, "inside.front", curve.Point{X: 215, Y: 100}},
		{"between two levels, where it lies", Finding{Subject: "inside.front", Key: "waist", Spot: layering.Spot{Piece: "shell.front", At: curve.Point{X: 200, Y: 250}}},
			Laid, "inside.front", curve.Point{X: 200, Y: 250}},
		{"an edge", Finding{Subject: "shell.front.side"}, Laid, "inside.front", curve.Point{X: 200, Y: 150}},
		{"a notch", Finding{Subject: "lining.front.notch.waist"}, Laid, "inside.front", curve.Point{X: 200, Y: 104}},
		{"a dart", Finding{Subject: "shell.front.dart.waist"}, Laid, "inside.front", curve.Point{X: 80, Y: 50}},
		{"a seam, where it ends", Finding{Subject: "seam.side"}, Strip, "seam.side", curve.Point{X: 300}},
		{"a seam, at a notch", Finding{Subject: "seam.side", Key: "shell.front.notch.waist"}, Strip, "seam.side", curve.Point{X: 100}},
		{"a seam, on its pieces", Finding{Subject: "seam.side"}, Laid, "inside.front", curve.Point{X: 200, Y: 150}},
		{"a tape", Finding{Subject: "closure.hem"}, Taped, "closure.hem", curve.Point{X: 380}},
		{"two edges of a piece", Finding{Subject: "shell.front", Key: "hem and side"}, Laid, "inside.front", curve.Point{X: 100, Y: 300}},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.finding.Number, c.finding.Severity, c.finding.Figure = "7", "error", "3 mm"
			s := Of(g, []Finding{c.finding}, Options{})
			require.Empty(t, s.Elsewhere)
			tags := marks(panel(t, s, c.panel, c.subject), Found)
			i := slices.IndexFunc(tags, func(m Mark) bool {
				return m.At.Dist(c.at) < 8 || (c.panel >= Strip && abs(m.At.X-c.at.X) < 1)
			})
			require.GreaterOrEqual(t, i, 0, tags)
			require.Equal(t, []string{"7"}, tags[i].Numbers)
		})
	}
	s := Of(g, []Finding{{Number: "1", Severity: "note", Subject: "garment"}}, Options{})
	require.Len(t, s.Elsewhere, 1, "the garment is nowhere in particular")
}

func abs(v float64) float64 { return max(v, -v) }

// Tags at one place are one, tags near each other do not hide each other.
func TestTagsStandApart(t *testing.T) {
	var list []Finding
	for i, edge := range []string{"side", "side", "top", "hem"} {
		for _, layer := range []string{"shell", "lining"} {
			list = append(list, Finding{Number: string(rune('1' + i)), Severity: "error", Subject: layer + ".front." + edge})
		}
	}
	p := panel(t, Of(garment(t, plan), list, Options{}), Laid, "inside.front")
	tags := marks(p, Found)
	require.Len(t, tags, 6)
	for i, a := range tags {
		for _, b := range tags[:i] {
			at := func(m Mark) curve.Point { return m.At.Add(m.Dir.Scale(m.Reach * p.Point)) }
			require.Greater(t, at(a).Dist(at(b)), 2*TagSize*p.Point)
		}
	}
}

// Layers and severities are told apart by more than colour.
func TestToldApartWithoutColour(t *testing.T) {
	outer, inner := PenOf(Mark{Kind: StitchLine, Side: model.Outer}), PenOf(Mark{Kind: StitchLine, Side: model.Inner})
	between := PenOf(Mark{Kind: StitchLine, Side: model.Between})
	require.Empty(t, outer.Dash)
	require.NotEmpty(t, inner.Dash)
	require.NotEqual(t, inner.Dash, between.Dash)
	require.Greater(t, inner.Width, 2*outer.Width, "stitches are seen beneath a whole line")
	require.Less(t, PenOf(Mark{Kind: CutLine, Side: model.Inner}).Width, outer.Width)
	shapes := map[string]bool{}
	for _, severity := range []string{"error", "warning", "note"} {
		w := &svgWriter{point: 1}
		w.tag(Mark{Sign: Tag, Severity: severity, Numbers: []string{"1"}, Dir: curve.Point{X: 1}, Reach: 20})
		shapes[w.String()] = true
	}
	require.Len(t, shapes, 3)
}

// The picture is well formed whatever the names, and the same every time.
func TestWriteSVG(t *testing.T) {
	g := garment(t, strings.Replace(plan, `{ unit = "cm" }`, "{\n  title = \"<script>alert(1)</script> & \\u001b[31m\\u202e 袖\"\n  unit = \"cm\"\n}", 1))
	finding := []Finding{{Number: "1", Severity: "warning", Subject: "seam.side", Figure: "<b>"}}
	var one, two bytes.Buffer
	require.NoError(t, WriteSVG(&one, Of(g, finding, Options{})))
	require.NoError(t, WriteSVG(&two, Of(g, finding, Options{})))
	require.Equal(t, one.String(), two.String())
	require.NotContains(t, one.String(), "<script")
	require.NotContains(t, one.String(), "\x1b")
	require.NotContains(t, one.String(), "\u202e")
	dec := xml.NewDecoder(&one)
	for {
		_, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
	}
}
