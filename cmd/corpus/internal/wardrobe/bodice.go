package wardrobe

import (
	"understitch/cmd/corpus/internal/sheet"
	"understitch/model/curve"
)

// bodice is a lined bodice with a short basque: fronts on the fold, backs a pair
// that closes down the centre with a zip or buttons. The layers share neck,
// armholes and the centre, and have a dart with two points in each quarter.
func bodice(m *Maker) {
	m.Title = "Lined bodice for the second act"
	m.level("bust", 0, "bust_girth")
	m.level("waist", waistY, "waist_girth")
	t := m.torso(m.some(8, 12), 30)
	long := m.some(236, 256)
	intake, in := m.some(18, 24), m.some(2, 4)
	side := m.some(90, 150)
	closed := m.backClosure(long + 38 + 205)
	layer := func(name, where, cloth string, in, shorter float64) {
		l := &sheet.Layer{Name: name, Side: where, Fabric: cloth}
		for _, part := range []string{"front", "back"} {
			edges, arm := t.front()
			wider := 5.0
			if part == "back" {
				edges, arm = t.back()
				wider = -5
			}
			top := edges[0].Pts[0]
			waist := at(t.waist.Plus(wider-in), waistY)
			basque, hemward := flare(30, long-waistY, long-waistY-shorter)
			below := make([]pt, len(basque))
			for i, b := range basque {
				below[i] = waist.By(b.X, b.Y)
			}
			hem := below[2]
			bottom := long - shorter + 38
			edges = append(edges,
				knots(bent("side", arm, arm.By(0, 60), waist.By(0, -50), waist, below[0], below[1], hem), map[string]int{"waist": 3}),
				finished(bent("hem", hem, hem.By(hemward.X, hemward.Y), sheet.P(60, bottom), sheet.P(0, bottom)), "hem"),
				line("centre", sheet.P(0, bottom), top))
			middle := sheet.P(95, waistY)
			p := &sheet.Piece{Name: part, Cut: 1, Grain: grain(70, -90, 130), Edges: edges,
				Darts:   []*sheet.Dart{{Name: "waist", Centre: &middle, Intake: sheet.N(intake), Up: 100, Down: 60}},
				Notches: []*sheet.Notch{notch("armhole", "armhole", 75), notch("side", "side", side), {Name: "waist", On: "side", Level: "waist", Depth: 4}},
			}
			if part == "back" {
				p.Cut = 2
				double(p.Notches[0])
				extend(p, closed.Lap/2)
			} else {
				p.Fold = "centre"
			}
			l.Pieces = append(l.Pieces, p)
		}
		m.Layers = append(m.Layers, l)
		m.shoulders(name, "front", "back")
	}
	layer("shell", "outer", "satin", 0, 0)
	layer("lining", "inner", "lining", in, m.some(26, 30))
	m.Layers[0].Ease = []sheet.LevelRange{within("bust", 15, 70), within("waist", 5, 75)}
	m.shared("neck", "front", "back", "identical")
	m.shared("armhole", "front", "back", "identical")
	m.insides(func(string) []sheet.LevelRange {
		return []sheet.LevelRange{within("bust", 0, 4), within("waist", 0, 7)}
	})
	finished(m.Layers[1].Pieces[1].Edge("centre"), "felled")
	if m.IntN(3) == 0 {
		m.Alters = []*sheet.Alter{{Name: "fitting", Edges: []string{"shell.front.side", "shell.back.side", "lining.front.side", "lining.back.side"},
			Inward: []sheet.Figure{{Name: "bust", MM: 0}, {Name: "waist", MM: m.some(1, 3)}}}}
	}
}

// flare is the side of a basque from the waist, which it leaves straight down, to
// so far below, where it would have come out by some mm at its full length: the two
// handles and the end, from the waist. A shorter lining is cut off along the same
// line. The handle of the hem leaves it square.
func flare(out, length, cut float64) (side [3]curve.Point, hem curve.Point) {
	p := [4]curve.Point{{}, {Y: 25}, {X: out - 10, Y: length - 24}, {X: out, Y: length}}
	low, high := 0.0, 1.0
	for range 60 {
		t := (low + high) / 2
		if y := split3(p, t)[3].Y; y < cut {
			low = t
		} else {
			high = t
		}
	}
	q := split3(p, high)
	way := q[3].Sub(q[2]).Unit()
	return [3]curve.Point{q[1], q[2], q[3]}, curve.Point{X: -91 * way.Y, Y: 91 * way.X}
}

// split3 is the first part of a curve, up to a share of it (de Casteljau).
func split3(p [4]curve.Point, t float64) [4]curve.Point {
	out := [4]curve.Point{p[0]}
	for n := 1; n < 4; n++ {
		for i := range 4 - n {
			p[i] = p[i].Lerp(p[i+1], t)
		}
		out[n] = p[0]
	}
	return out
}

const waistY = 165 // below the bust level

// backClosure closes the shell down its whole centre back, which is so long.
func (m *Maker) backClosure(long float64) *sheet.Closure {
	c := &sheet.Closure{Name: "back", A: sheet.Stretch{Edge: "shell.back.centre"}, B: sheet.Stretch{Edge: "shell.back.centre"}}
	m.Closures = append(m.Closures, c)
	switch m.IntN(3) {
	case 0:
		c.Kind, c.Stock = "zip", []float64{400, 430, 460, 470, 480, 490, 500}
	case 1:
		c.Kind = "lacing"
	default: // one at the bust, one at the waist; counted from the hem, where the edge begins
		c.Kind, c.Diameter, c.Thickness, c.Extension, c.Lap = "button", 15, 3, 15, 30
		for y := long - 205 - waistY - 55; y < long-10; y += 55 {
			c.Buttons = append(c.Buttons, y)
		}
		for len(c.Buttons) > 0 && c.Buttons[0] < 12 {
			c.Buttons = c.Buttons[1:]
		}
	}
	return c
}

// extend lets a piece run on past its centre, by half of what laps over there: the
// centres lie on each other when the closure is done up.
func extend(p *sheet.Piece, by float64) {
	for _, end := range []*pt{&p.Edges[0].Pts[0], last(p.Edge("hem").Pts)} {
		*end = end.By(-by, 0)
	}
	closed := p.Edges[len(p.Edges)-1]
	for i := range closed.Pts {
		closed.Pts[i] = closed.Pts[i].By(-by, 0)
	}
}

func last(pts []pt) *pt { return &pts[len(pts)-1] }
