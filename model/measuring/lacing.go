package measuring

import (
	"understitch/model"
)

// GapNeed is what a lacing must leave open at a level, so that its layer measures
// round what the layer's ease asks for there.
type GapNeed struct {
	Level *model.Level
	Cloth float64     // what the layer measures round without the gap, in millimetres
	Ease  model.Range // finished girth minus body
	Gap   model.Range
}

// Needs are the gaps that a lacing needs at the levels where it closes its layer round
// the body and the wearer's measure is known. Unstated is the ease at levels for which
// the layer states none; without it they are left out.
func Needs(g *model.Garment, c *model.Closure, unstated *model.Range) []GapNeed {
	layer := c.Starts(0).Edge.Piece.Layer
	var out []GapNeed
	for _, l := range LevelsDown(g) {
		ease, ok := EaseAt(layer, l)
		if !ok && unstated != nil {
			ease, ok = *unstated, true
		}
		sum, err := SumGirth(g, layer, l)
		if !ok || ease.Any() || err != nil || !model.Known(l.Body) {
			continue
		}
		for _, lap := range sum.Laps {
			if lap.Closure != c {
				continue
			}
			cloth := sum.Total - lap.Gap()*lap.Times
			need := model.Range{Low: (ease.Low + l.Body - cloth) / lap.Times, High: (ease.High + l.Body - cloth) / lap.Times}
			out = append(out, GapNeed{l, cloth, ease, need})
		}
	}
	return out
}

// Serves is what of a gap serves all of the needs; its low end is beyond its high
// end by as much as is missing where no gap does.
func Serves(needs []GapNeed, gap model.Range) model.Range {
	for _, n := range needs {
		gap.Low, gap.High = max(gap.Low, n.Gap.Low), min(gap.High, n.Gap.High)
	}
	return gap
}
