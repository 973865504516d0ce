package drawing

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
)

// A finding of a share marks the edges it names and leaves the others alone.
func TestSharesMarkWhatIsAtFault(t *testing.T) {
	const piece = `  piece "NAME" {
    edge "top" { line = [[X0, 0], [X1, 0]] }
    edge "right" { line = [[X1, 0], [X1, 12]] }
    edge "hem" { line = [[X1, 12], [X0, 12]] }
    edge "left" { line = [[X0, 12], [X0, 0]] }
    notch "strap" {
      on = top
      at = 8
    }
  }
`
	pieces := strings.NewReplacer("NAME", "front", "X0", "0", "X1", "20").Replace(piece) +
		strings.NewReplacer("NAME", "back", "X0", "20", "X1", "40").Replace(piece)
	src := "garment \"yoke\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n" + pieces + "}\nlayer \"lining\" {\n  side = \"inner\"\n" + pieces + `}
share "top" {
  outer = [shell.front.top, shell.back.top]
  inner = [lining.front.top, lining.back.top]
}
`
	g := garment(t, src)
	edge := func(layer, piece int) *model.Edge { return g.Layers[layer].Pieces[piece].Edges[0] }
	for _, c := range []struct {
		name    string
		finding Finding
		want    []string
	}{
		{"the edges of one part", Finding{Subject: "share.top", Key: "shape shell.front.top", Places: []model.Place{edge(0, 0).Place, edge(1, 0).Place}},
			[]string{"lining.front.top", "shell.front.top"}},
		{"the edge of a notch, whose partner is marked by itself", Finding{Subject: "share.top", Key: "notch shell.back.notch.strap", Places: []model.Place{edge(1, 1).Piece.Notches[0].Given}},
			[]string{"lining.back.top"}},
		{"none is named", Finding{Subject: "share.top", Key: "copies"},
			[]string{"lining.back.top", "lining.front.top", "shell.back.top", "shell.front.top"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.finding.Number, c.finding.Severity = "1", "error"
			s := Of(g, []Finding{c.finding}, Options{})
			var marked []string
			for _, p := range s.Panels {
				for _, m := range p.Marks {
					if m.Kind != Trouble || p.Kind > Alone {
						continue
					}
					for _, e := range p.Marks {
						if e.Kind == StitchLine && e.Line != nil && e.Line.Start() == m.Line.Start() && e.Line.End() == m.Line.End() && !slices.Contains(marked, e.Subject) {
							marked = append(marked, e.Subject)
						}
					}
				}
			}
			slices.Sort(marked)
			require.Equal(t, c.want, marked)
		})
	}
}
