package layering

import (
	"understitch/model"
	"understitch/model/curve"
)

// Spot is a place on a piece: a point in the frame in which the piece is drawn,
// x and y in millimetres.
type Spot struct {
	Piece string // its address; "" for no place
	At    curve.Point
}

// SideAtHeight is where the side of an inside's outer piece lies at a height of that
// piece's frame: the end away from its fold. Nothing where it has no cloth there.
func SideAtHeight(n *model.Inside, y float64) Spot {
	for _, p := range n.Outer {
		region, err := p.Region()
		if err != nil {
			continue
		}
		spans := region.Spans(y)
		if len(spans) == 0 {
			continue
		}
		left, right := spans[0].X0, spans[len(spans)-1].X1
		if p.Fold != nil && p.Fold.Drawn() && p.Fold.Path.At(0).X > (left+right)/2 {
			right = left
		}
		return Spot{Piece: p.Address(), At: curve.Point{X: right, Y: y}}
	}
	return Spot{}
}
