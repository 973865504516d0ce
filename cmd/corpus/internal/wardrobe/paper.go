package wardrobe

import "understitch/cmd/corpus/internal/sheet"

// paperSkirt is a skirt that was never drawn: each edge was measured with a
// tape, and the widths across.
func paperSkirt(m *Maker) {
	m.Title = "Skirt from a paper pattern"
	m.Levels = []*sheet.Level{{Name: "waist", Body: "waist_girth"}, {Name: "hip", Body: "hip_girth"}, {Name: "knee"}}
	waist, hip := m.fig("waist", "waist_girth", 4, m.some(2, 4)), m.fig("hip", "hip_girth", 4, m.some(6, 10))
	knee := hip.Plus(m.some(40, 60))
	side, zip := m.some(560, 660), 20*m.some(9, 11)
	shorter, in := m.some(25, 40), m.some(1, 3)
	for _, layer := range []string{"shell", "lining"} {
		l := &sheet.Layer{Name: layer, Side: "outer", Fabric: "barathea", Ease: []sheet.LevelRange{within("waist", 2, 20), within("hip", 15, 50)}}
		shorter, in := shorter, in
		if layer == "shell" {
			shorter, in = 0, 0
		} else {
			l.Side, l.Fabric, l.Ease = "inner", "lining", nil
		}
		for _, part := range []string{"front", "back"} {
			wider := 5.0
			if part == "back" {
				wider = -5
			}
			tape := func(name string, length sheet.Num) *sheet.Edge {
				return &sheet.Edge{Name: name, Form: sheet.Tape, Length: length}
			}
			width := func(n sheet.Num) sheet.Num { return n.Plus(wider - in) }
			p := &sheet.Piece{Name: part, Cut: 1, Fold: "centre", Width: []sheet.LevelNum{
				{Level: "waist", At: width(waist)}, {Level: "hip", At: width(hip)}, {Level: "knee", At: width(knee)}}}
			p.Edges = []*sheet.Edge{
				tape("waist", waist.Plus(wider+1)), paper("side", side-shorter),
				finished(tape("hem", width(knee).Plus(4)), "hem"), paper("centre", side-13-shorter),
			}
			p.Darts = []*sheet.Dart{{Name: "waist", On: "waist", At: sheet.N(92), Intake: sheet.N(m.some(18, 28))}}
			p.Notches = []*sheet.Notch{notch("hip", "side", 204), notch("knee", "side", 420)}
			if part == "back" {
				p.Cut, p.Fold = 2, ""
				p.Notches = append(p.Notches, double(notch("zip", "centre", zip)))
			}
			l.Pieces = append(l.Pieces, p)
		}
		m.Layers = append(m.Layers, l)
		m.Seams = append(m.Seams, seam(layer+"-side", layer+".front.side", layer+".back.side"))
		open := part(layer+".back.centre", "zip", "end")
		m.Seams = append(m.Seams, &sheet.Seam{Name: layer + "-back", A: partly(open), B: partly(open)})
	}
	m.Layers[1].Pieces[1].Edge("centre").Role = "closure"
	m.shared("waist", "front", "back", "length")
	m.Shares = append(m.Shares, &sheet.Share{Name: "zip", Outer: partly(part("shell.back.centre", "start", "zip")),
		Inner: partly(part("lining.back.centre", "start", "zip")), Match: "length"})
	m.insides(func(string) []sheet.LevelRange {
		return []sheet.LevelRange{within("waist", 0, 6), within("hip", 0, 6), within("knee", 0, 6)}
	})
	m.Closures = []*sheet.Closure{{Name: "zip", Kind: "zip", A: sheet.Stretch{Edge: "shell.back.centre"}, B: sheet.Stretch{Edge: "shell.back.centre"},
		From: "start", To: "zip", Stock: []float64{160, 180, 200, 220, 250}}}
}

