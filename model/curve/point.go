package curve

import "math"

// Point is a place, or a step from one place to another, in millimetres.
// X runs to the right, Y runs down the paper.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale returns p stretched by k.
func (p Point) Scale(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product of p and q.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the signed area spanned by p and q; it is positive when q
// lies clockwise of p as seen on paper (Y downward).
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Len returns the length of p. It does not overflow sooner than the length
// itself does, nor does it vanish for very short steps.
func (p Point) Len() float64 {
	if q := p.X*p.X + p.Y*p.Y; q > 1e-280 && q < 1e280 {
		return math.Sqrt(q)
	}
	return math.Hypot(p.X, p.Y)
}

// Dist returns the distance between p and q.
func (p Point) Dist(q Point) float64 { return p.Sub(q).Len() }

// Lerp returns the point at share t of the way from p to q. It meets q
// exactly at t = 1.
func (p Point) Lerp(q Point, t float64) Point {
	return Point{p.X*(1-t) + q.X*t, p.Y*(1-t) + q.Y*t}
}

// Unit returns p brought to length 1, or the zero point if p has no length.
func (p Point) Unit() Point {
	l := p.Len()
	if l == 0 {
		return Point{}
	}
	return Point{p.X / l, p.Y / l}
}

// Perp returns p turned by a quarter, clockwise as seen on paper.
func (p Point) Perp() Point { return Point{-p.Y, p.X} }

func (p Point) finite() bool {
	return !math.IsNaN(p.X-p.X) && !math.IsNaN(p.Y-p.Y)
}

// Box is an upright rectangle, Min at its top left as seen on paper.
type Box struct{ Min, Max Point }

// emptyBox holds nothing; the first point put in makes it that point.
func emptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf}, Point{-inf, -inf}}
}

func (b Box) with(p Point) Box {
	return Box{
		Point{min(b.Min.X, p.X), min(b.Min.Y, p.Y)},
		Point{max(b.Max.X, p.X), max(b.Max.Y, p.Y)},
	}
}

// Union returns the smallest box that holds b and c.
func (b Box) Union(c Box) Box { return b.with(c.Min).with(c.Max) }

// Width returns the extent of the box from left to right.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height returns the extent of the box from top to bottom.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// distance returns how far q lies outside the box, 0 inside it.
func (b Box) distance(q Point) float64 {
	dx := max(b.Min.X-q.X, 0, q.X-b.Max.X)
	dy := max(b.Min.Y-q.Y, 0, q.Y-b.Max.Y)
	if dx == 0 {
		return dy
	}
	if dy == 0 {
		return dx
	}
	return math.Sqrt(dx*dx + dy*dy)
}

// apart tells whether the boxes are more than gap away from each other.
func (b Box) apart(c Box, gap float64) bool {
	return b.Min.X > c.Max.X+gap || c.Min.X > b.Max.X+gap ||
		b.Min.Y > c.Max.Y+gap || c.Min.Y > b.Max.Y+gap
}
