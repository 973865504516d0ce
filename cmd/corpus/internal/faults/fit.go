package faults

import (
	"strings"

	"understitch/cmd/corpus/internal/sheet"
)

var fit = []Fault{
	{"an ease out of its range", "body-ease", missEase},
	{"a closure that laps over too far", "body-ease", lapsFar},
	{"a crotch too long", "tape-measure", crotchLong},
	{"an elastic too short", "elastic-ratio", elasticShort},
	{"a bone as long as its channel", "bone-length", boneLong},
	{"measures of two bodies", "body-plausible", otherBody},
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

// lapsFar lays one front edge of a coat over the other by more than was drafted
// for: it still goes round the chest, but without the ease asked for.
func lapsFar(p *Planter) (string, bool) {
	c, ok := p.closure("button")
	if !ok {
		return "", false
	}
	name, _, _ := strings.Cut(c.A.Edge, ".")
	layer := p.Layer(name)
	if len(layer.Ease) == 0 || layer.Ease[0].Level != "chest" {
		return "", false
	}
	c.Lap += p.by(66, 74)
	for i := range layer.Ease[1:] { // else it is told at each level
		r := &layer.Ease[1+i].Range
		*r = sheet.Between(0, *r.High)
	}
	return name, true
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

func elasticShort(p *Planter) (string, bool) {
	e, ok := one(p, p.Elastics)
	if !ok {
		return "", false
	}
	e.Length = e.Length.Times(1 - p.by(2, 3)/10)
	return "elastic." + e.Name, true
}

func boneLong(p *Planter) (string, bool) {
	b, ok := one(p, p.Bones)
	if !ok {
		return "", false
	}
	b.Length += p.by(3, 12)
	return "bone." + b.Name, true
}

// otherBody mistakes the crotch length, from which nothing is drafted here.
func otherBody(p *Planter) (string, bool) {
	if len(p.Measures) > 0 {
		return "", false
	}
	p.HouseSizes = false
	by := p.sign() * p.by(100, 150)
	for _, b := range p.Bodies {
		for i := range b {
			if b[i].Name == "total_crotch_length" {
				b[i].MM += by
			}
		}
	}
	return "garment", true
}
