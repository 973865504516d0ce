package faults

import (
	"understitch/cmd/corpus/internal/sheet"
	"understitch/cmd/corpus/internal/wardrobe"
)

var closures = []Fault{
	{"a tape that is cut through metal", "tape-cut", hitMetal},
	{"one edge of a closure longer", "closure-edges", closureLonger},
	{"two halves of a tape out of step", "tape-pair", otherHalf},
	{"a zip that is not in stock", "zip-length", noZip},
	{"a button out of its row", "button-spacing", buttonOff},
	{"too little past the buttons", "button-spacing", extensionShort},
}

// misses reports whether a tape cannot be cut so long, by at least a little.
func misses(t *sheet.FastenerTape, length float64) bool {
	const little = 0.6
	for n := 1; float64(n-1)*t.Pitch < length; n++ {
		least := float64(n-1)*t.Pitch + t.Head + 2*t.Clear
		most := float64(n+1)*t.Pitch - t.Head - 2*t.Clear
		if length > least-little && length < most+little {
			return false
		}
	}
	return true
}

// hitMetal takes a tape of another pitch, which has a fastener at the cut.
func hitMetal(p *Planter) (string, bool) {
	var c *sheet.Closure
	for _, each := range p.Closures {
		if each.Kind == "tape" {
			c = each
		}
	}
	if c == nil {
		return "", false
	}
	piece, e := p.Edge(c.A.Edge)
	length := wardrobe.Length(e)
	if piece.Fold != "" || piece.Cut == 2 && c.A.Edge != c.B.Edge { // both halves of a pair sewn together
		length *= 2
	}
	var tape sheet.FastenerTape
	for _, t := range wardrobe.House().Tapes {
		if t.Name == c.Tape {
			tape = *t
		}
	}
	var pitches []float64
	for pitch := 14.0; pitch < 24; pitch += 0.25 {
		tape.Pitch = pitch
		if misses(&tape, length) {
			pitches = append(pitches, pitch)
		}
	}
	var ok bool
	if tape.Pitch, ok = one(p, pitches); !ok {
		return "", false
	}
	p.Tapes = append(p.Tapes, &tape)
	return "closure." + c.Name, true
}

// closureLonger widens the back of a gusset against its front.
func closureLonger(p *Planter) (string, bool) {
	for _, c := range p.Closures {
		if c.A.Edge == c.B.Edge || c.Kind != "tape" {
			continue
		}
		_, e := p.Edge(c.B.Edge)
		piece, _ := p.Edge(c.B.Edge)
		s := spot{piece: piece, edge: e}
		by := p.by(2, 4) // on the fold: twice that
		p.touch(spot{address: c.B.Edge, piece: piece, layer: p.layerOf(c.B.Edge)})
		n := len(s.before().Pts)
		move(e, 0, by, 0)
		move(s.before(), n-1, by, 0)
		move(s.before(), n-2, by, 0)
		return "closure." + c.Name, true
	}
	return "", false
}

func (p *Planter) closure(kind string) (*sheet.Closure, bool) {
	for _, c := range p.Closures {
		if c.Kind == kind {
			return c, true
		}
	}
	return nil, false
}

// otherHalf takes the second half of another make, with a pitch a little off.
func otherHalf(p *Planter) (string, bool) {
	c, ok := p.closure("tape")
	if !ok {
		return "", false
	}
	for _, t := range wardrobe.House().Tapes {
		if t.Name == c.Tape {
			other := *t
			other.Name = "other-make"
			other.Pitch += p.sign() * p.by(0.1, 0.2)
			p.Tapes = append(p.Tapes, &other)
		}
	}
	c.OtherTape = "other-make"
	return "closure." + c.Name, true
}

func noZip(p *Planter) (string, bool) {
	c, ok := p.closure("zip")
	if !ok {
		return "", false
	}
	piece, e := p.Edge(c.A.Edge)
	length := wardrobe.Length(e)
	for _, n := range piece.Notches {
		if n.Name == "zip" {
			at := n.At.Base()
			length = min(at, length-at)
		}
	}
	c.Stock = []float64{length - p.by(40, 60), length*0.97 - p.by(3, 20), length + p.by(3, 20)}
	return "closure." + c.Name, true
}

func buttonOff(p *Planter) (string, bool) {
	c, ok := p.closure("button")
	if !ok || len(c.Buttons) < 4 {
		return "", false
	}
	c.Buttons[1+p.IntN(len(c.Buttons)-2)] += p.sign() * p.by(3, 8)
	return "closure." + c.Name, true
}

func extensionShort(p *Planter) (string, bool) {
	c, ok := p.closure("button")
	if !ok {
		return "", false
	}
	c.Extension = c.Diameter*0.75 - p.by(1, 4)
	return "closure." + c.Name, true
}
