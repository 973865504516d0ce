package allowances

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/model/drafting"
	"understitch/rules"
)

//go:embed testdata/allowance-drawn.bad.garment.hcl
var drawnBad string

//go:embed testdata/allowance-drawn.good.garment.hcl
var drawnGood string

// Drawn checks that a cut line drawn beside a stitch line lies the stated
// allowance from it.
var Drawn = rules.Rule{
	Name:     "allowance-drawn",
	Family:   "allowances",
	Severity: rules.Error,
	Under:    []string{"allowance-match"},
	Doc: rules.Doc{
		Title: "Stitch line and cut line lie the stated allowance apart, all along",
		Why: "The cutter follows the cut line and the machinist the allowance. Where they do not agree the seam is sewn beside the line it was " +
			"drafted on, and the garment comes out larger or smaller by the difference, at every seam.",
		How: "Run a gauge set to the allowance along the stitch line: the figure is how far the drawn cut line strays from its mark at most, and " +
			"never less than that. It is asked where an edge has a cut_line beside its stitch line. What the cut line runs on past the ends, to " +
			"make the corners, is left out, and so is what a corner cuts off it. An edge that an alteration re-drew is judged as it was drafted. " +
			"Along a curve too tight for its allowance there is no such line. Where the edge's allowance differs from that of the edge it is sewn " +
			"to, the finding of allowance-match stands for this one.",
		Nothing: "No cut line is drawn beside the edge.",
		Fix:     "Re-draw the cut line from the stitch line, at the stated allowance; or state the allowance that was drawn.",
		Bad:     drawnBad, Good: drawnGood, Since: "0.1",
	},
	Limits: rules.Steps(0.5, 1, rules.Millimetres, "how far the cut line may lie from where the allowance puts it", pencil),
	Each:   rules.Edges(drawn),
}

func drawn(p *rules.Pass, e *model.Edge) {
	if e.CutDrawn == nil {
		p.NothingHere()
		return
	}
	if _, radius, err := drafting.TightTurn(e); err == nil && radius < e.Allowance.Width {
		p.Cannot(fmt.Errorf("%s bends too tightly for its allowance, so its cut line cannot lie that far from it", e.Address()), rules.Say{Place: e.CutPlace})
		return
	}
	cut, err := drafting.DrawnCut(e)
	if err != nil {
		p.Cannot(err, rules.Say{Place: e.CutPlace})
		return
	}
	p.Steps(cut.Off, rules.Say{
		Place:   e.CutPlace,
		Under:   differs(p.Garment, e), // the drawing may be right
		Account: drawnAccount(e, cut),
		Message: func() string {
			return fmt.Sprintf("the cut line of %s lies %s from the stitch line at %s along it, where an allowance of %s is stated: it is up to %s off. Re-draw it from the stitch line, or state the allowance that is drawn.",
				e.Address(), p.Show(cut.Width), p.Show(cut.At), p.Show(e.Allowance.Width), p.Show(cut.Off))
		},
		Related: []rules.Related{{Message: "the allowance stated is " + p.Show(e.Allowance.Width), Place: stated(e)}},
		Mend:    &rules.Mend{Title: fmt.Sprintf("re-draw the cut line of %s, %s from its stitch line", e.Address(), p.Show(e.Allowance.Width))},
	})
}
