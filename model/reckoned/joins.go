package reckoned

import (
	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// Walk accounts for one side of a join or share, and adds it to what follows, or
// takes it off.
func (l *Lines) Walk(depth int, sign float64, w *sewing.Walk, name string) {
	if len(w.Runs) == 1 && len(w.Notches) == 0 {
		l.stretch(depth, sign, w.Runs[0].Edge, w.Runs[0].From, w.Runs[0].To)
		return
	}
	for _, r := range w.Runs {
		l.stretch(depth+1, 1, r.Edge, r.From, r.To)
	}
	for _, n := range w.Notches {
		l.Beside(depth+1, n.At, "%s lies from the start of this side", n.Notch.Address())
	}
	l.Sum(depth, sign*w.Length, "%s%s in all, darts closed", less(sign), name)
}

// less is the word for what is taken off.
func less(sign float64) string {
	if sign < 0 {
		return "less "
	}
	return ""
}

// Sides accounts for both sides of a join or share, and gives how much longer the
// first is.
func (l *Lines) Sides(depth int, a, b *sewing.Walk, first, second, way string) {
	l.Walk(depth+1, 1, a, first)
	if way != "" {
		l.Say(depth+2, "which way %s runs is told by %s", second, way)
	}
	l.Walk(depth+1, -1, b, second)
	l.Sum(depth, a.Length-b.Length, "is how much longer %s is", first)
}

func (l *Lines) join(g *model.Garment, j *model.Join) {
	a, b, err := sewing.Walks(g, j)
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.Sides(0, a, b, "the first side", "the second side", sewing.Way(j))
	l.Say(0, "an ease of %s is meant", g.ShowRange(j.Ease))
}

func (l *Lines) share(g *model.Garment, s *model.Share) {
	outer, inner, way, err := sewing.ShareWalks(g, s)
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.Sides(0, outer, inner, "the outer side", "the inner side", way)
	if s.Match != model.Eased {
		return
	}
	l.Say(0, "an ease of %s is meant", g.ShowRange(s.Ease))
	if spread, err := sewing.SpreadOf(s, outer, inner); err == nil {
		l.Spread(0, g, spread)
	}
}

// Spread tells how the ease of an eased share is spread from mark to mark.
func (l *Lines) Spread(depth int, g *model.Garment, s sewing.EaseSpread) {
	l.BesideIn(Percent, depth, s.Percent(), "is the ease in all, of the %s that it is eased on to", g.Show(s.Inner))
	for _, st := range s.Stretches {
		l.Beside(depth+1, st.Ease(), "of it from %s to %s, %s %%", st.From.Name, st.To.Name, model.Decimal(st.Percent(), 1))
	}
}

func (l *Lines) inside(g *model.Garment, n *model.Inside) {
	for _, level := range layering.Compared(n, g) {
		if _, err := layering.ClearanceAt(n, level); err != nil {
			l.cannot(0, err)
			continue
		}
		l.Clearance(g, n, level)
	}
}

// Clearance accounts for what the outer piece of an inside measures more across at a
// level that both reach.
func (l *Lines) Clearance(g *model.Garment, n *model.Inside, level *model.Level) {
	clearance, err := layering.ClearanceAt(n, level)
	if err != nil {
		l.cannot(0, err)
		return
	}
	as, bs := n.Outer.Times(), n.Inner.Times() // as ClearanceAt counts them
	l.group(1, 1, n.Outer, level, as/min(as, bs))
	l.group(1, -1, n.Inner, level, bs/min(as, bs))
	l.Sum(0, clearance, "is the clearance at the %s level, outer less inner", level.Name)
	if allowed := n.Allowed(level); !allowed.Any() {
		l.Say(0, "a clearance of %s is meant", g.ShowRange(allowed))
	}
}

// group accounts for the pieces on one side of an inside, which count so many times.
func (l *Lines) group(depth int, sign float64, pieces model.Group, level *model.Level, times float64) {
	if len(pieces) == 1 && times == 1 {
		l.Width(depth, sign, pieces[0], level)
		return
	}
	sum, in := 0.0, depth+1
	if len(pieces) > 1 && times != 1 {
		in++
	}
	for _, p := range pieces {
		l.Width(in, 1, p, level)
		if w, err := measuring.WidthOf(p, level); err == nil {
			sum += w.Net
		}
	}
	if len(pieces) > 1 {
		if times == 1 {
			l.Sum(depth, sign*sum, "%s%s across together", less(sign), pieces.Address())
			return
		}
		l.Sum(depth+1, sum, "%s across together", pieces.Address())
	}
	l.Result(depth, sign*sum*times, "%s%s, %g times, both halves beside the fold together", less(sign), pieces.Address(), times)
}

func (l *Lines) closure(g *model.Garment, c *model.Closure) {
	l.join(g, g.JoinOf(c))
	if _, err := sewing.WholeClosure(g, c, 0); err != nil {
		l.cannot(0, err)
		return
	}
	l.Full(g, 0, 1, g.JoinOf(c).Sides[0], "")
	if c.Tape == nil {
		return
	}
	l.Tape(g, c, c.Tape)
	if across, err := sewing.Across(c); err == nil {
		l.Beside(0, across, "across when closed, in a run")
	}
}

// Tape tells where a tape can be cut for a closure.
func (l *Lines) Tape(g *model.Garment, c *model.Closure, t *model.Tape) {
	whole, err := sewing.WholeClosure(g, c, 0)
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.Beside(1, t.Pitch, "pitch of tape.%s", t.Name)
	l.Beside(1, t.Head, "metal along it")
	l.Beside(1, t.Clear, "least clear of metal at a cut")
	holding, below, above := t.Windows(whole.Length)
	for _, w := range append(holding, around(below, above)...) {
		l.Beside(1, w.Low, "with %d fasteners it can be cut from", w.Fasteners)
		l.Beside(1, w.High, "to")
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

// Full accounts for a line of stretches as it is when the piece is made up: what is
// drawn by its half counts twice.
func (l *Lines) Full(g *model.Garment, depth int, sign float64, side []model.Stretch, name string) {
	if name != "" {
		name = ", " + name
	}
	whole, err := sewing.WholeOf(g, side)
	if err != nil {
		l.cannot(depth, err)
		return
	}
	add := func(depth int, sign float64) {
		for _, s := range side {
			if from, to, err := s.Extent(); err == nil {
				l.stretch(depth, sign, s.Edge, from, to)
			}
		}
	}
	text := sewing.SideText(side)
	if len(side) == 1 {
		text = side[0].String()
	}
	switch {
	case len(side) == 1 && !whole.Halves:
		add(depth, sign)
	case len(side) == 1:
		add(depth+1, 1)
		l.Result(depth, sign*whole.Length, "%s%s twice, both halves together%s", less(sign), text, name)
	case !whole.Halves:
		add(depth+1, sign)
		l.Sum(depth, sign*whole.Length, "%s%s together%s", less(sign), text, name)
	default:
		add(depth+2, 1)
		l.Sum(depth+1, whole.Length/2, "%s together", text)
		l.Result(depth, sign*whole.Length, "%sthat twice, both halves together%s", less(sign), name)
	}
}

// Run accounts for a run of a tape over the pattern, and the ease in it.
func (l *Lines) Run(g *model.Garment, m *model.Measure) {
	run, err := sewing.LayRun(g, m)
	if err != nil {
		l.cannot(0, err)
		return
	}
	for _, p := range run.Parts {
		if c := p.Item.Closure; c != nil {
			l.Add(2, p.Length, "%s, closed", c.Address())
			continue
		}
		l.Add(2, p.Length, "%s", p.Item.Stretch)
	}
	l.Sum(1, run.Total, "%s in all", m.Address())
	if !m.Ease.Any() {
		l.Say(1, "an ease of %s is asked for", g.ShowRange(m.Ease))
	}
	if model.Known(m.Against) {
		l.Add(1, -m.Against, "less the body's")
		l.Sum(0, run.Total-m.Against, "is the ease")
	}
}

// Elastic accounts for the edges that an elastic is sewn to.
func (l *Lines) Elastic(g *model.Garment, e *model.Elastic) {
	w, err := sewing.LayOut(g, e.Edges)
	if err != nil {
		l.cannot(0, err)
		return
	}
	whole, err := sewing.WholeOf(g, e.Edges)
	if err != nil {
		l.cannot(0, err)
		return
	}
	for _, r := range w.Runs {
		l.stretch(2, 1, r.Edge, r.From, r.To)
	}
	l.Sum(1, w.Length, "the edges in all")
	if whole.Halves {
		l.Result(0, whole.Length, "twice that, as it goes on in the other half")
	}
	if parts, asked, err := sewing.Sections(g, e); err == nil && len(parts) > 0 {
		for _, s := range parts {
			l.Beside(1, s.Edges, "%s, on which a section lies", s.Along())
			l.Beside(1, s.Takes.Low, "it takes at least")
			l.Beside(1, s.Takes.High, "it takes at most")
		}
		l.Beside(0, asked.Low, "the sections take at least, together")
		l.Beside(0, asked.High, "and at most")
	}
	l.Result(0, e.Length, "is the elastic")
}

// Bone accounts for how much shorter a bone is than its channel.
func (l *Lines) Bone(b *model.Bone) {
	channel, err := b.Along.SewnLength()
	if err != nil {
		l.cannot(0, err)
		return
	}
	l.Add(1, channel, "the channel, %s", b.Along)
	l.Add(1, -b.Length, "less the bone")
	l.Sum(0, channel-b.Length, "is the room in the channel, both ends together")
}

func (l *Lines) alteration(a *model.Alteration) {
	for _, v := range a.Inward {
		l.Beside(1, v.Value, "inward at the %s level", v.Level.Name)
	}
	for _, v := range a.Down {
		l.Beside(1, v.Value, "down at %s", v.Name)
	}
	for _, e := range a.Edges {
		if e.Drafted != nil {
			l.Beside(0, e.Drafted.Length(), "%s as drafted", e.Address())
		}
		l.Beside(0, e.Length(), "%s as re-drawn", e.Address())
	}
}
