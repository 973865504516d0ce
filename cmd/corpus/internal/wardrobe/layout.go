package wardrobe

import (
	"math/rand/v2"
	"slices"
	"strings"

	"understitch/cmd/corpus/internal/sheet"
)

// Lay lays the pieces out on the paper in one of several ways: as they were
// drafted; turned over, so that the fold is on the right; drawn the other way
// round; or the backs beside the fronts, perhaps further down, where they have
// levels of their own. With apart they surely have.
func Lay(g *sheet.Garment, r *rand.Rand, apart bool) {
	if r.IntN(3) == 0 {
		each(g, func(string) bool { return true }, func(p sheet.Pt) sheet.Pt { return sheet.Pt{X: p.X.Times(-1), Y: p.Y} })
	}
	if r.IntN(3) == 0 {
		drawBackwards(g)
	}
	if r.IntN(3) > 0 && !apart {
		return
	}
	back := func(piece string) bool { return strings.HasSuffix(piece, "back") }
	dx, dy := float64(450+10*r.IntN(20)), float64(10*r.IntN(2)*r.IntN(30))
	if apart {
		dy = 100
	}
	asDrawn := r.IntN(2) == 0 || apart // both layers' backs have the same levels of their own
	for _, n := range g.Insides {
		if _, name, _ := strings.Cut(n.Outer, "."); dy > 0 && back(name) && asDrawn {
			n.Align = `"draft"`
		} else if dy > 0 && back(name) {
			if n.Align = alignBy(g, n); n.Align == "" {
				dy = 0 // nothing would tell how one lies in the other
			}
		}
	}
	each(g, back, func(p sheet.Pt) sheet.Pt { return p.By(dx, dy) })
	if dy == 0 {
		return
	}
	for _, l := range g.Layers {
		for _, p := range l.Pieces {
			if !back(p.Name) || len(p.Edges) == 0 || p.Edges[0].Form == sheet.Tape || p.NoLevels {
				continue
			}
			for _, level := range g.Levels {
				p.Levels = append(p.Levels, sheet.Figure{Name: level.Name, MM: level.Y.Base() + dy})
			}
		}
	}
}

// alignBy is a share by which an inside's pieces can be laid together, or "".
func alignBy(g *sheet.Garment, n *sheet.Inside) string {
	of := func(side []sheet.Stretch, piece string) bool {
		return slices.ContainsFunc(side, func(s sheet.Stretch) bool { return s.From == "" && strings.HasPrefix(s.Edge, piece+".") })
	}
	for _, s := range g.Shares {
		if s.Match == "identical" && of(s.Outer, n.Outer) && of(s.Inner, n.Inner) {
			return "share." + s.Name
		}
	}
	return ""
}

// each moves the points of the pieces that suit.
func each(g *sheet.Garment, suits func(piece string) bool, to func(sheet.Pt) sheet.Pt) {
	all := func(pts []sheet.Pt) {
		for i := range pts {
			pts[i] = to(pts[i])
		}
	}
	one := func(p *sheet.Pt) *sheet.Pt {
		if p == nil {
			return nil
		}
		moved := to(*p)
		return &moved
	}
	for _, l := range g.Layers {
		for _, p := range l.Pieces {
			if !suits(p.Name) {
				continue
			}
			all(p.Grain)
			for _, e := range p.Edges {
				all(e.Pts)
				all(e.CutLine)
			}
			for _, d := range p.Darts {
				d.Tip, d.Centre = one(d.Tip), one(d.Centre)
			}
			for _, n := range p.Notches {
				n.Point = one(n.Point)
			}
		}
	}
}
