package measured

import (
	"math"

	"understitch/model"
)

// Of measures a garment in the size at hand.
func Of(g *model.Garment) Size {
	s := Size{
		Size:     g.Size,
		Layers:   map[string]Layer{},
		Seams:    map[string]Pair{},
		Shares:   map[string]Pair{},
		Nests:    map[string]Nest{},
		Closures: map[string]Closure{},
		Runs:     map[string]Run{},
		Elastics: map[string]Elastic{},
		Bones:    map[string]Bone{},
	}
	for _, l := range g.Layers {
		s.Layers[l.Name] = layer(g, l)
	}
	for _, x := range g.Seams {
		s.Seams[x.Name] = join(g, g.JoinOf(x))
	}
	for _, x := range g.Shares {
		s.Shares[x.Name] = pair(g.ShareWalks(x))
	}
	for _, x := range g.Nests {
		s.Nests[x.Name] = nest(g, x)
	}
	for _, x := range g.Closures {
		c := Closure{Pair: join(g, g.JoinOf(x))}
		if x.Tape != nil {
			c.Across = figure(x.Across())
		}
		s.Closures[x.Name] = c
	}
	for _, x := range g.Measures {
		s.Runs[x.Name] = run(g, x)
	}
	for _, x := range g.Elastics {
		s.Elastics[x.Name] = Elastic{figure(together(x.Edges)), known(x.Length)}
	}
	for _, x := range g.Bones {
		s.Bones[x.Name] = Bone{figure(x.Along.SewnLength()), known(x.Length)}
	}
	return s
}

func layer(g *model.Garment, l *model.Layer) Layer {
	out := Layer{Girth: Levels{}, Pieces: map[string]Piece{}}
	for _, level := range g.Levels {
		girth, err := g.Girth(l, level)
		out.Girth.put(level, girth, err)
	}
	for _, p := range l.Pieces {
		out.Pieces[p.Name] = piece(g, p)
	}
	return out
}

func piece(g *model.Garment, p *model.Piece) Piece {
	out := Piece{
		Width:   Levels{},
		Edges:   map[string]Edge{},
		Darts:   map[string]Dart{},
		Notches: map[string]Notch{},
	}
	if region, err := p.Region(); err == nil {
		out.Area = known(region.Area())
	}
	round := 0.0
	for _, e := range p.Edges {
		round += e.Length()
		out.Edges[e.Name] = Edge{known(e.Length()), known(e.SewnLength()), known(e.Allowance.Width)}
	}
	out.Perimeter = known(round)
	for _, level := range g.Levels {
		w, err := p.Width(level)
		out.Width.put(level, w.Net, err)
	}
	for _, d := range p.Darts {
		out.Darts[d.Name] = dart(d)
	}
	for _, n := range p.Notches {
		out.Notches[n.Name] = notch(n)
	}
	return out
}

func dart(d *model.Dart) Dart {
	out := Dart{Intake: known(d.Intake)}
	if legs := d.Legs(); len(legs) > 0 {
		a, b := legs[0].Lengths()
		out.Legs = &[2]float64{a, b}
	}
	return out
}

func notch(n *model.Notch) Notch {
	out := Notch{On: n.On.Name}
	at, _, err := n.Position()
	out.At = figure(at, err)
	if mark, err := n.Mark(); err == nil {
		out.X, out.Y = &mark.X, &mark.Y
	}
	return out
}

func join(g *model.Garment, j *model.Join) Pair {
	a, b, err := g.Walks(j)
	return pair(a, b, j.Way(), err)
}

func pair(a, b *model.Walk, foundBy string, err error) Pair {
	if err != nil {
		return Pair{}
	}
	out := Pair{Way: "along", FoundBy: foundBy}
	if a.Runs[0].Backward() != b.Runs[0].Backward() {
		out.Way = "against"
	}
	if model.Known(a.Length) && model.Known(b.Length) {
		difference := a.Length - b.Length
		out.Sides, out.Difference = &[2]float64{a.Length, b.Length}, &difference
	}
	return out
}

func nest(g *model.Garment, n *model.Nest) Nest {
	out := Nest{Clearance: Levels{}}
	levels := n.Compared(g)
	for _, level := range levels {
		c, err := n.ClearanceAt(level)
		out.Clearance.put(level, c, err)
	}
	if len(levels) < 2 || !n.SameHalves() {
		return out
	}
	first, last := levels[0], levels[len(levels)-1]
	top, _ := n.Outer.LevelY(first)
	bottom, _ := n.Outer.LevelY(last)
	if n.OneFrame() {
		if least, err := n.LeastBetween(top, bottom); err == nil {
			out.Least = known(least.High)
		}
	}
	frame, err := n.Frame(g)
	if err != nil {
		return out
	}
	if beside, err := n.BesideEachOther(g); err != nil || beside {
		return out
	}
	if bound, err := n.OutsideBetween(frame, top, bottom); err == nil {
		out.Outside = known(bound.High)
	}
	return out
}

func run(g *model.Garment, m *model.Measure) Run {
	out := Run{Parts: []RunPart{}, Body: known(m.Against)}
	length, err := g.RunLength(m)
	if err != nil {
		return out
	}
	out.Total = known(length.Total)
	for _, p := range length.Parts {
		item := ""
		if p.Item.Closure != nil {
			item = p.Item.Closure.Address()
		} else {
			item = p.Item.Stretch.String()
		}
		out.Parts = append(out.Parts, RunPart{item, p.Length})
	}
	return out
}

func together(stretches []model.Stretch) (float64, error) {
	sum := 0.0
	for _, s := range stretches {
		l, err := s.SewnLength()
		if err != nil {
			return 0, err
		}
		sum += l
	}
	return sum, nil
}

func (l Levels) put(level *model.Level, v float64, err error) {
	if f := figure(v, err); f != nil {
		l[level.Name] = *f
	}
}

// figure is a computed figure, nil where it could not be had.
func figure(v float64, err error) *float64 {
	if err != nil {
		return nil
	}
	return known(v)
}

// known is a stated figure, nil where it was not.
func known(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}
