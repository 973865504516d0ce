package wardrobe

import (
	"understitch/cmd/corpus/internal/sheet"
)

// jacket is a short jacket with set-in sleeves: the armholes of forepart and back
// close into a ring, into which the cap is sewn with some ease. Which of them is
// named first, and which way round each piece is drawn, chance settles. Its layers
// have sleeves of their own and share neck and front.
func jacket(m *Maker) {
	m.Title = "Jacket with set-in sleeves"
	m.level("chest", 0, "chest_girth")
	m.level("waist", waistY, "waist_girth")
	chest, waist := m.fig("chest", "chest_girth", 4, m.some(20, 26)), m.fig("waist", "waist_girth", 4, m.some(26, 34))
	// From size to size the armhole moves outward as it is: one cap fits them all.
	t := torso{Maker: m, neck: chest.Plus(-155), shoulder: sheet.N(118), bust: chest, waist: waist}
	long, shorter := m.some(236, 280), m.some(24, 30)
	ease, sleeve := m.some(10, 20), m.some(380, 460)
	frontNotch, backNotch := m.some(66, 74), m.some(84, 92)
	for _, layer := range []string{"shell", "lining"} {
		l := &sheet.Layer{Name: layer, Side: "outer", Fabric: "barathea", Ease: []sheet.LevelRange{within("chest", 40, 120), within("waist", 60, 180)}}
		length, end := long, "hem"
		if layer == "lining" {
			l.Side, l.Fabric, l.Ease = "inner", "lining", nil
			length, end = long-shorter, "felled"
		}
		var armholes []float64
		for _, part := range []string{"forepart", "back"} {
			edges, arm := t.front()
			wider, centre, fromArm := 5.0, "front", frontNotch
			if part == "back" {
				edges, arm = t.back()
				wider, centre, fromArm = -5, "centre", backNotch
			}
			top := edges[0].Pts[0]
			mid := at(waist.Plus(wider), waistY)
			foot := mid.By(0, length-waistY)
			armhole := Length(edges[2])
			armholes = append(armholes, armhole)
			edges = append(edges, knots(bent("side", arm, arm.By(0, 60), mid.By(0, -50), mid, mid.By(0, 20), foot.By(0, -20), foot), map[string]int{"waist": 3}),
				finished(level("hem", foot, sheet.P(0, length)), end), line(centre, sheet.P(0, length), top))
			p := &sheet.Piece{Name: part, Cut: 2, Grain: grain(70, -80, 130), Edges: edges,
				Notches: []*sheet.Notch{notch("sleeve", "armhole", armhole-fromArm), {Name: "waist", On: "side", Level: "waist", Depth: 4}, notch("side", "side", 110)}}
			if part == "back" {
				p.Cut, p.Fold = 1, "centre"
				double(p.Notches[0])
			}
			m.eitherWay(p)
			l.Pieces = append(l.Pieces, p)
		}
		m.Layers = append(m.Layers, l)
		m.shoulders(layer, "forepart", "back")
		l.Pieces = append(l.Pieces, m.sleeve(armholes[0]+ease/2, armholes[1]+ease/2, sleeve, frontNotch, backNotch, end))
		m.setIn(layer, ease)
	}
	role(m.Layers[1].Pieces[0].Edge("front"), "closure")
	m.shared("neck", "forepart", "back", "identical")
	frontEase := sheet.Between(-30, 30)
	m.Shares = append(m.Shares, &sheet.Share{Name: "front", Outer: sheet.Whole("shell.forepart.front"), Inner: sheet.Whole("lining.forepart.front"), Match: "eased", Ease: &frontEase})
	for _, piece := range []string{"forepart", "back"} {
		m.Insides = append(m.Insides, &sheet.Inside{Name: piece, Outer: "shell." + piece, Inner: "lining." + piece,
			Clearance: []sheet.LevelRange{within("chest", -1, 2), within("waist", -1, 2)}})
	}
	m.Insides = append(m.Insides, &sheet.Inside{Name: "sleeve", Outer: "shell.sleeve", Inner: "lining.sleeve", Align: `"draft"`})
	m.Closures = []*sheet.Closure{{Name: "front", Kind: "lacing", A: sheet.Stretch{Edge: "shell.forepart.front"}, B: sheet.Stretch{Edge: "shell.forepart.front"}}}
}

// sleeve is a sleeve whose cap is so long from the front underarm to the crown, and
// from there to the back underarm, with notches so far from either underarm.
func (m *Maker) sleeve(front, back, long, frontNotch, backNotch float64, end string) *sheet.Piece {
	const high = 130
	a, crown := capWidth(front, high), sheet.P(0, -high)
	b := capWidth(back, high)
	left, right := sheet.P(-a, 0), sheet.P(b, 0)
	cap := bent("cap", left, left.By(a/2, 0), crown.By(-a/2, 0), crown, crown.By(b/2, 0), right.By(-b/2, 0), right)
	in := sheet.P(-a+30, long)
	out := sheet.P(b-30, long)
	p := &sheet.Piece{Name: "sleeve", Cut: 2, NoLevels: true, Grain: grain(0, 40, 300), Edges: []*sheet.Edge{
		cap, bent("back-seam", right, right.By(0, 120), out.By(0, -120), out),
		finished(line("hem", out, in), end), bent("front-seam", in, in.By(0, -120), left.By(0, 120), left),
	}}
	down := Length(p.Edges[3])
	p.Notches = []*sheet.Notch{notch("front", "cap", frontNotch), notch("crown", "cap", front), double(notch("back", "cap", front+back-backNotch)),
		notch("elbow", "back-seam", 150), notch("bend", "front-seam", down-150)}
	m.eitherWay(p)
	return p
}

// capWidth is how wide half a cap is that is so long and so high.
func capWidth(long, high float64) float64 {
	low, top := 0.0, long
	for range 60 {
		w := (low + top) / 2
		if Length(bent("", sheet.P(0, 0), sheet.P(w/2, 0), sheet.P(w/2, -high), sheet.P(w, -high))) < long {
			low = w
		} else {
			top = w
		}
	}
	return low
}

// setIn sews a layer's sleeve into its armholes.
func (m *Maker) setIn(layer string, ease float64) {
	holes := sheet.Whole(layer+".forepart.armhole", layer+".back.armhole")
	if m.IntN(2) == 0 {
		holes[0], holes[1] = holes[1], holes[0]
	}
	eased := sheet.Between(ease-2, ease+2)
	m.Seams = append(m.Seams, &sheet.Seam{Name: layer + "-sleeve", A: sheet.Whole(layer + ".sleeve.cap"), B: holes, Ease: &eased},
		seam(layer+"-underarm", layer+".sleeve.front-seam", layer+".sleeve.back-seam"))
}

// eitherWay draws a piece the other way round, one time in two. Its notches must lie
// on edges that are as long in all sizes.
func (m *Maker) eitherWay(p *sheet.Piece) {
	if m.IntN(2) == 0 {
		turnBack(p)
	}
}
