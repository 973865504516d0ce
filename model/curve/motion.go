package curve

import "math"

// Motion is a rigid motion of the paper: a turn and a shift, and before them,
// if it is mirrored, a turning over (Y becomes −Y). The zero value leaves
// everything in its place.
type Motion struct {
	cosLess1, sin float64 // cos of the turn less one, so that zero means no turn
	mirrored      bool
	shift         Point
}

// Identity returns the motion that leaves everything in its place.
func Identity() Motion { return Motion{} }

// Translate returns the shift by v.
func Translate(v Point) Motion { return Motion{shift: v} }

// Rotate returns the turn about centre; a positive angle in radians turns
// clockwise as seen on paper.
func Rotate(centre Point, radians float64) Motion {
	sin, cos := math.Sincos(radians)
	return turnAbout(centre, centre, cos, sin, false)
}

// Mirror returns the turning over along the line through a and b. If the
// points are one, the line is the horizontal through it.
func Mirror(a, b Point) Motion {
	d := b.Sub(a).Unit()
	if d == (Point{}) {
		d = Point{1, 0}
	}
	return turnAbout(a, a, d.X*d.X-d.Y*d.Y, 2*d.X*d.Y, true)
}

// Lay returns the motion that takes the point from to the point to and the
// direction fromDir to toDir, turning the paper over first if mirrored is
// set. Directions need not have length 1; a zero direction asks for no turn.
func Lay(from, fromDir, to, toDir Point, mirrored bool) Motion {
	u, w := fromDir.Unit(), toDir.Unit()
	if mirrored {
		u.Y = -u.Y
	}
	cos, sin := u.Dot(w), u.Cross(w)
	if l := math.Hypot(cos, sin); l > 0 {
		cos, sin = cos/l, sin/l
	} else {
		cos, sin = 1, 0
	}
	return turnAbout(from, to, cos, sin, mirrored)
}

// turnAbout returns the motion with the given turn that takes from to to.
func turnAbout(from, to Point, cos, sin float64, mirrored bool) Motion {
	m := Motion{cosLess1: cos - 1, sin: sin, mirrored: mirrored}
	m.shift = to.Sub(m.Direction(from))
	return m
}

// Apply returns where p goes.
func (m Motion) Apply(p Point) Point { return m.Direction(p).Add(m.shift) }

// Direction returns where the step v goes; it is turned but not shifted.
func (m Motion) Direction(v Point) Point {
	if m.mirrored {
		v.Y = -v.Y
	}
	return Point{
		v.X + (m.cosLess1*v.X - m.sin*v.Y),
		v.Y + (m.sin*v.X + m.cosLess1*v.Y),
	}
}

// Mirrored tells whether the motion turns the paper over.
func (m Motion) Mirrored() bool { return m.mirrored }

// Angle returns the turn in radians, after the turning over if there is one.
func (m Motion) Angle() float64 { return math.Atan2(m.sin, 1+m.cosLess1) }

// Then returns the motion that does m first and next after it.
func (m Motion) Then(next Motion) Motion {
	sin := m.sin
	if next.mirrored { // a turn seen from the back runs the other way
		sin = -sin
	}
	cos, nextCos := 1+m.cosLess1, 1+next.cosLess1
	c, s := nextCos*cos-next.sin*sin, next.sin*cos+nextCos*sin
	l := math.Hypot(c, s) // keeps long chains of motions rigid
	return Motion{
		cosLess1: c/l - 1, sin: s / l,
		mirrored: m.mirrored != next.mirrored,
		shift:    next.Apply(m.shift),
	}
}

// Inverse returns the motion that undoes m.
func (m Motion) Inverse() Motion {
	inv := Motion{cosLess1: m.cosLess1, sin: -m.sin, mirrored: m.mirrored}
	if m.mirrored {
		inv.sin = m.sin
	}
	inv.shift = inv.Direction(m.shift).Scale(-1)
	return inv
}
