package model

import (
	"understitch/model/curve"
)

// AsDrafted is the edge's line before any alteration.
func (e *Edge) AsDrafted() *curve.Path {
	if e.Drafted != nil {
		return e.Drafted
	}
	return e.Path
}

// Undrawn is the reason why nothing can be told that takes the piece's whole
// outline; nil where all of it is drawn. A piece that is known by tape alone is
// named, not one of its edges.
func (p *Piece) Undrawn() error {
	if e := p.FirstPaper(); e != nil {
		return e.Undrawn()
	}
	return nil
}

// Undrawn says that the edge, or the whole piece it belongs to, has no drawing.
func (e *Edge) Undrawn() error {
	if e.Piece.Paper() {
		return Missingf("%s has no drawing", e.Piece.Address())
	}
	return Missingf("%s has no drawing", e.Address())
}

// Paper reports whether no edge of the piece is drawn.
func (p *Piece) Paper() bool {
	for _, e := range p.Edges {
		if e.Drawn() {
			return false
		}
	}
	return true
}

// LevelY is the height of a level in the frame that the piece is drafted in.
func (p *Piece) LevelY(l *Level) (float64, bool) {
	if !p.OwnLevels {
		return l.Y, Known(l.Y)
	}
	for _, v := range p.LevelsAt {
		if v.Level == l {
			return v.Value, true
		}
	}
	return 0, false
}

// Drawn reports whether every edge of the piece is drawn.
func (p *Piece) Drawn() bool { return p.FirstPaper() == nil && len(p.Edges) > 0 }

func (p *Piece) FirstPaper() *Edge {
	for _, e := range p.Edges {
		if !e.Drawn() {
			return e
		}
	}
	return nil
}

// Times is how often the drawn shape counts in a girth: once for each cut, and
// twice on a fold.
func (p *Piece) Times() float64 {
	n := float64(p.Cut)
	if p.Fold != nil {
		n *= 2
	}
	return n
}

// region is the cloth inside an outline, once it is laid out.
type region struct{ Once[*curve.Region] }

// Region is the cloth inside the piece's outline.
func (p *Piece) Region() (*curve.Region, error) {
	return In[region](&p.Store).Get(func() (*curve.Region, error) {
		if err := p.Undrawn(); err != nil {
			return nil, err
		}
		paths := make([]*curve.Path, len(p.Edges))
		for i, e := range p.Edges {
			paths[i] = e.Path
		}
		return curve.NewRegion(paths), nil
	})
}

// Reaches reports whether the piece has cloth, or on paper a width, at a level.
func (p *Piece) Reaches(l *Level) bool {
	if !p.Drawn() {
		return p.PaperWidth(l) != nil
	}
	y, ok := p.LevelY(l)
	if !ok {
		return false
	}
	region, err := p.Region()
	if err != nil {
		return false
	}
	box := region.Bounds()
	return y > box.Min.Y-NearEnd && y < box.Max.Y+NearEnd
}

func (p *Piece) PaperWidth(l *Level) *LevelValue {
	for i := range p.Widths {
		if p.Widths[i].Level == l {
			return &p.Widths[i]
		}
	}
	return nil
}
