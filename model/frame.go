package model

import "math"

// sameHeight is how far apart, in millimetres, two pieces may state a level and
// still have it at one height: what rounding a figure in another unit leaves.
const sameHeight = 0.5

// SameFrame reports whether two pieces are drawn in one frame: both in the
// garment's, or with the levels that both have at the same heights.
func (p *Piece) SameFrame(o *Piece) bool {
	if p == o || !p.OwnLevels && !o.OwnLevels {
		return true
	}
	return p.meets(o) && p.Parted(o) == nil
}

// meets reports whether two pieces have a level in common.
func (p *Piece) meets(o *Piece) bool {
	for _, l := range p.levels(o) {
		if _, _, both := heightsOf(p, o, l); both {
			return true
		}
	}
	return false
}

// levels are those that one of two pieces states for itself.
func (p *Piece) levels(o *Piece) []LevelValue {
	if p.OwnLevels {
		return p.LevelsAt
	}
	return o.LevelsAt
}

// Parted is the first level that two pieces have at different heights, or nil.
func (p *Piece) Parted(o *Piece) *Level {
	if !p.OwnLevels && !o.OwnLevels {
		return nil
	}
	for _, v := range p.levels(o) {
		if a, b, both := heightsOf(p, o, v); both && math.Abs(a-b) > sameHeight {
			return v.Level
		}
	}
	return nil
}

func heightsOf(p, o *Piece, v LevelValue) (a, b float64, both bool) {
	a, okA := p.LevelY(v.Level)
	b, okB := o.LevelY(v.Level)
	return a, b, okA && okB
}

// AsDrawn reports whether the inside's pieces lie in each other as they are drawn:
// it says so itself, or it names no share and all are drawn in one frame.
func (n *Inside) AsDrawn() bool {
	if n.Align != nil {
		return false
	}
	return n.Laid || n.outOfFrame() == nil
}

// outOfFrame is a piece that is not drawn in one frame with the first outer one,
// or nil.
func (n *Inside) outOfFrame() *Piece {
	for _, side := range []Group{n.Outer, n.Inner} {
		for _, p := range side {
			if !n.Outer[0].SameFrame(p) {
				return p
			}
		}
	}
	return nil
}

// Framed is the reason why an inside without a share does not tell how its pieces
// lie in each other, or nil.
func (n *Inside) Framed() error {
	if n.AsDrawn() {
		return nil
	}
	first, other := n.Outer[0], n.outOfFrame()
	why := ""
	if l := first.Parted(other); l != nil {
		why = ": they have the " + l.Name + " level at different heights"
	}
	return Missingf("%s and %s are not drawn in one frame%s, and the inside names no share to lay them together by", first.Address(), other.Address(), why)
}
