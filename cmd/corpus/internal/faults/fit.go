package faults

import "understitch/cmd/corpus/internal/sheet"

var fit = []Fault{
	{"an ease out of its range", "body-ease", missEase},
	{"a crotch too long", "tape-measure", crotchLong},
}

// missEase asks for more ease than the layer has.
func missEase(p *Planter) (string, bool) {
	var list []*sheet.Layer
	for _, l := range p.Layers {
		if len(l.Ease) > 0 {
			list = append(list, l)
		}
	}
	l, ok := one(p, list)
	if !ok {
		return "", false
	}
	i := p.IntN(len(l.Ease))
	low := *l.Ease[i].Range.High + p.by(3, 8)
	l.Ease[i].Range = sheet.Between(low, low+20)
	return l.Name, true
}

// crotchLong draws one half of the crotch deeper.
func crotchLong(p *Planter) (string, bool) {
	if len(p.Measures) == 0 {
		return "", false
	}
	m := p.Measures[0]
	piece, _ := p.Edge(m.Along[2*p.IntN(2)].Edge)
	by := p.by(14, 24)
	leg, gusset, centre := piece.Edge("leg"), piece.Edge("gusset"), piece.Edge("centre")
	for _, i := range []int{len(leg.Pts) - 2, len(leg.Pts) - 1} {
		move(leg, i, 0, by)
	}
	move(gusset, 0, 0, by)
	move(gusset, 1, 0, by)
	move(centre, 0, 0, by)
	return "measure." + m.Name, true
}
