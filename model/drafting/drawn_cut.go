package drafting

import (
	"math"

	"understitch/model"
	"understitch/model/curve"
)

// CutDistances tells how far the cut line that was drawn beside an edge lies from
// where its allowance puts it. Off is the largest distance in millimetres, proven
// and no more than drawnTolerance too large. There, the drawn line is Width from
// the stitch line, At along it.
type CutDistances struct {
	Off, At, Width float64
}

// How closely a drawn cut line is followed, in millimetres, and how short a
// stretch is looked at for it.
const (
	drawnTolerance = 0.01
	drawnStretch   = 0.05
)

// DrawnCut compares the cut line drawn beside the edge with the line at the
// allowance's distance all along the stitch line, as both were drafted: an
// alteration moves the stitch line alone. What the cut line runs on past the
// stitch line's ends is left out, and so is as much of the stitch line as a
// corner of the cut line may cut off.
func DrawnCut(e *model.Edge) (CutDistances, error) {
	region, err := e.Piece.Region()
	if err != nil {
		return CutDistances{}, err
	}
	if !model.Known(e.Allowance.Width) {
		return CutDistances{}, model.Missingf("%s states no allowance, nor does its piece or the house", e.Address())
	}
	stitch := e.Path
	if e.Drafted != nil {
		stitch = e.Drafted
	}
	f := follower{meant: stitch.Parallel(outside(region)*e.Allowance.Width, lineTolerance), drawn: cutAlong(e)}
	s0, t0 := f.begin(2 * e.Allowance.Width)
	s1, t1 := f.finish(2 * e.Allowance.Width)
	f.see(s0, t0)
	f.see(s1, t1)
	f.follow(s0, t0, s1, t1)
	mark := f.drawn.At(f.worstDrawn)
	at, width := stitch.Nearest(mark)
	return CutDistances{f.high, at, width}, nil
}

// cutAlong is the drawn cut line, run the way the edge runs.
func cutAlong(e *model.Edge) *curve.Path {
	line, cut := e.Path, e.CutDrawn
	along := line.Start().Dist(cut.Start()) + line.End().Dist(cut.End())
	if line.Start().Dist(cut.End())+line.End().Dist(cut.Start()) < along {
		return cut.Reverse()
	}
	return cut
}

// noBend is the radius, in millimetres, past which a line is straight: over a metre
// it then stands off its chord by a ten-thousandth of a millimetre, and what more it
// bends is the computer's arithmetic.
const noBend = 1e9

// TightTurn is the place along the edge where the line that was drawn, stitch line
// or cut line, bends most tightly to the side on which the other one lies, and the
// radius there; infinite where it does not bend to that side.
func TightTurn(e *model.Edge) (at, radius float64, err error) {
	region, err := e.Piece.Region()
	if err != nil {
		return 0, 0, err
	}
	line, side := e.Path, outside(region)
	if e.Cut != nil {
		line, side = e.Cut, -side
	}
	if at, radius = line.TightestInside(side); radius > noBend {
		return 0, math.Inf(1), nil
	}
	return at, radius, nil
}

// outside is the side of an outline's edges that the allowance lies on, in the
// sense of curve.Path.Parallel.
func outside(region *curve.Region) float64 {
	if region.Clockwise() {
		return -1 // the cloth is on the right of the way round
	}
	return 1
}

// follower lays the line that is meant and the line that was drawn along each
// other.
type follower struct {
	meant, drawn *curve.Path
	low, high    float64 // the largest distance met, and that which is proven
	worstDrawn   float64 // where on the drawn line the largest lies
}

// begin is where the two lines begin to lie beside each other. The drawn line may
// begin later than the other by so much.
func (f *follower) begin(spare float64) (meant, drawn float64) {
	if s, _ := f.meant.Nearest(f.drawn.Start()); s <= spare {
		meant = s
	}
	t, d := f.drawn.Nearest(f.meant.At(meant))
	if f.drawn.Start().Dist(f.meant.At(meant)) <= d+1e-9 {
		t = 0 // of two equally near places, as where a line closes, the first
	}
	return meant, t
}

func (f *follower) finish(spare float64) (meant, drawn float64) {
	back := follower{meant: f.meant.Reverse(), drawn: f.drawn.Reverse()}
	s, t := back.begin(spare)
	return f.meant.Length() - s, f.drawn.Length() - t
}

// see takes note of a distance that was met.
func (f *follower) see(s, t float64) {
	d := f.meant.At(s).Dist(f.drawn.At(t))
	f.low = max(f.low, d)
	f.note(d, t)
}

func (f *follower) note(d, t float64) {
	if d > f.high {
		f.high, f.worstDrawn = d, t
	}
}

// follow bounds the distance between two stretches, which begin and end at
// places nearest to each other. Where the distance of points at equal share of
// both is too coarse a bound, they are cut in two.
func (f *follower) follow(s0, t0, s1, t1 float64) {
	apart := curve.Deviation(f.meant.Part(s0, s1), f.drawn.Part(t0, t1), drawnTolerance/2)
	if apart.High > max(f.low+drawnTolerance, f.high) && s1-s0 > drawnStretch {
		middle := (s0 + s1) / 2
		t, _ := f.drawn.Nearest(f.meant.At(middle))
		f.see(middle, t)
		f.follow(s0, t0, middle, t)
		f.follow(middle, t, s1, t1)
		return
	}
	if t1 < t0 { // the drawn line is met in passing: no place is further than half the way between
		f.note((f.meant.At(s0).Dist(f.drawn.At(t0))+f.meant.At(s1).Dist(f.drawn.At(t1))+s1-s0)/2, t0)
		return
	}
	share := 0.0
	if s1 > s0 {
		share = math.Min(apart.At/(s1-s0), 1)
	}
	f.note(apart.High, t0+share*(t1-t0))
}
