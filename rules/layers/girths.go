package layers

import (
	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
	"understitch/rules"
)

// sharedNear is a limit of the rules that compare girths.
var sharedNear = rules.Limit{
	Name: "shared", Value: 20, Unit: rules.Millimetres, Source: "common practice, no source",
	Text: "how near to a level a shared edge lies that holds both layers to one girth there",
}

// tooWide names the findings by which what two layers measure at a level is at
// fault already.
func tooWide(p *rules.Pass, outer, inner *model.Layer, l *model.Level) []rules.Under {
	out := []rules.Under{{Rule: "layer-girth", Subject: l.Address(), Key: girthKey(outer, inner)}}
	for _, n := range measuring.InsidesAt(p.Garment, outer, inner, l) {
		out = append(out, rules.Under{Rule: "inner-within-outer", Subject: n.Address(), Key: l.Name})
	}
	return out
}

// tooWideBetween names the findings about the widths of an inside's pieces, at the
// levels and in the bands that reach into a stretch of height of the outer piece.
func tooWideBetween(p *rules.Pass, inside *model.Inside, top, bottom float64) []rules.Under {
	var out []rules.Under
	add := func(b band) {
		out = append(out, rules.Under{Rule: "inner-within-outer", Subject: inside.Address(), Key: b.key()})
	}
	levels := layering.Compared(inside, p.Garment)
	for i, l := range levels {
		y, ok := inside.Outer.LevelY(l)
		if !ok {
			continue
		}
		if top <= y && y <= bottom {
			out = append(out, rules.Under{Rule: "inner-within-outer", Subject: inside.Address(), Key: l.Name})
		}
		if i == 0 && top < y {
			add(band{lower: l})
		}
		if i == len(levels)-1 {
			if bottom > y {
				add(band{upper: l})
			}
			continue
		}
		if below, ok := inside.Outer.LevelY(levels[i+1]); ok && y <= bottom && top <= below {
			add(band{upper: l, lower: levels[i+1]})
		}
	}
	return out
}
