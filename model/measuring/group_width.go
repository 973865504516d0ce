package measuring

import (
	"understitch/model"
)

// GroupWidth measures the pieces across at a level, side by side.
func GroupWidth(g model.Group, l *model.Level) (Width, error) {
	return acrossGroup(g, func(p *model.Piece) (Width, error) { return WidthOf(p, l) })
}

// GroupWidthAt measures the pieces across at a height of the common frame.
func GroupWidthAt(g model.Group, y float64) (Width, error) {
	return acrossGroup(g, func(p *model.Piece) (Width, error) { return WidthAtHeight(p, y) })
}

func acrossGroup(g model.Group, width func(*model.Piece) (Width, error)) (Width, error) {
	if len(g) == 1 {
		return width(g[0])
	}
	var sum Width
	for _, p := range g {
		w, err := width(p)
		if err != nil {
			return Width{}, err
		}
		share := p.Times() / g.Times()
		sum.Net += w.Net * share
		sum.Gross += w.Gross * share
	}
	return sum, nil
}
