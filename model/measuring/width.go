package measuring

import (
	"math"

	"understitch/model"
	"understitch/model/curve"
)

// Width is what a piece measures across at a level, as drawn: on a fold, half
// of the finished part.
type Width struct {
	Net   float64 // darts closed
	Gross float64 // as it lies on the paper
	Spans []curve.Span
}

// widths are those of a piece at the levels where they were taken.
type widths struct {
	at map[*model.Level]*model.Once[Width]
}

// WidthOf measures the piece across at a level.
func WidthOf(p *model.Piece, l *model.Level) (Width, error) {
	return model.OnceAt(&model.In[widths](&p.Store).at, l, func() (Width, error) {
		if v := p.PaperWidth(l); v != nil {
			return Width{Net: v.Value, Gross: v.Value}, nil
		}
		if e := p.FirstPaper(); e != nil {
			return Width{}, model.Missingf("%s has no drawing and no width at the %s level", p.Address(), l.Name)
		}
		if !p.Reaches(l) {
			return Width{}, model.Missingf("%s does not reach the %s level", p.Address(), l.Name)
		}
		y, _ := p.LevelY(l)
		return WidthAtHeight(p, y)
	})
}

// WidthAtHeight measures the piece across at a height in its own frame.
func WidthAtHeight(p *model.Piece, y float64) (Width, error) {
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
		w.Net -= takenAt(d, y, region)
	}
	return w, nil
}

// Takes is what a dart takes out of the piece's width at a height in its own
// frame: nothing where it does not reach, or is not drawn.
func Takes(d *model.Dart, y float64) float64 {
	region, err := d.Piece.Region()
	if err != nil {
		return 0
	}
	return takenAt(d, y, region)
}

func takenAt(d *model.Dart, y float64, region *curve.Region) float64 {
	if d.Pleat != nil {
		return d.FoldedAt(y)
	}
	sum := 0.0
	for i, l := range d.Legs() {
		if i == 0 || y != d.Centre.Y { // the upper legs have counted the widest place
			sum += legsTakenAt(l, y, region)
		}
	}
	return sum
}

// legsTakenAt is what a dart takes out of the width at height y. The level is
// followed as it runs over the closed dart: it meets one leg, goes on from the
// place on the other leg that is equally far from the tip, and on to the
// outline from there. For an upright dart that is simply its width at y; for a
// dart lying across, which takes out length and not width, hardly anything.
func legsTakenAt(l model.Legs, y float64, region *curve.Region) float64 {
	fromA, hitsA := l.Crossing(l.A, y)
	fromB, hitsB := l.Crossing(l.B, y)
	switch {
	case hitsA && hitsB:
		// From either side; the mean keeps a mirrored draft's figure the same.
		return (jump(l, l.A, l.B, fromA, region) + jump(l, l.B, l.A, fromB, region)) / 2
	case hitsA:
		return jump(l, l.A, l.B, fromA, region)
	case hitsB:
		return jump(l, l.B, l.A, fromB, region)
	}
	return 0
}

// jump is the width lost by going from one leg over to the other and on to the
// outline at the new height.
func jump(l model.Legs, leg, other curve.Point, fromTip float64, region *curve.Region) float64 {
	here, there := l.On(leg, fromTip), l.On(other, fromTip)
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
		if from.X >= s.X0-model.NearEnd && from.X <= s.X1+model.NearEnd {
			if right {
				return s.X1 - from.X, s.E1
			}
			return from.X - s.X0, s.E0
		}
	}
	return 0, -1
}
