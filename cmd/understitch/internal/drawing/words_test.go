package drawing

import (
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/cmd/understitch/demo"
	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
	"understitch/model/spec"
)

// wardrobe is every garment of the demo in its first size.
func wardrobe(t *testing.T) map[string]*model.Garment {
	t.Helper()
	out := map[string]*model.Garment{}
	text, err := fs.ReadFile(demo.Files(), "house.hcl")
	require.NoError(t, err)
	house, _ := spec.ReadHouse("house.hcl", text)
	err = fs.WalkDir(demo.Files(), ".", func(name string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, ".garment.hcl") {
			return err
		}
		text, err := fs.ReadFile(demo.Files(), name)
		if err != nil {
			return err
		}
		doc, diags := spec.Read(name, text, house)
		require.NotNil(t, doc, diags)
		size := ""
		if sizes := doc.Sizes(); len(sizes) > 0 {
			size = sizes[0]
		}
		if g, _ := doc.Garment(size); g != nil {
			out[name] = g
		}
		return nil
	})
	require.NoError(t, err)
	require.Greater(t, len(out), 8)
	return out
}

// placed is a box that a reader must be able to read, and what stands in it.
type placed struct {
	what string
	box  curve.Box
}

// readable are the words and tags of a panel when its cloth is drawn so many
// times larger while words keep their size.
func readable(p *Panel, larger float64) []placed {
	var out []placed
	for _, m := range p.Marks {
		if box, ok := m.wordBox(p.Point / larger); ok {
			out = append(out, placed{strings.Join(m.Text, " / "), box})
		}
		if m.Sign == Tag {
			out = append(out, placed{"tag " + tagText(m.Numbers), m.tagBox(p.Point / larger)})
		}
	}
	return out
}

// frame is the panel's frame when its cloth is drawn so many times larger.
func (p *Panel) frame(larger float64) curve.Box {
	less := p.Point * (1 - 1/larger)
	return curve.Box{
		Min: p.Box.Min.Add(curve.Point{X: p.Beside[0] * less, Y: p.Beside[2] * less}),
		Max: p.Box.Max.Sub(curve.Point{X: p.Beside[1] * less, Y: p.Beside[3] * less}),
	}
}

// No words or tags of the wardrobe's drawings lie on each other, and none comes
// near its frame: on a telephone, on a desk and in a picture, with findings on
// every level, edge and seam.
func TestNothingOverprints(t *testing.T) {
	for name, g := range wardrobe(t) {
		for _, o := range []Options{{}, {Wide: 300}} {
			for _, findings := range [][]Finding{nil, findingsOf(g)} {
				s := Of(g, findings, o)
				for _, p := range s.Panels {
					if p.Missing != "" || p.Repeats {
						continue
					}
					for _, larger := range []float64{1, 1.15, 1.25, 1.5, 1.75, 2} {
						if larger > 1 && o.Wide == 0 {
							break // only a page draws larger
						}
						holds(t, p, larger, fmt.Sprintf("%s, %s, width %v, %d findings, %v times", name, p.Title, o.Wide, len(findings), larger))
					}
				}
			}
		}
	}
}

func holds(t *testing.T, p *Panel, larger float64, where string) {
	t.Helper()
	list := readable(p, larger)
	frame := p.frame(larger)
	least := (frameAir - 1) * p.Point / larger
	for i, a := range list {
		require.GreaterOrEqual(t, a.box.Min.X-frame.Min.X, least, "%s: %s on the left", where, a.what)
		require.GreaterOrEqual(t, frame.Max.X-a.box.Max.X, least, "%s: %s on the right", where, a.what)
		require.GreaterOrEqual(t, a.box.Min.Y-frame.Min.Y, least, "%s: %s above", where, a.what)
		require.GreaterOrEqual(t, frame.Max.Y-a.box.Max.Y, least, "%s: %s below", where, a.what)
		for _, b := range list[:i] {
			require.Zero(t, shared(a.box, b.box), "%s: %s lies on %s", where, a.what, b.what)
		}
	}
}

// findingsOf are as many findings as a garment in trouble has: on every inside at
// its levels, on every seam, closure and share, and on some edges.
func findingsOf(g *model.Garment) []Finding {
	var out []Finding
	add := func(subject, key string) {
		severity := []string{"error", "warning", "note"}[len(out)%3]
		out = append(out, Finding{Number: fmt.Sprint(len(out) + 1), Severity: severity, Subject: subject, Key: key, Figure: "1.25 cm"})
	}
	for _, n := range g.Insides {
		for _, l := range layering.Compared(n, g) {
			add(n.Address(), l.Name)
		}
	}
	for _, j := range g.Joins() {
		add(j.Thing.Address(), "")
	}
	for _, s := range g.Shares {
		add(s.Address(), "")
	}
	return out
}

// Names stand on their pieces wherever there is room for them.
func TestNamesStandOnTheirPieces(t *testing.T) {
	p := panel(t, Of(garment(t, plan), nil, Options{Wide: 300}), Laid, "inside.front")
	for _, m := range marks(p, PieceName) {
		box, ok := m.wordBox(p.Point)
		require.True(t, ok)
		require.Equal(t, box, curve.Box{Min: curve.Point{X: max(box.Min.X, 0), Y: max(box.Min.Y, 0)}, Max: curve.Point{X: min(box.Max.X, 190), Y: min(box.Max.Y, 300)}}, m.Subject)
	}
}

// A panel takes no more room across than it may, unless nothing is left of the
// cloth.
func TestPanelsKeepToTheirWidth(t *testing.T) {
	for name, g := range wardrobe(t) {
		for _, p := range Of(g, nil, Options{Wide: 300}).Panels {
			if p.Missing == "" {
				require.LessOrEqual(t, p.Box.Width()/p.Point, 301.0, "%s, %s", name, p.Title)
			}
		}
	}
}

// Words broken into lines are the same words, and no line is too wide but one
// that cannot be broken.
func TestFolded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-z]{1,12}([ .][a-z]{1,12}){0,12}`).Draw(t, "text")
		wide := rapid.Float64Range(20, 400).Draw(t, "wide")
		lines := folded(text, TextSize, wide)
		bare := strings.NewReplacer(" ", "", "\n", "")
		require.Equal(t, bare.Replace(text), bare.Replace(strings.Join(lines, "")))
		for _, line := range lines {
			if strings.ContainsAny(strings.TrimSuffix(line, "."), " .") {
				require.LessOrEqual(t, wordsWide(line, TextSize, false), wide+1e-9)
			}
		}
	})
}
