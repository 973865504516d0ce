package reckoned

import (
	"math"

	"understitch/model"
)

// walk accounts for one side of a join or share.
func (l *Lines) walk(w *model.Walk) {
	for _, r := range w.Runs {
		l.stretch(2, r.Edge, r.From, r.To)
	}
	for _, n := range w.Notches {
		l.figure(2, n.At, "%s lies from the start of this side", n.Notch.Address())
	}
	l.sum(1, w.Length, "this side in all, darts closed")
}

func (l *Lines) join(g *model.Garment, j *model.Join) {
	a, b, err := g.Walks(j)
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.say(1, "first side")
	l.walk(a)
	l.say(1, "second side; it runs as it does by %s", j.Way())
	l.walk(b)
	l.sum(0, a.Length-b.Length, "the first side is longer by")
	l.ease(j.Ease)
}

func (l *Lines) ease(r model.Range) {
	if r.Low == r.High {
		l.figure(0, r.Low, "meant")
		return
	}
	l.ends("ease", r)
}

// ends writes a range that is asked for.
func (l *Lines) ends(what string, r model.Range) {
	if !math.IsInf(r.Low, 0) {
		l.figure(0, r.Low, "%s asked for, from", what)
	}
	if !math.IsInf(r.High, 0) {
		l.figure(0, r.High, "%s asked for, to", what)
	}
}

func (l *Lines) share(g *model.Garment, s *model.Share) {
	outer, inner, way, err := g.ShareWalks(s)
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.say(1, "the outer layer's")
	l.walk(outer)
	l.say(1, "the inner layer's; it runs as it does by %s", way)
	l.walk(inner)
	l.sum(0, outer.Length-inner.Length, "the outer is longer by")
}

func (l *Lines) nest(g *model.Garment, n *model.Nest) {
	for _, level := range n.Compared(g) {
		for _, group := range []model.Group{n.Outer, n.Inner} {
			for _, p := range group {
				l.width(1, p, level)
			}
		}
		clearance, err := n.ClearanceAt(level)
		if err != nil {
			l.cannot(0, err)
			continue
		}
		l.sum(0, clearance, "clearance at the %s level, outer less inner", level.Name)
		l.ends("clearance", n.Allowed(level))
	}
}

func (l *Lines) closure(g *model.Garment, c *model.Closure) {
	l.join(g, g.JoinOf(c))
	length, halves, err := c.FullLength()
	if err != nil {
		l.cannot(0, err)
		return
	}
	if halves {
		l.sum(0, length, "made up, both halves beside the fold together")
	}
	if c.Tape == nil {
		return
	}
	t := c.Tape
	l.figure(0, t.Pitch, "pitch of tape.%s", t.Name)
	l.figure(0, t.Head, "metal along it")
	l.figure(0, t.Clear, "least clear of metal at a cut")
	holding, below, above := t.Windows(length)
	for _, w := range append(holding, around(below, above)...) {
		l.figure(1, w.Low, "with %d fasteners it can be cut from", w.Fasteners)
		l.figure(1, w.High, "to")
	}
	if across, err := c.Across(); err == nil {
		l.figure(0, across, "across when closed, in a run")
	}
}

func around(below, above *model.Window) []model.Window {
	var out []model.Window
	for _, w := range []*model.Window{below, above} {
		if w != nil {
			out = append(out, *w)
		}
	}
	return out
}

func (l *Lines) run(g *model.Garment, m *model.Measure) {
	run, err := g.RunLength(m)
	if err != nil {
		l.cannot(0, err)
		return
	}
	for _, p := range run.Parts {
		what := ""
		if p.Item.Closure != nil {
			what = p.Item.Closure.Address() + ", closed"
		} else {
			what = p.Item.Stretch.String()
		}
		l.figure(1, p.Length, "%s", what)
	}
	l.sum(0, run.Total, "%s in all", m.Address())
	if model.Known(m.Against) {
		l.figure(0, m.Against, "the body's")
		l.sum(0, run.Total-m.Against, "ease")
	}
	l.ends("ease", m.Ease)
}

func (l *Lines) elastic(e *model.Elastic) {
	sum := 0.0
	for _, s := range e.Edges {
		length, halves, err := s.FullLength()
		if err != nil {
			l.cannot(0, err)
			return
		}
		note := ""
		if halves {
			note = ", both halves beside the fold together"
		}
		l.figure(1, length, "%s%s", s, note)
		sum += length
	}
	l.sum(0, sum, "the edges in all")
	l.figure(0, e.Length, "the elastic")
}

func (l *Lines) bone(b *model.Bone) {
	channel, err := b.Along.SewnLength()
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.figure(0, channel, "the channel, %s", b.Along)
	l.figure(0, b.Length, "the bone")
	l.sum(0, (channel-b.Length)/2, "room at either end")
}

func (l *Lines) alteration(a *model.Alteration) {
	for _, v := range a.Inward {
		l.figure(1, v.Value, "inward at the %s level", v.Level.Name)
	}
	for _, e := range a.Edges {
		if e.Drafted != nil {
			l.figure(0, e.Drafted.Length(), "%s as drafted", e.Address())
		}
		l.figure(0, e.Length(), "%s as re-drawn", e.Address())
	}
}
