package wardrobe

import "understitch/cmd/corpus/internal/sheet"

// gown is a strapless bodice over a boned foundation. In front both layers have a
// princess seam; behind, the foundation has a seam where the shell has a dart,
// so there the layers are compared by girth. The zip is in the shell, the
// hook-and-eye tape in the foundation.
func gown(m *Maker) {
	m.Title = "Ball gown bodice over a boned foundation"
	for i, l := range []string{"bust", "underbust", "waist", "high-hip"} {
		m.level(l, gownY[i+1], []string{"bust_girth", "underbust_girth", "waist_girth", "high_hip_girth"}[i])
	}
	d := gownDraft{Maker: m}
	for i, name := range []string{"bust", "underbust", "waist", "high_hip"} {
		d.quarter[i] = m.fig(name, name+"_girth", 4, 0)
	}
	d.room, d.intake = m.some(3, 5), m.some(22, 32)
	d.bottom = 19*17 + 24 // the tape down the centre back is cut midway between two hooks
	d.front("shell", d.room)
	d.front("foundation", 0)
	d.shellBack()
	d.foundationBack()
	m.Layers[0].Ease = []sheet.LevelRange{within("bust", 0, 70)}
	m.Layers[1].Ease = []sheet.LevelRange{within("bust", -20, 20), within("underbust", -20, 20), within("waist", -20, 20), within("high-hip", -20, 20)}
	m.Shares = []*sheet.Share{{Name: "top", Match: "identical",
		Outer: sheet.Whole("shell.centre-front.top", "shell.side-front.top", "shell.back.top"),
		Inner: sheet.Whole("foundation.centre-front.top", "foundation.side-front.top", "foundation.side-back.top", "foundation.back.top")}}
	for _, piece := range []string{"centre-front", "side-front"} {
		var room []sheet.LevelRange
		for _, l := range m.Levels {
			room = append(room, within(l.Name, d.room-1.5, d.room+1.5))
		}
		m.Insides = append(m.Insides, &sheet.Inside{Name: piece, Outer: "shell." + piece, Inner: "foundation." + piece, Clearance: room})
	}
	m.Closures = []*sheet.Closure{
		{Name: "zip", Kind: "zip", A: sheet.Stretch{Edge: "shell.back.centre"}, B: sheet.Stretch{Edge: "shell.back.centre"}, Stock: []float64{300, 330, 340, 350, 360, 370, 400}},
		{Name: "hooks", Kind: "tape", Tape: "hook-and-eye-19", Row: 1 + m.IntN(3), A: sheet.Stretch{Edge: "foundation.back.centre"}, B: sheet.Stretch{Edge: "foundation.back.centre"}},
	}
	inner := m.Layers[1]
	for _, b := range []struct{ name, piece, edge string }{{"princess", "side-front", "princess"}, {"back", "back", "seam"}} {
		p := m.Piece(inner.Name + "." + b.piece)
		m.Bones = append(m.Bones, &sheet.Bone{Name: b.name, Along: sheet.Stretch{Edge: inner.Name + "." + b.piece + "." + b.edge}, Length: Length(p.Edge(b.edge)) - 13})
	}
}

// gownY are the heights of the panels' knots: top, the four levels, bottom.
var gownY = [...]float64{-70, 0, 80, 180, 270, 330}

// How wide the centre front is at each knot; the side front and the back take
// the rest of the front and the back of each quarter.
var gownFront = [...]float64{96, 103, 88, 79, 98, 106}

type gownDraft struct {
	*Maker
	quarter              [4]sheet.Num
	room, intake, bottom float64
}

// knotsAt are the knots of an upright seam whose place across is given for each.
func knotsAt(x [6]sheet.Num) []pt {
	var out []pt
	for i := range x {
		out = append(out, at(x[i], gownY[i]))
	}
	return out
}

var gownKnots = map[string]int{"bust": 3, "underbust": 6, "waist": 9, "high-hip": 12}

func fixed(x [6]float64) (out [6]sheet.Num) {
	for i, v := range x {
		out[i] = sheet.N(v)
	}
	return out
}

// outward is where a panel's outer seam lies that takes so much more than the
// quarter at each level; above and below it goes on as at the nearest.
func (d gownDraft) outward(more [6]float64) (out [6]sheet.Num) {
	for i := range out {
		out[i] = d.quarter[min(max(i-1, 0), 3)].Plus(more[i])
	}
	out[0] = d.quarter[0].Plus(more[0])
	return out
}

// side is a side seam of a quarter, of which the panel leaves out so much.
func (d gownDraft) side(without [6]float64, more float64) *sheet.Edge {
	var m [6]float64
	for i := range m {
		m[i] = more - without[i]
	}
	m[0] = more - without[0] - 4
	m[5] += 6
	return knots(upright("side", knotsAt(d.outward(m))...), gownKnots)
}

var (
	sideFrontLeft = [6]float64{0, -6, 10, 16, -2, -8}
	sideBackRight = [6]float64{104, 106, 94, 90, 106, 110}
)

