package measured

import (
	"math"

	"understitch/model"
	"understitch/model/sewing"
)

// Of measures a garment in the size at hand.
func Of(g *model.Garment) Size {
	s := Size{
		Size:     g.Size,
		Layers:   map[string]Layer{},
		Seams:    map[string]Pair{},
		Shares:   map[string]Share{},
		Insides:  map[string]Inside{},
		Closures: map[string]Closure{},
		Runs:     map[string]Run{},
		Elastics: map[string]Elastic{},
		Bones:    map[string]Bone{},
	}
	for _, l := range g.Layers {
		s.Layers[l.Name] = layer(g, l)
	}
	for _, x := range g.Seams {
		s.Seams[x.Name] = OfSeam(g, x)
	}
	for _, x := range g.Shares {
		s.Shares[x.Name] = OfShare(g, x)
	}
	for _, x := range g.Insides {
		s.Insides[x.Name] = Inside{Clearances(g, x), Least(g, x), Outside(g, x)}
	}
	for _, x := range g.Closures {
		s.Closures[x.Name] = OfClosure(g, x)
	}
	for _, x := range g.Measures {
		s.Runs[x.Name] = OfRun(g, x)
	}
	for _, x := range g.Elastics {
		s.Elastics[x.Name] = OfElastic(g, x)
	}
	for _, x := range g.Bones {
		s.Bones[x.Name] = OfBone(x)
	}
	return s
}

func layer(g *model.Garment, l *model.Layer) Layer {
	out := Layer{Girth: Girths(g, l), Pieces: map[string]Piece{}}
	for _, p := range l.Pieces {
		out.Pieces[p.Name] = piece(g, p)
	}
	return out
}

func piece(g *model.Garment, p *model.Piece) Piece {
	out := Piece{
		Area:      Area(p),
		Perimeter: Perimeter(p),
		Width:     Widths(g, p),
		Edges:     map[string]Edge{},
		Darts:     map[string]Dart{},
		Notches:   map[string]Notch{},
	}
	for _, e := range p.Edges {
		out.Edges[e.Name] = OfEdge(e)
	}
	for _, d := range p.OnlyDarts() {
		out.Darts[d.Name] = OfDart(d)
	}
	for _, d := range p.Pleats() {
		if out.Pleats == nil {
			out.Pleats = map[string]Pleat{}
		}
		out.Pleats[d.Name] = OfPleat(d)
	}
	for _, n := range p.Notches {
		out.Notches[n.Name] = OfNotch(n)
	}
	return out
}

// OfRun measures a run over the pattern, in millimetres, with what each item of it
// adds and what the body measures there.
func OfRun(g *model.Garment, m *model.Measure) Run {
	out := Run{Parts: []RunPart{}, Body: known(m.Against)}
	length, err := sewing.LayRun(g, m)
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
