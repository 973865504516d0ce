package wardrobe

import "understitch/cmd/corpus/internal/sheet"

// torso drafts the upper edges of bodices, bodies and coats: neck, shoulder,
// armhole. Neck and armhole leave the shoulder square, so that they run on over
// it, and the armhole ends level under the arm.
type torso struct {
	*Maker
	neck, shoulder sheet.Num
	bust, waist    sheet.Num // half widths of the quarter
	hollow         float64   // how much further in the armhole is cut
}

// How the shoulder falls: 3, 4, 5 make a right angle, and 24, 7, 25 do.
const fallX, fallY = 24.0 / 25, 7.0 / 25

func (m *Maker) torso(bust, waist float64) torso {
	return torso{Maker: m, neck: m.graded("neck", m.some(72, 80), 1.5), shoulder: m.graded("shoulder", m.some(112, 122), 2),
		bust: m.fig("bust", "bust_girth", 4, bust), waist: m.fig("waist", "waist_girth", 4, waist)}
}

const underarm = -30 // where the side begins, from the bust level

// upper are neck, shoulder and armhole of a front or back that is so much wider
// than the quarter, its neck so deep at the centre.
func (t torso) upper(wider, shoulderY, neckY, chest float64) (edges []*sheet.Edge, arm pt) {
	centre := sheet.P(0, neckY)
	point := at(t.neck, shoulderY)
	tip := pt{X: t.neck.Add(t.shoulder.Times(fallX)), Y: sheet.N(shoulderY).Add(t.shoulder.Times(fallY))}
	mid := pt{X: tip.X.Plus(-chest - t.hollow), Y: sheet.N(-105)}
	arm = at(t.bust.Plus(wider), underarm)
	return []*sheet.Edge{
		bent("neck", centre, centre.By(36, 0), point.By(-35*fallY, 35*fallX), point),
		line("shoulder", point, tip),
		bent("armhole", tip, tip.By(-40*fallY, 40*fallX), mid.By(0, -30), mid, mid.By(0, 36), arm.By(t.hollow/2-42, 0), arm),
	}, arm
}

// front and back are the upper edges of either piece.
func (t torso) front() ([]*sheet.Edge, pt) { return t.upper(5, -232, -140, 14) }
func (t torso) back() ([]*sheet.Edge, pt)  { return t.upper(-5, -240, -205, 8) }

// shoulders are a layer's seams at shoulder and side.
func (m *Maker) shoulders(layer string, front, back string) {
	m.Seams = append(m.Seams,
		seam(layer+"-shoulder", layer+"."+front+".shoulder", layer+"."+back+".shoulder"),
		seam(layer+"-side", layer+"."+front+".side", layer+"."+back+".side"))
}

// shared are neck and armhole, which both layers share.
func (m *Maker) shared(name, front, back, match string) {
	both := func(layer string) []sheet.Stretch {
		return sheet.Whole(layer+"."+front+"."+name, layer+"."+back+"."+name)
	}
	s := &sheet.Share{Name: name, Outer: both(m.Layers[0].Name), Inner: both(m.Layers[1].Name), Match: match}
	if match == "eased" { // a pleat at the centre back is folded in
		ease := sheet.Between(-40, 0)
		s.Ease = &ease
	}
	m.Shares = append(m.Shares, s)
}

// insides lays each piece of the inner layer in that of its name.
func (m *Maker) insides(clearance func(piece string) []sheet.LevelRange) {
	outer, inner := m.Layers[0], m.Layers[1]
	for _, p := range outer.Pieces {
		m.Insides = append(m.Insides, &sheet.Inside{Name: p.Name, Outer: outer.Name + "." + p.Name, Inner: inner.Name + "." + p.Name, Clearance: clearance(p.Name)})
	}
}