// paperCoat is a coat of paper pieces whose lining is larger than the shell.
func paperCoat(m *Maker) {
	m.Title = "Cape coat from a paper pattern"
	m.Levels = []*sheet.Level{{Name: "chest", Body: "chest_girth"}, {Name: "waist", Body: "waist_girth"}}
	chest, waist := m.fig("chest", "chest_girth", 4, m.some(22, 28)), m.fig("waist", "waist_girth", 4, m.some(30, 40))
	armhole, shoulder, neck := m.graded("armhole", m.some(210, 230), 5), m.graded("shoulder", m.some(118, 126), 2), m.graded("neck", m.some(84, 92), 2)
	side, front, pleat, out := m.some(420, 640), m.some(620, 860), m.some(10, 15), m.some(2, 4)
	shoulderEase := m.some(0, 6)
	for _, layer := range []string{"shell", "lining"} {
		l := &sheet.Layer{Name: layer, Side: "outer", Fabric: "barathea", Ease: []sheet.LevelRange{within("chest", 70, 130), within("waist", 100, 180)}}
		more := 0.0
		if layer == "lining" {
			l.Side, l.Fabric, l.Ease = "inner", "lining", nil
			more = out
		}
		for _, part := range []string{"forepart", "back"} {
			wider, fold := 5.0+more, 0.0
			if part == "back" {
				wider = -5 + more
				if layer == "lining" {
					fold = pleat
				}
			}
			tape := func(name string, length sheet.Num) *sheet.Edge {
				return &sheet.Edge{Name: name, Form: sheet.Tape, Length: length}
			}
			p := &sheet.Piece{Name: part, Cut: 2, Width: []sheet.LevelNum{{Level: "chest", At: chest.Plus(wider + fold)}, {Level: "waist", At: waist.Plus(wider + fold)}}}
			over := 0.0
			if part == "back" {
				over = shoulderEase
			}
			p.Edges = []*sheet.Edge{tape("neck", neck.Plus(fold)), tape("shoulder", shoulder.Plus(over)), tape("armhole", armhole.Plus(over)),
				paper("side", side), finished(tape("hem", waist.Plus(wider+fold+60)), "hem")}
			last := "front"
			if part == "back" {
				last = "centre"
			}
			p.Edges = append(p.Edges, paper(last, front))
			if layer == "lining" {
				finished(p.Edge("hem"), "felled")
				if part == "back" {
					p.Cut, p.Fold = 1, "centre"
				}
			}
			p.Notches = []*sheet.Notch{notch("sleeve", "armhole", 96), notch("side", "side", 170)}
			if part == "back" {
				double(p.Notches[0])
			}
			l.Pieces = append(l.Pieces, p)
		}
		m.Layers = append(m.Layers, l)
		ease := sheet.Between(max(shoulderEase-2, 0), shoulderEase+2)
		m.Seams = append(m.Seams, &sheet.Seam{Name: layer + "-shoulder", A: sheet.Whole(layer + ".back.shoulder"), B: sheet.Whole(layer + ".forepart.shoulder"), Ease: &ease},
			seam(layer+"-side", layer+".forepart.side", layer+".back.side"))
	}
	role(m.Layers[1].Pieces[0].Edge("front"), "closure")
	m.Seams = append(m.Seams, seam("centre-back", "shell.back.centre", "shell.back.centre"))
	m.shared("armhole", "forepart", "back", "length")
	m.shared("neck", "forepart", "back", "eased")
	m.Shares = append(m.Shares, &sheet.Share{Name: "front", Outer: sheet.Whole("shell.forepart.front"), Inner: sheet.Whole("lining.forepart.front"), Match: "length"})
	m.insides(func(piece string) []sheet.LevelRange {
		if piece == "back" {
			return []sheet.LevelRange{within("chest", -25, -8), within("waist", -25, -8)}
		}
		return []sheet.LevelRange{within("chest", -8, 0), within("waist", -8, 0)}
	})
	m.Closures = []*sheet.Closure{{Name: "front", Kind: "lacing", A: sheet.Stretch{Edge: "shell.forepart.front"}, B: sheet.Stretch{Edge: "shell.forepart.front"}}}
}
