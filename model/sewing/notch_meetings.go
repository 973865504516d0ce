package sewing

import (
	"math"
	"slices"

	"understitch/model"
)

// NotchMeeting is what a notch comes to lie on in one seam, closure or share.
type NotchMeeting struct {
	Thing   model.Thing
	Partner *model.Notch
	Off     float64 // millimetres that the pair is misplaced by; NaN where the notch lies on no place of its edge
	Along   float64 // where along its own edge, as drawn, the notch would meet its partner; NaN on another edge
}

// meetings are those of every notch of a garment, once they are found.
type meetings struct {
	of map[*model.Notch][]NotchMeeting
}

// Meetings are the notches that a notch is laid on. One that lies beyond the ends
// of its edge is taken to belong to the notch of its name that has no partner. The
// two halves of a mirrored pair are no partners.
func Meetings(g *model.Garment, n *model.Notch) []NotchMeeting {
	kept := model.In[meetings](&g.Store)
	if kept.of == nil {
		kept.of = map[*model.Notch][]NotchMeeting{}
		for _, j := range g.Joins() {
			if a, b, err := Walks(g, j); err == nil {
				noteMeetings(g, j.Thing, a, b)
			}
		}
		for _, s := range g.Shares {
			if a, b, _, err := ShareWalks(g, s); err == nil {
				noteMeetings(g, s, a, b)
			}
		}
	}
	return kept.of[n]
}

func noteMeetings(g *model.Garment, thing model.Thing, a, b *Walk) {
	pairs, onlyA, onlyB := PairNotches(a, b)
	for _, p := range pairs {
		if p.A.Notch != p.B.Notch {
			off := Misplaced(p.Off(), a.Length-b.Length)
			noteMeeting(g, thing, a, p.A.Notch, p.B.Notch, off, p.A.At-off)
			noteMeeting(g, thing, b, p.B.Notch, p.A.Notch, -off, p.B.At+off)
		}
	}
	lost := func(w *Walk, alone []WalkNotch, whole float64) {
		for _, n := range w.Lost {
			for _, other := range alone {
				if other.Notch.Name == n.Name {
					noteMeeting(g, thing, w, n, other.Notch, model.Unknown(), other.At*w.Length/whole)
				}
			}
		}
	}
	lost(a, onlyB, b.Length)
	lost(b, onlyA, a.Length)
}

func noteMeeting(g *model.Garment, thing model.Thing, w *Walk, n, partner *model.Notch, off, at float64) {
	edge, along := w.Place(at)
	if edge != n.On {
		along = model.Unknown()
	}
	kept := model.In[meetings](&g.Store)
	kept.of[n] = append(kept.of[n], NotchMeeting{thing, partner, off, along})
}

// MeantLevel is the level that a notch given by a point is meant to mark: the one
// at whose height the point lies, or whose name the notch has. Along is where the
// edge crosses it now. There is none where the edge does not cross the level, or
// crosses it more than once.
func MeantLevel(n *model.Notch, levels []*model.Level, near float64) (l *model.Level, along float64) {
	if !n.ByPoint || !n.On.Drawn() {
		return nil, 0
	}
	for _, level := range levels {
		y, ok := n.On.Piece.LevelY(level)
		if !ok || (math.Abs(n.Point.Y-y) > near && n.Name != level.Name) {
			continue
		}
		if at := n.On.Path.Crossings(y); len(at) == 1 {
			return level, at[0]
		}
	}
	return nil, 0
}

// spare is how much more than need be a place proposed keeps clear, so that it
// still does when it is written with the digits of a ruler.
const spare = 0.3

// OffLine reports whether the notch was given by a point that lies further than so
// many millimetres off its edge.
func OffLine(n *model.Notch, most float64) bool {
	_, off, err := n.Position()
	return err == nil && off > most
}

// ClearPlace is the place nearest to one along the notch's edge at which the
// notch keeps so far from corners, darts and the other notches of its edge; ok
// tells whether the edge has room for it.
func ClearPlace(n *model.Notch, at, clear float64) (along float64, ok bool) {
	near := nearbyNotches(n)
	candidates := []float64{at}
	for _, r := range near {
		candidates = append(candidates, r.From-clear-spare, r.To+clear+spare)
	}
	for _, s := range candidates {
		crowded := func(r nearby) bool { return s > r.From-clear && s < r.To+clear }
		if s < 0 || s > n.On.Length() || slices.ContainsFunc(near, crowded) {
			continue
		}
		if !ok || math.Abs(s-at) < math.Abs(along-at) {
			along, ok = s, true
		}
	}
	return along, ok
}

// clearOf is what a notch keeps clear of corners, darts and other notches by, in
// millimetres, where it is a question which of two notches is out of its place
// (see the rule notch-spacing). No figure depends on it.
const clearOf = 12.7

// Crowded reports whether the notch lies closer to a corner, a dart or another
// notch than a cutter would put one.
func Crowded(n *model.Notch) bool {
	at, _, err := n.Position()
	if err != nil {
		return false
	}
	clear, ok := ClearPlace(n, at, clearOf)
	return !ok || clear != at
}

// nearby is a stretch of an edge that a notch must keep clear of, along the edge
// as drawn: a corner, a dart's mouth, another notch.
type nearby struct{ From, To float64 }

func nearbyNotches(n *model.Notch) []nearby {
	e := n.On
	var out []nearby
	for _, atEnd := range []bool{false, true} {
		if corner(e, atEnd) {
			at := 0.0
			if atEnd {
				at = e.Length()
			}
			out = append(out, nearby{at, at})
		}
	}
	for _, m := range e.Mouths() {
		out = append(out, nearby{m.From, m.To})
	}
	for _, other := range e.Piece.Notches {
		if at, _, err := other.Position(); err == nil && other != n && other.On == e {
			out = append(out, nearby{at, at})
		}
	}
	return out
}
