package wardrobe

import "understitch/cmd/corpus/internal/sheet"

// bodysuit is a skating dress of stretch cloth over a body that closes between
// the legs with snap tape. The layers share neck and armholes; all of it is
// smaller than the wearer. The body is cut on the fold, or of halves that are sewn
// together down the centre, over which the tape runs. One level lies below the legs.
func bodysuit(m *Maker) {
	m.Title = "Rink dress with a built-in body"
	m.level("bust", 0, "bust_girth")
	m.level("waist", waistY, "waist_girth")
	m.level("tummy", 260, "high_hip_girth")
	t := m.torso(-10, -8)
	t.hollow = 26 // little room under the arm
	tummy := m.fig("tummy", "high_hip_girth", 4, -10)
	crotch := m.fig("crotch", "total_crotch_length", 1, -44)
	in, long := m.some(2, 3), m.some(380, 440)
	halves := m.IntN(3) == 0
	if m.IntN(2) == 0 {
		m.level("leg", 340, "")
	}
	for _, layer := range []string{"shell", "brief"} {
		l := &sheet.Layer{Name: layer, Side: "outer", Fabric: "stretch-velvet", Ease: []sheet.LevelRange{within("bust", -60, -20), within("waist", -60, -10)}}
		if layer == "brief" {
			l.Side, l.Fabric = "inner", "power-knit"
			l.Ease = []sheet.LevelRange{within("bust", -75, -15), within("waist", -80, -5), within("tummy", -90, -5)}
		}
		for _, part := range []string{"front", "back"} {
			edges, arm := t.front()
			wider, share := 5.0, 0.46
			if part == "back" {
				edges, arm = t.back()
				wider, share = -5, 0.54
			}
			top := edges[0].Pts[0]
			p := &sheet.Piece{Name: part, Cut: 1, Fold: "centre", Grain: grain(60, -80, 250)}
			waist, belly := at(t.waist.Plus(wider), waistY), at(tummy.Plus(wider+4), 260)
			if layer == "shell" {
				hem := belly.By(64, long-260)
				bottom := long + 40
				edges = append(edges,
					knots(bent("side", arm, arm.By(0, 55), waist.By(0, -40), waist, waist.By(6, 30), belly.By(-16, -36), belly, belly.By(20, 45), hem.By(-18, -48), hem),
						map[string]int{"waist": 3, "tummy": 6}),
					finished(bent("hem", hem, hem.By(-48, 18), sheet.P(60, bottom), sheet.P(0, bottom)), "rolled"),
					line("centre", sheet.P(0, bottom), top))
			} else {
				waist, belly = waist.By(-in, 0), belly.By(-4-in, 0)
				hip := belly.By(4, 36)
				gusset := pt{X: sheet.N(38), Y: crotch.Times(share).Plus(waistY)}
				edges = append(edges,
					knots(bent("side", arm, arm.By(0, 55), waist.By(0, -40), waist, waist.By(6, 30), belly.By(-14, -36), belly, belly.By(2, 12), hip.By(-1.5, -10), hip),
						map[string]int{"waist": 3, "tummy": 6}),
					role(bent("leg", hip, hip.By(-60, 9), gusset.By(3, -70-60*(share-0.46)), gusset), "casing"),
					line("gusset", gusset, pt{X: sheet.N(0), Y: gusset.Y}),
					line("centre", pt{X: sheet.N(0), Y: gusset.Y}, top))
			}
			p.Edges = edges
			p.Notches = []*sheet.Notch{notch("armhole", "armhole", 72), {Name: "waist", On: "side", Level: "waist", Depth: 4}, notch("rib", "side", 95)}
			if part == "back" {
				double(p.Notches[0])
			}
			if halves && layer == "brief" {
				p.Cut, p.Fold = 2, ""
				p.Notches = append(p.Notches, notch("seam", "centre", map[string]float64{"front": 120, "back": 175}[part]))
				m.Seams = append(m.Seams, seam("centre-"+part, "brief."+part+".centre", "brief."+part+".centre"))
			}
			l.Pieces = append(l.Pieces, p)
		}
		m.Layers = append(m.Layers, l)
		m.shoulders(layer, "front", "back")
	}
	m.shared("neck", "front", "back", "identical")
	m.shared("armhole", "front", "back", "identical")
	m.insides(func(string) []sheet.LevelRange {
		return []sheet.LevelRange{within("bust", 0, 4), within("waist", 0, 6), within("tummy", 1, 14)}
	})
	m.Closures = []*sheet.Closure{{Name: "gusset", Kind: "tape", Tape: "snap-19", A: sheet.Stretch{Edge: "brief.front.gusset"}, B: sheet.Stretch{Edge: "brief.back.gusset"}}}
	leg := Length(m.Layers[1].Pieces[0].Edge("leg")) + Length(m.Layers[1].Pieces[1].Edge("leg"))
	m.Elastics = []*sheet.Elastic{{Name: "leg", Edges: sheet.Whole("brief.front.leg", "brief.back.leg"),
		Length: m.graded("leg", 0.88*leg, 14), Low: 0.8, High: 0.95}}
	m.Measures = []*sheet.Measure{{Name: "crotch", Along: sheet.Whole("brief.front.centre", "closure.gusset", "brief.back.centre"),
		From: "waist", To: "waist", Against: "total_crotch_length", Ease: sheet.Between(-30, -10)}}
}
