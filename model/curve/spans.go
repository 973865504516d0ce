package curve

import (
	"cmp"
	"slices"
)

// Span is a stretch of a level that lies inside a region, from X0 to X1.
// E0 and E1 are the indexes of the edges that bound it (−1 for a bridged gap),
// S0 and S1 the arc lengths on those edges.
type Span struct {
	X0, X1 float64
	E0, E1 int
	S0, S1 float64
}

// levelHit is a place where the outline passes a level.
type levelHit struct {
	x      float64
	t      float64
	side   int
	change int // of the winding number, going right
}

// hitSpan is a Span before its edges are looked up.
type hitSpan struct{ from, to levelHit }

// Spans returns the stretches of the level y inside the closed region, from
// left to right. The region's slices just above and just below the level are
// taken and joined, so an edge that lies on the level counts as inside, and a
// corner on it is met once. Ends of stretches within 1e-7 mm of the level count
// as on it; all other crossings are exact. A tip that only touches the level
// gives a span of no width.
func (r *Region) Spans(y float64) []Span {
	var spans []hitSpan
	for _, below := range []int{1, -1} {
		spans = append(spans, r.slice(y, below)...)
	}
	slices.SortFunc(spans, func(a, b hitSpan) int {
		return cmp.Or(cmp.Compare(a.from.x, b.from.x), cmp.Compare(b.to.x, a.to.x))
	})
	var joined []hitSpan
	for _, s := range spans {
		if n := len(joined); n > 0 && s.from.x <= joined[n-1].to.x+onOutline {
			if s.to.x > joined[n-1].to.x {
				joined[n-1].to = s.to
			}
			continue
		}
		joined = append(joined, s)
	}
	out := make([]Span, len(joined))
	for i, s := range joined {
		out[i].X0, out[i].X1 = s.from.x, s.to.x
		out[i].E0, out[i].S0 = r.place(s.from.side, s.from.t)
		out[i].E1, out[i].S1 = r.place(s.to.side, s.to.t)
	}
	return out
}

// slice returns the spans of the level an instant off y, on the given side
// (1 below on paper, −1 above), put back on y.
func (r *Region) slice(y float64, off int) []hitSpan {
	var hits []levelHit
	clear := func(b *Box, _, _ int) bool { return b.Max.Y < y-levelSnap || b.Min.Y > y+levelSnap }
	for i := r.spread.next(0, clear); i < len(r.pieces); i = r.spread.next(i+1, clear) {
		m := &r.pieces[i]
		s0, s1 := levelSide(m.p0.Y, y), levelSide(m.p1.Y, y)
		// Ends on the level lie on the other side of one that is off it.
		if (s0 == off) == (s1 == off) {
			continue
		}
		h := levelHit{side: int(m.owner), change: 1}
		if m.p0.Y > m.p1.Y {
			h.change = -1
		}
		switch g := &r.sides[m.owner].Segment; {
		case s0 == 0:
			h.t, h.x = m.t0, m.p0.X
		case s1 == 0:
			h.t, h.x = m.t1, m.p1.X
		default:
			h.t = m.levelParam(g, y)
			h.x = g.at(h.t).X
		}
		hits = append(hits, h)
	}
	slices.SortStableFunc(hits, func(a, b levelHit) int { return cmp.Compare(a.x, b.x) })
	var out []hitSpan
	winding := 0
	for i, h := range hits {
		before := winding
		winding += h.change
		if before == 0 {
			out = append(out, hitSpan{from: h})
		}
		if winding == 0 || i == len(hits)-1 {
			out[len(out)-1].to = h
		}
	}
	return out
}
