package wardrobe

import "understitch/cmd/corpus/internal/sheet"

// coat is a sleeveless coat whose lining is cut larger than the shell on
// purpose, with a pleat down the centre back. The fronts close with buttons; the
// layers share the armholes and the front edges, and the pleat is eased into
// the neck.
func coat(m *Maker) {
	m.Title = "Coat with a pleated lining"
	m.level("chest", 0, "chest_girth")
	m.level("waist", waistY, "waist_girth")
	t := m.torso(m.some(20, 26), m.some(26, 34))
	long := m.some(236, 300)
	pleat, out := m.some(10, 15), m.some(2, 4)
	const lap = 30
	for _, layer := range []string{"shell", "lining"} {
		l := &sheet.Layer{Name: layer, Side: "outer", Fabric: "barathea", Ease: []sheet.LevelRange{within("chest", 40, 120), within("waist", 60, 180)}}
		more := 0.0
		if layer == "lining" {
			l.Side, l.Fabric, l.Ease = "inner", "lining", nil
			more = out
		}
		for _, part := range []string{"forepart", "back"} {
			edges, arm := t.front()
			wider := 5.0
			if part == "back" {
				edges, arm = t.back()
				wider = -5
			}
			top := edges[0].Pts[0]
			waist := at(t.waist.Plus(wider+more), waistY)
			hem := at(t.waist.Plus(wider+36+more), long)
			bottom := long + 32
			edges = append(edges,
				knots(bent("side", arm, arm.By(0, 60), waist.By(0, -50), waist, waist.By(0, 25), hem.By(-10, -24), hem), map[string]int{"waist": 3}),
				finished(bent("hem", hem, hem.By(-48, 20), sheet.P(60, bottom), sheet.P(0, bottom)), "hem"))
			p := &sheet.Piece{Name: part, Cut: 2, Grain: grain(70, -80, 130), Edges: edges,
				Notches: []*sheet.Notch{notch("sleeve", "armhole", 78), {Name: "waist", On: "side", Level: "waist", Depth: 4}, notch("side", "side", 110)}}
			centre := "front"
			if part == "back" {
				centre = "centre"
				double(p.Notches[0])
			}
			p.Edges = append(p.Edges, line(centre, sheet.P(0, bottom), top))
			if part == "forepart" {
				extend(p, lap/2)
			}
			if layer == "lining" {
				finished(p.Edge("hem"), "felled")
				if part == "back" {
					pleated(p, pleat)
				}
			}
			l.Pieces = append(l.Pieces, p)
		}
		m.Layers = append(m.Layers, l)
		m.shoulders(layer, "forepart", "back")
	}
	role(m.Layers[1].Pieces[0].Edge("front"), "closure")
	m.Seams = append(m.Seams, seam("centre-back", "shell.back.centre", "shell.back.centre"))
	m.shared("armhole", "forepart", "back", "identical")
	m.shared("neck", "forepart", "back", "eased")
	m.Shares = append(m.Shares, &sheet.Share{Name: "front", Outer: sheet.Whole("shell.forepart.front"), Inner: sheet.Whole("lining.forepart.front"), Match: "identical"})
	m.insides(func(piece string) []sheet.LevelRange {
		if piece == "back" {
			return []sheet.LevelRange{within("chest", -25, -6), within("waist", -28, -8)}
		}
		return []sheet.LevelRange{within("chest", -4, 2), within("waist", -8, 0)}
	})
	c := &sheet.Closure{Name: "front", Kind: "button", A: sheet.Stretch{Edge: "shell.forepart.front"}, B: sheet.Stretch{Edge: "shell.forepart.front"},
		Diameter: 18, Thickness: 3, Extension: lap / 2, Lap: lap}
	m.Closures = []*sheet.Closure{c}
	length := long + 32 + 140
	for y := length - 140 - waistY; y < length-12; y += 55 { // from the waist up: one at the chest as well
		c.Buttons = append(c.Buttons, y)
	}
}

// pleated lays a pleat to the centre of a back: it is then cut on the fold, so
// much further out.
func pleated(p *sheet.Piece, pleat float64) {
	p.Cut, p.Fold = 1, "centre"
	neck, hem, centre := p.Edge("neck"), p.Edge("hem"), p.Edge("centre")
	start := neck.Pts[0].By(-pleat, 0)
	neck.Pts = append(append([]pt{start}, along(start, neck.Pts[0])...), neck.Pts[1:]...)
	end := hem.Pts[len(hem.Pts)-1]
	hem.Pts = append(hem.Pts, along(end, end.By(-pleat, 0))...)
	centre.Pts = []pt{end.By(-pleat, 0), start}
}