// front makes a layer with its two front panels, so much roomier in each.
func (d gownDraft) front(layer string, room float64) {
	l := &sheet.Layer{Name: layer, Side: "outer", Fabric: "satin"}
	end := "hem"
	if layer == "foundation" {
		l.Side, l.Fabric = "inner", "coutil"
		end = "bound"
	}
	right := gownFront
	for i := 1; i < len(right); i++ {
		right[i] += room
	}
	princess := knots(upright("princess", knotsAt(fixed(right))...), gownKnots)
	length := Length(princess)
	top := level("top", sheet.P(0, -40), princess.Pts[0])
	foot := princess.Pts[len(princess.Pts)-1]
	centre := &sheet.Piece{Name: "centre-front", Cut: 1, Fold: "centre", Grain: grain(40, 20, 280), Edges: []*sheet.Edge{
		top, princess, finished(level("hem", foot, sheet.P(0, d.bottom+20)), end), line("centre", sheet.P(0, d.bottom+20), sheet.P(0, -40)),
	}, Notches: []*sheet.Notch{notch("bust", "princess", 70), notch("waist", "princess", 255)}}
	left := evenly(knots(upright("princess", knotsAt(fixed(sideFrontLeft))...), gownKnots), length)
	var without [6]float64
	for i := range without {
		without[i] = gownFront[i] - sideFrontLeft[i]
	}
	side := d.side(without, 4+room)
	side.Pts[0], side.Pts[1] = side.Pts[0].By(-room, 0), side.Pts[1].By(-room, 0) // one top for both layers
	sideFront := &sheet.Piece{Name: "side-front", Cut: 2, Grain: grain(70, 20, 280), Edges: []*sheet.Edge{
		level("top", left.Pts[0], side.Pts[0]), side,
		finished(level("hem", side.Pts[15], left.Pts[15]), end), backwards(left),
	}, Notches: []*sheet.Notch{notch("bust", "princess", length-70), notch("waist", "princess", length-255), notch("side", "side", 150)}}
	l.Pieces = []*sheet.Piece{centre, sideFront}
	d.Layers = append(d.Layers, l)
	d.Seams = append(d.Seams, seam(layer+"-princess", layer+".centre-front.princess", layer+".side-front.princess"))
}

// shellBack is one panel from the side, at its outer edge, to the centre back
// at the origin, with a dart.
func (d gownDraft) shellBack() {
	shell := d.Layers[0]
	var without [6]float64
	side := d.side(without, d.room)
	side.Pts[0], side.Pts[1] = side.Pts[0].By(-d.room, 0), side.Pts[1].By(-d.room, 0)
	for i := 8; i <= 10; i++ {
		side.Pts[i] = side.Pts[i].By(d.intake, 0) // what the dart takes out at the waist
	}
	evenly(side, Length(shell.Pieces[1].Edge("side")))
	middle := sheet.P(100, 180)
	// The top is drawn as the foundation's two: the seam leaves it level.
	seamAt := sheet.P(sideBackRight[0], -52)
	first, second := level("", sheet.P(0, -46), seamAt), level("", seamAt, side.Pts[0])
	top := bent("top", append(first.Pts, second.Pts[1:]...)...)
	foot := side.Pts[15]
	shell.Pieces = append(shell.Pieces, &sheet.Piece{Name: "back", Cut: 2, Grain: grain(50, 0, 280), Edges: []*sheet.Edge{
		top, side, finished(level("hem", foot, sheet.P(0, d.bottom-46)), "hem"), line("centre", sheet.P(0, d.bottom-46), sheet.P(0, -46)),
	}, Notches: []*sheet.Notch{notch("side", "side", 150)},
		Darts: []*sheet.Dart{{Name: "waist", Centre: &middle, Intake: sheet.N(d.intake), Up: 90, Down: 70}}})
	d.Seams = append(d.Seams, seam("shell-side", "shell.side-front.side", "shell.back.side"))
}

// foundationBack is the same in two panels, centre back at the origin.
func (d gownDraft) foundationBack() {
	f := d.Layers[1]
	seamLine := knots(upright("seam", knotsAt(fixed([6]float64{sideBackRight[0], 105, 90, 80, 96, 100}))...), gownKnots)
	for i := range seamLine.Pts[:2] {
		seamLine.Pts[i].Y = seamLine.Pts[i].Y.Plus(18) // it begins at -52
	}
	length := Length(seamLine)
	back := &sheet.Piece{Name: "back", Cut: 2, Grain: grain(50, 0, 280), Edges: []*sheet.Edge{
		level("top", sheet.P(0, -46), seamLine.Pts[0]), seamLine,
		finished(level("hem", seamLine.Pts[15], sheet.P(0, d.bottom-46)), "bound"), line("centre", sheet.P(0, d.bottom-46), sheet.P(0, -46)),
	}, Notches: []*sheet.Notch{notch("waist", "seam", 225)}}
	inner := knots(upright("seam", knotsAt(fixed([6]float64{sideBackRight[0], 112, 104, 108, 104, 102}))...), gownKnots)
	for i := range inner.Pts[:2] {
		inner.Pts[i].Y = inner.Pts[i].Y.Plus(18)
	}
	evenly(inner, length)
	var without [6]float64
	for i, b := range [6]float64{sideBackRight[0], 105, 90, 80, 96, 100} {
		without[i] = b - [6]float64{sideBackRight[0], 112, 104, 108, 104, 102}[i]
	}
	side := evenly(d.side(without, -4), Length(f.Pieces[1].Edge("side")))
	side.Pts[0], side.Pts[1] = side.Pts[0].By(4, 0), side.Pts[1].By(4, 0)
	evenly(side, Length(f.Pieces[1].Edge("side")))
	sideBack := &sheet.Piece{Name: "side-back", Cut: 2, Grain: grain(150, 0, 280), Edges: []*sheet.Edge{
		level("top", inner.Pts[0], side.Pts[0]), side, finished(level("hem", side.Pts[15], inner.Pts[15]), "bound"), backwards(inner),
	}, Notches: []*sheet.Notch{notch("side", "side", 150), notch("waist", "seam", length-225)}}
	f.Pieces = append(f.Pieces, sideBack, back)
	d.Seams = append(d.Seams, seam("foundation-side", "foundation.side-front.side", "foundation.side-back.side"),
		seam("foundation-back", "foundation.side-back.seam", "foundation.back.seam"))
}
