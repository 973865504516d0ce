package wardrobe

import "understitch/cmd/corpus/internal/sheet"

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
			hem := waist.By(30, long-waistY-shorter)
			bottom := long - shorter + 38
			edges = append(edges,
				knots(bent("side", arm, arm.By(0, 60), waist.By(0, -50), waist, waist.By(0, 25), hem.By(-10, -24), hem), map[string]int{"waist": 3}),
				finished(bent("hem", hem, hem.By(-84, 35), sheet.P(60, bottom), sheet.P(0, bottom)), "hem"),
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
	m.nests(func(string) []sheet.LevelRange {
		return []sheet.LevelRange{within("bust", 0, 4), within("waist", 0, 7)}
	})
	finished(m.Layers[1].Pieces[1].Edge("centre"), "felled")
	if m.IntN(3) == 0 {
		m.Alters = []*sheet.Alter{{Name: "fitting", Edges: []string{"shell.front.side", "shell.back.side", "lining.front.side", "lining.back.side"},
			Inward: []sheet.Figure{{Name: "bust", MM: 0}, {Name: "waist", MM: m.some(1, 3)}}}}
	}
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
