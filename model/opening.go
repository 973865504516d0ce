package model

import "math"

// Opening is a pair of sides that a closure opens between, each one or more
// stretches end to end.
type Opening [2][]Stretch

// Takes reports whether the opening names an edge.
func (o Opening) Takes(e *Edge) bool { return Has(o[0], e) || Has(o[1], e) }

// Takes reports whether the closure opens an edge, on its own layer or on another.
func (c *Closure) Takes(e *Edge) bool {
	for _, o := range c.openings() {
		if o.Takes(e) {
			return true
		}
	}
	return false
}

func (c *Closure) openings() []Opening { return append([]Opening{c.Edges}, c.Also...) }

// Starts is where the first of a closure's edges on a side is named.
func (c *Closure) Starts(side int) Stretch { return c.Edges[side][0] }

// JoinsOf are what a closure joins: its own edges first, then those that the same
// opening closes on other layers.
func (g *Garment) JoinsOf(c *Closure) []*Join {
	var out []*Join
	for _, j := range g.Joins() {
		if j.Thing == Thing(c) {
			out = append(out, j)
		}
	}
	return out
}

// between is what a closure takes of a side: from the first place on it that its
// from marks to the last that its to marks. Of several edges each is entered where
// it meets the one before.
// A layer of its own that does not reach a level ends before it.
func (g *Garment) between(c *Closure, side []Stretch, also bool) []Stretch {
	out := make([]Stretch, len(side))
	copy(out, side)
	cFrom, cTo := c.From, c.To
	if also {
		if g.endsBefore(side, cFrom) {
			cFrom = Mark{}
		}
		if g.endsBefore(side, cTo) {
			cTo = Mark{}
		}
	}
	if len(out) == 1 {
		s := &out[0]
		if cFrom != c.From && s.From.Kind == NoMark {
			cFrom = s.Edge.endTowards(c.From)
		}
		if cTo != c.To && s.To.Kind == NoMark {
			cTo = s.Edge.endTowards(c.To)
		}
		if s.From.Kind == NoMark {
			s.From = cFrom
		}
		if s.To.Kind == NoMark {
			s.To = cTo
		}
		return out
	}
	g.enter(out)
	first, last := 0, len(out)-1
	from, to := cFrom, cTo
	i, j := marked(out, from, false), marked(out, to, true)
	if i >= 0 && j >= 0 && i > j {
		from, to = to, from
		i, j = marked(out, from, false), marked(out, to, true)
	}
	if i >= 0 {
		first, out[i].From = i, from
	} else if atMark(from) {
		out[0].From = from // it lies nowhere, and is reported so
	}
	if j >= first {
		last, out[j].To = j, to
	} else if atMark(to) {
		out[last].To = to
	}
	return withoutNothing(out[first : last+1])
}

// endsBefore reports whether no edge of a side reaches the level of a mark.
func (g *Garment) endsBefore(side []Stretch, m Mark) bool {
	return m.Kind == AtLevel && marked(side, m, false) < 0
}

// Short reports whether one of the sides that a closure opens on another layer ends
// before the closure does.
func (g *Garment) Short(c *Closure, o Opening) bool {
	for _, side := range o {
		if g.endsBefore(side, c.From) || g.endsBefore(side, c.To) {
			return true
		}
	}
	return false
}

// endTowards is the end of an edge that is nearer to a level which the edge does not
// reach.
func (e *Edge) endTowards(m Mark) Mark {
	if y, ok := e.Piece.LevelY(m.Level); ok && e.Drawn() && math.Abs(e.Path.Start().Y-y) < math.Abs(e.Path.End().Y-y) {
		return Mark{Kind: AtStart, Text: "start"}
	}
	return Mark{Kind: AtEnd, Text: "end"}
}

func atMark(m Mark) bool { return m.Kind == AtLevel || m.Kind == AtNotch }

// marked is the first of some stretches (or the last) on which a level or a notch
// lies, -1 where there is none; start and end are those of the list itself.
func marked(side []Stretch, m Mark, last bool) int {
	found := -1
	for i, s := range side {
		if !atMark(m) {
			return -1
		}
		if _, err := s.Edge.MarkAt(m); err == nil {
			if found = i; !last {
				return i
			}
		}
	}
	return found
}

// withoutNothing leaves out the stretches that have no length, as where a mark
// lies where two edges meet.
func withoutNothing(side []Stretch) []Stretch {
	var out []Stretch
	for _, s := range side {
		if from, to, err := s.Extent(); err != nil || to-from > NearEnd {
			out = append(out, s)
		}
	}
	if len(out) == 0 {
		return side
	}
	return out
}

// enter gives stretches without marks of their own the ends at which the line
// along them enters and leaves.
func (g *Garment) enter(side []Stretch) {
	start := Mark{Kind: AtStart, Text: "start"}
	end := Mark{Kind: AtEnd, Text: "end"}
	for i := range side {
		s := &side[i]
		if s.From.Kind != NoMark || s.To.Kind != NoMark {
			continue // part( ) says so itself
		}
		leaves := true // by its end
		if i+1 < len(side) {
			leaves, _ = g.meeting(s.Edge, side[i+1].Edge)
		} else {
			_, entered := g.meeting(side[i-1].Edge, s.Edge)
			leaves = !entered
		}
		if s.From, s.To = start, end; !leaves {
			s.From, s.To = end, start
		}
	}
}

// meeting tells by which ends two edges meet: in a corner of one piece, or where
// the edges beside them are sewn to each other; else the end of the one meets the
// start of the other.
func (g *Garment) meeting(a, b *Edge) (aEnd, bEnd bool) {
	for _, aEnd := range []bool{true, false} {
		for _, bEnd := range []bool{false, true} {
			if a.Neighbour(aEnd) == b && b.Neighbour(bEnd) == a || g.seamed(a.Neighbour(aEnd), b.Neighbour(bEnd)) {
				return aEnd, bEnd
			}
		}
	}
	return true, false
}

// seamed reports whether a seam has two edges on its two sides.
func (g *Garment) seamed(a, b *Edge) bool {
	for _, s := range g.Seams {
		if Has(s.Sides[0], a) && Has(s.Sides[1], b) || Has(s.Sides[0], b) && Has(s.Sides[1], a) {
			return true
		}
	}
	return false
}

// LevelAlong is how far along a closure a level crosses the first of its sides,
// from where the closure begins, darts closed; missing where it crosses outside it.
func (g *Garment) LevelAlong(c *Closure, l *Level) (float64, error) {
	along := 0.0
	var reason error
	for _, s := range g.JoinOf(c).Sides[0] {
		start, end := 0.0, s.Edge.Length()
		var err error
		if s.From.Kind != NoMark {
			if start, err = s.Edge.MarkAt(s.From); err != nil {
				return 0, err
			}
		}
		if s.To.Kind != NoMark {
			if end, err = s.Edge.MarkAt(s.To); err != nil {
				return 0, err
			}
		}
		at, err := s.Edge.LevelAt(l)
		switch {
		case err != nil:
			reason = err
		case at < min(start, end)-NearEnd || at > max(start, end)+NearEnd:
			reason = Missingf("the %s level does not cross %s", l.Name, c.Address())
		default:
			return along + math.Abs(s.Edge.Net(at)-s.Edge.Net(start)), nil
		}
		along += math.Abs(s.Edge.Net(end) - s.Edge.Net(start))
	}
	return 0, reason
}
