package wardrobe

import (
	"math"

	"understitch/cmd/corpus/internal/sheet"
)

// petticoat is a straight petticoat of two layers drawn along its cut line: the
// stitch line is found from the allowances. All its edges are straight.
func petticoat(m *Maker) {
	m.Title = "Petticoat drawn with its allowances"
	m.level("hip", 120, "hip_girth")
	m.level("knee", 400, "")
	hip := m.fig("hip", "hip_girth", 4, m.some(8, 12))
	long, flare, in := m.some(480, 640), m.some(10, 40), m.some(1, 3)
	shorter := m.some(25, 40)
	m.Layers = []*sheet.Layer{
		{Name: "shell", Side: "outer", Fabric: "satin", Ease: []sheet.LevelRange{within("hip", 5, 70)}},
		{Name: "lining", Side: "inner", Fabric: "lining"},
	}
	for i, l := range m.Layers {
		length, narrower := long, 0.0
		if i == 1 {
			length, narrower = long-shorter, in
		}
		for _, part := range []string{"front", "back"} {
			wider := 5.0
			if part == "back" {
				wider = -5
			}
			p := tube(part, hip.Plus(wider-narrower), length, flare/600)
			p.Notches = []*sheet.Notch{notch("hip", "side", 120), notch("low", "side", 300)}
			l.Pieces = append(l.Pieces, p)
		}
		m.Seams = append(m.Seams, seam(l.Name+"-side", l.Name+".front.side", l.Name+".back.side"))
	}
	m.insides(func(string) []sheet.LevelRange {
		return []sheet.LevelRange{within("hip", 0, 6), within("knee", 0, 6)}
	})
}

// tube is a panel on the fold of which the side runs out by slope; waist and
// hem end square to it. Waists are cased, so their edges are finished.
func tube(name string, hip sheet.Num, long, slope float64) *sheet.Piece {
	top := hip.Plus(-120 * slope)
	fall := 80 * slope // of the last 80 mm of waist and hem
	corner := func(x sheet.Num, y float64) pt { return at(x, y) }
	s, h := corner(top, -fall), corner(top.Plus(slope*(long+fall)), long)
	net := [][]pt{
		{sheet.P(0, 0), corner(top.Plus(-80), 0), s}, {s, h},
		{h, h.By(-80, fall), sheet.P(0, long+fall)}, {sheet.P(0, long+fall), sheet.P(0, 0)},
	}
	cut := outset(net, []float64{10, 12, 30, 0})
	names := []string{"waist", "side", "hem", "centre"}
	p := &sheet.Piece{Name: name, Cut: 1, Fold: "centre", Drawn: "cut", Grain: grain(60, 50, 400)}
	for i, pts := range cut {
		p.Edges = append(p.Edges, line(names[i], pts...))
	}
	finished(role(p.Edges[0], "casing"), "casing")
	finished(p.Edges[2], "hem")
	return p
}

// outset moves straight edges outward, each by its allowance. Sizes move
// corners sideways only, so two sizes tell how each moves.
func outset(net [][]pt, by []float64) [][]pt {
	type xy struct{ x, y float64 }
	place := func(p pt, size float64) xy {
		return xy{p.X.Base() + size*p.X.Step(), p.Y.Base() + size*p.Y.Step()}
	}
	type side struct {
		a, b xy
		off  float64
	}
	var out [][]pt
	meet := func(s, t side) xy {
		shift := func(s side) (xy, xy) {
			n := math.Hypot(s.b.x-s.a.x, s.b.y-s.a.y)
			d := xy{(s.b.x - s.a.x) / n, (s.b.y - s.a.y) / n}
			return xy{s.a.x + d.y*s.off, s.a.y - d.x*s.off}, d // outward of a clockwise outline, y downward
		}
		p, d := shift(s)
		q, e := shift(t)
		k := ((q.x-p.x)*e.y - (q.y-p.y)*e.x) / (d.x*e.y - d.y*e.x)
		return xy{p.x + k*d.x, p.y + k*d.y}
	}
	var sides []side
	var first []int // the first side of each edge
	build := func(size float64) {
		sides, first = nil, nil
		for i, edge := range net {
			first = append(first, len(sides))
			for j := 1; j < len(edge); j++ {
				sides = append(sides, side{place(edge[j-1], size), place(edge[j], size), by[i]})
			}
		}
	}
	corner := func(size float64, i int) xy {
		build(size)
		return meet(sides[(i+len(sides)-1)%len(sides)], sides[i%len(sides)])
	}
	build(0)
	ends := append(append([]int(nil), first...), len(sides))
	for i, edge := range net {
		var pts []pt
		for j := range edge {
			at0, at1 := corner(0, ends[i]+j), corner(1, ends[i]+j)
			p := pt{X: sheet.N(at0.x), Y: sheet.N(at0.y)}
			if step := at1.x - at0.x; math.Abs(step) > 1e-9 {
				like := edge[j].X.Terms // what the corner itself grows with
				grown := sheet.Num{Terms: like}
				p.X = grown.Times(step / grown.Step()).Plus(at0.x - step/grown.Step()*grown.Base())
			}
			pts = append(pts, p)
		}
		out = append(out, pts)
	}
	return out
}
