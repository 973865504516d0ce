package faults

import (
	"understitch/cmd/corpus/internal/sheet"
	"understitch/cmd/corpus/internal/wardrobe"
)

var cloths = []Fault{
	{"a lining that shrinks", "shrink-match", shrinking},
	{"a cloth that does not stretch", "layer-stretch", stiff},
	{"a layer with no room to go round the inner", "turn-of-cloth", thick},
}

// ownCloth gives a layer's cloth other figures than the house has for it.
func (p *Planter) ownCloth(l *sheet.Layer, change func(*sheet.Fabric)) {
	for _, f := range wardrobe.House().Fabrics {
		if f.Name == l.Fabric {
			change(f)
			p.Fabrics = append(p.Fabrics, f)
		}
	}
}

func shrinking(p *Planter) (string, bool) {
	l := p.Layers[1]
	if len(p.Shares) == 0 {
		return "", false
	}
	by := p.by(2, 6)
	p.ownCloth(l, func(f *sheet.Fabric) { f.ShrinkAcross, f.ShrinkLen = f.ShrinkAcross+by, f.ShrinkLen+by })
	return l.Name, true
}

func stiff(p *Planter) (string, bool) {
	l := p.Layer("brief")
	if l == nil {
		return "", false
	}
	p.ownCloth(l, func(f *sheet.Fabric) { f.Across = p.by(1, 4) })
	return l.Name, true
}

// thick puts a thick cloth over a lining that is hardly narrower.
func thick(p *Planter) (string, bool) {
	if len(p.Measures) > 0 || p.Layers[1].Name != "lining" || p.Layers[0].Fabric != "barathea" {
		return "", false
	}
	for _, n := range p.Insides {
		for _, c := range n.Clearance {
			if *c.Range.Low < 0 {
				return "", false // a lining meant to be larger
			}
		}
	}
	p.ownCloth(p.Layers[0], func(f *sheet.Fabric) { f.Thickness = p.by(8, 9) })
	return "level.knee", true
}
