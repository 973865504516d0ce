package model

import (
	"math"

	"understitch/model/curve"
)

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
func (p *Piece) Drawn() bool { return p.firstPaper() == nil && len(p.Edges) > 0 }

func (p *Piece) firstPaper() *Edge {
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

// Width is what a piece measures across at a level, as drawn: on a fold, half
// of the finished part.
type Width struct {
	Net   float64 // darts closed
	Gross float64 // as it lies on the paper
	Spans []curve.Span
}

// Reaches reports whether the piece has cloth, or on paper a width, at a level.
func (p *Piece) Reaches(l *Level) bool {
	if !p.Drawn() {
		return p.paperWidth(l) != nil
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
	return y > box.Min.Y-nearEnd && y < box.Max.Y+nearEnd
}

func (p *Piece) paperWidth(l *Level) *LevelValue {
	for i := range p.Widths {
		if p.Widths[i].Level == l {
			return &p.Widths[i]
		}
	}
	return nil
}

// widths are those of a piece at the levels where they were taken.
type widths struct{ at map[*Level]*Once[Width] }

// Width measures the piece across at a level.
func (p *Piece) Width(l *Level) (Width, error) {
	return OnceAt(&In[widths](&p.Store).at, l, func() (Width, error) {
		if v := p.paperWidth(l); v != nil {
			return Width{Net: v.Value, Gross: v.Value}, nil
		}
		if e := p.firstPaper(); e != nil {
			return Width{}, missing("%s has no drawing and no width at the %s level", p.Address(), l.Name)
		}
		if !p.Reaches(l) {
			return Width{}, missing("%s does not reach the %s level", p.Address(), l.Name)
		}
		y, _ := p.LevelY(l)
		return p.widthAt(y)
	})
}

// widthAt measures the piece across at a height in its own frame.
func (p *Piece) widthAt(y float64) (Width, error) {
	region, err := p.Region()
	if err != nil {
		return Width{}, err
	}
	box := region.Bounds()
	w := Width{Spans: region.Spans(min(max(y, box.Min.Y), box.Max.Y))}
	for _, s := range w.Spans {
		w.Gross += s.X1 - s.X0
	}
	w.Net = w.Gross
	for _, d := range p.Darts {
		w.Net -= d.takenAt(y, region)
	}
	return w, nil
}

// takes is what a dart takes out of the piece's width at a height in its own
// frame: nothing where it does not reach, or is not drawn.
func (d *Dart) takes(y float64) float64 {
	region, err := d.Piece.Region()
	if err != nil {
		return 0
	}
	return d.takenAt(y, region)
}

func (d *Dart) takenAt(y float64, region *curve.Region) float64 {
	sum := 0.0
	for i, l := range d.Legs() {
		if i == 0 || y != d.Centre.Y { // the upper legs have counted the widest place
			sum += l.takenAt(y, region)
		}
	}
	return sum
}

// takenAt is what a dart takes out of the width at height y. The level is
// followed as it runs over the closed dart: it meets one leg, goes on from the
// place on the other leg that is equally far from the tip, and on to the
// outline from there. For an upright dart that is simply its width at y; for a
// dart lying across, which takes out length and not width, hardly anything.
func (l Legs) takenAt(y float64, region *curve.Region) float64 {
	fromA, hitsA := l.crossing(l.A, y)
	fromB, hitsB := l.crossing(l.B, y)
	switch {
	case hitsA && hitsB:
		// From either side; the mean keeps a mirrored draft's figure the same.
		return (l.jump(l.A, l.B, fromA, region) + l.jump(l.B, l.A, fromB, region)) / 2
	case hitsA:
		return l.jump(l.A, l.B, fromA, region)
	case hitsB:
		return l.jump(l.B, l.A, fromB, region)
	}
	return 0
}

// jump is the width lost by going from one leg over to the other and on to the
// outline at the new height.
func (l Legs) jump(leg, other curve.Point, fromTip float64, region *curve.Region) float64 {
	here, there := l.on(leg, fromTip), l.on(other, fromTip)
	if math.Abs(here.Y-there.Y) < 1e-9 {
		return math.Abs(there.X - here.X)
	}
	right := there.X > here.X
	if mouth := l.A.Lerp(l.B, 0.5).X - l.Tip.X; math.Abs(mouth) > l.A.Dist(l.B) {
		right = mouth > 0 // lying across: the level leaves towards the mouth
	}
	was, over := reach(region, here, right)
	is, overNow := reach(region, there, right)
	if over < 0 || over != overNow {
		// The new height runs into another edge, as just under a curved waist:
		// what lies beyond the dart is then taken at the old one.
		return math.Abs(there.X - here.X)
	}
	return was - is
}

// reach is the distance from a point along its level to the outline, and the
// edge it is reached at; -1 where there is none.
func reach(region *curve.Region, from curve.Point, right bool) (distance float64, edge int) {
	for _, s := range region.Spans(from.Y) {
		if from.X >= s.X0-nearEnd && from.X <= s.X1+nearEnd {
			if right {
				return s.X1 - from.X, s.E1
			}
			return from.X - s.X0, s.E0
		}
	}
	return 0, -1
}
