package spec

import (
	"math"

	"understitch/model"
)

// tape builds a fastener tape.
func (s *scope) tape(b *block) *model.Tape {
	t := &model.Tape{
		Name:  b.name,
		Kind:  s.choice(b.attr("kind"), "snap", "hook-and-eye"),
		Pitch: s.length(b.attr("pitch"), above0),
		Head:  s.length(b.attr("head"), atLeast0),
		Clear: s.length(b.attr("clear"), atLeast0),
		Place: place(b.header), Stated: b.stated(),
	}
	if e := b.attr("width_closed"); e != nil {
		t.WidthClosed = s.lengths(e, atLeast0)
	}
	s.layout(t, b)
	return t
}

// leastPitch is far below any tape, in millimetres: with less from one fastener to
// the next the figure is a slip, and no length could be told from another.
const leastPitch = 0.5

// layout refuses a tape whose fasteners cannot lie as it states.
func (s *scope) layout(t *model.Tape, b *block) {
	switch {
	case math.IsNaN(t.Pitch) || math.IsNaN(t.Head): // reported already
	case t.Pitch < leastPitch:
		s.fault(b.attr("pitch").Range(), "The pitch goes from one fastener to the same place on the next; is the unit right? Write mm(19) or inch(3/4).",
			"tape %s has a pitch of %s", t.Name, s.unit.ShowSmall(t.Pitch))
	case t.Head > t.Pitch:
		s.fault(b.attr("head").Range(), "Look at head and pitch, and at the units of both.",
			"tape %s has %s of metal at each fastener, which is longer than its pitch of %s", t.Name, s.unit.ShowSmall(t.Head), s.unit.ShowSmall(t.Pitch))
	}
}
