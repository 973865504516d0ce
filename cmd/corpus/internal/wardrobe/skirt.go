package wardrobe

import (
	"math"

	"understitch/cmd/corpus/internal/sheet"
)

// skirt is a lined skirt on a waist seam: the front on the fold, the back a pair
// with a zip at its centre. Shell and lining share the waist, with their darts,
// and the zip; the lining hangs free and is a little narrower.
func skirt(m *Maker) {
	m.Title = "Lined skirt for the chorus"
	m.level("high-hip", 100, "high_hip_girth")
	m.level("hip", 200, "hip_girth")
	m.level("knee", m.some(400, 440), "")
	s := skirtDraft{Maker: m, hip: m.fig("hip", "hip_girth", 4, 8), high: m.fig("high_hip", "high_hip_girth", 4, 6),
		long: m.some(560, 680), flare: m.some(10, 60), zip: 20 * m.some(9, 11)}
	inner := s
	inner.long, inner.in = s.long-m.some(25, 40), m.some(2, 4)
	front := skirtDart{from: m.some(80, 95), long: m.some(70, 85), intake: m.some(15, 22)}
	back := skirtDart{from: m.some(75, 90), long: m.some(78, 88), intake: m.some(20, 28)}
	side := m.some(260, 420)
	layer := func(name, where, cloth string, d skirtDraft) {
		l := &sheet.Layer{Name: name, Side: where, Fabric: cloth}
		f := d.piece("front", 5, front)
		f.Fold = "centre"
		b := d.piece("back", -5, back)
		b.Cut = 2
		for _, p := range []*sheet.Piece{f, b} {
			p.Notches = append(p.Notches, &sheet.Notch{Name: "hip", On: "side", Level: "hip", Depth: 4}, notch("low", "side", side))
		}
		zip := notch("zip", "centre", Length(b.Edge("centre"))-d.zip)
		b.Notches = append(b.Notches, double(zip))
		l.Pieces = []*sheet.Piece{f, b}
		m.Layers = append(m.Layers, l)
		m.Seams = append(m.Seams, seam(name+"-side", name+".front.side", name+".back.side"))
		open := part(name+".back.centre", "start", "zip")
		m.Seams = append(m.Seams, &sheet.Seam{Name: name + "-back", A: partly(open), B: partly(open)})
	}
	layer("shell", "outer", "barathea", s)
	layer("lining", "inner", "lining", inner)
	role(m.Layers[1].Pieces[1].Edge("centre"), "closure")
	m.Layers[0].Ease = []sheet.LevelRange{within("high-hip", 5, 45), within("hip", 10, 55)}
	m.Shares = []*sheet.Share{
		{Name: "waist", Outer: sheet.Whole("shell.front.waist", "shell.back.waist"), Inner: sheet.Whole("lining.front.waist", "lining.back.waist"), Match: "identical"},
		{Name: "zip", Outer: partly(part("shell.back.centre", "zip", "end")), Inner: partly(part("lining.back.centre", "zip", "end")), Match: "identical"},
	}
	for _, name := range []string{"front", "back"} {
		m.Insides = append(m.Insides, &sheet.Inside{Name: name, Outer: "shell." + name, Inner: "lining." + name, Clearance: []sheet.LevelRange{
			within("high-hip", 0, 6), within("hip", 0, 8), within("knee", 0, 10),
		}})
	}
	m.Closures = []*sheet.Closure{{Name: "zip", Kind: "zip", A: sheet.Stretch{Edge: "shell.back.centre"}, B: sheet.Stretch{Edge: "shell.back.centre"},
		From: "zip", To: "end", Stock: []float64{160, 180, 200, 220, 250}}}
	if m.IntN(3) == 0 {
		m.Alters = []*sheet.Alter{{Name: "fitting", Edges: []string{"shell.front.side", "shell.back.side", "lining.front.side", "lining.back.side"},
			Inward: []sheet.Figure{{Name: "high-hip", MM: m.some(1, 2)}, {Name: "hip", MM: m.some(0, 2)}}}}
	}
}

// skirtDraft is what the pieces of one layer have in common.
type skirtDraft struct {
	*Maker
	hip, high       sheet.Num
	long, flare, in float64
	zip             float64
}

type skirtDart struct{ from, long, intake float64 }

// piece is a front or a back, so much wider than the quarter. Its dart has an
// upright inner leg, and the waist goes on square to the outer one.
func (s skirtDraft) piece(name string, wider float64, d skirtDart) *sheet.Piece {
	turn := 2 * math.Asin(d.intake/2/d.long)
	inner := sheet.P(d.from, 0)
	tip := inner.By(0, d.long)
	outer := tip.By(d.long*math.Sin(turn), -d.long*math.Cos(turn))
	high, hip := at(s.high.Plus(wider-s.in), 100), at(s.hip.Plus(wider-s.in), 200)
	corner := at(s.high.Plus(wider-16), -14)
	down := s.long - 200
	flare := s.flare * down / 420
	hem := hip.By(flare, down)
	waist := bent("waist", append(append([]pt{sheet.P(0, 0)}, along(sheet.P(0, 0), inner)...), append(along(inner, outer),
		outer.By(18*math.Cos(turn), 18*math.Sin(turn)), corner.By(-35, 12.5), corner)...)...)
	side := knots(bent("side", corner, corner.By(15, 42), high.By(-8, -30), high, high.By(8, 34), hip.By(-flare*30/down, -30), hip,
		hip.By(flare/3, down/3), hem.By(-flare/3, -down/3), hem), map[string]int{"high-hip": 3, "hip": 6})
	reach := math.Hypot(down, flare)
	bottom := s.long + 60*flare/reach + 6
	hemline := finished(bent("hem", hem, hem.By(-60*down/reach, 60*flare/reach), sheet.P(70, bottom), sheet.P(0, bottom)), "hem")
	return &sheet.Piece{
		Name: name, Cut: 1, Grain: grain(60, 150, 450),
		Edges: []*sheet.Edge{waist, side, hemline, line("centre", sheet.P(0, bottom), sheet.P(0, 0))},
		Darts: []*sheet.Dart{{Name: "waist", On: "waist", At: sheet.N(d.from + d.intake/2), Intake: sheet.N(d.intake), Tip: &tip}},
	}
}
