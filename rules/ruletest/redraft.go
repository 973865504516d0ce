package ruletest

import (
	"slices"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/drafting"
)

// redraft moves everything that is drawn. Pieces that were drawn with their
// allowances get their stitch line anew, from the cut line where that lies now.
func (f frames) redraft(g *model.Garment) {
	anew := !slices.ContainsFunc(g.Edges(), func(e *model.Edge) bool { return e.Drafted != nil })
	for _, l := range g.Levels {
		l.Y = height(f.whole, l.Y)
	}
	for _, p := range g.Pieces() {
		m := f.whole
		if p.OwnLevels {
			m = f.own[p.Address()]
		}
		move(p, m)
		for _, e := range p.Edges {
			if anew && e.Cut != nil {
				e.Path, e.Cut = e.Cut, nil
			}
		}
	}
	if anew {
		if diags := drafting.Net(g); diags != nil {
			panic(diags[0].Error())
		}
	}
}

// height is where a level goes, by a motion that leaves it level.
func height(m curve.Motion, y float64) float64 { return m.Apply(curve.Point{Y: y}).Y }

func move(p *model.Piece, m curve.Motion) {
	for i := range p.LevelsAt {
		p.LevelsAt[i].Value = height(m, p.LevelsAt[i].Value)
	}
	for i := range p.Grain {
		p.Grain[i] = m.Apply(p.Grain[i])
	}
	for _, e := range p.Edges {
		if e.Traced != nil {
			for i, v := range e.Traced.Through {
				e.Traced.Through[i].Value = m.Apply(curve.Point{X: v.Value}).X
			}
		}
		for _, line := range []**curve.Path{&e.Path, &e.Cut, &e.CutDrawn, &e.Drafted} {
			if *line != nil {
				*line = (*line).Move(m)
			}
		}
	}
	for _, d := range p.Darts {
		d.Tip, d.Centre = m.Apply(d.Tip), m.Apply(d.Centre)
		if m.Direction(curve.Point{Y: 1}).Y < 0 {
			d.Up, d.Down = d.Down, d.Up
		}
	}
	for _, n := range p.Notches {
		n.Point = m.Apply(n.Point)
	}
}

// apart gives every piece a frame of its own, with the garment's levels in it at
// heights of its own.
func apart(g *model.Garment) {
	for i, p := range g.Pieces() {
		if p.OwnLevels {
			continue
		}
		p.OwnLevels = true
		for _, l := range g.Levels {
			p.LevelsAt = append(p.LevelsAt, model.LevelValue{Level: l, Value: l.Y, Place: l.Place})
		}
		if !laidAsDrawn(g, p) {
			move(p, down(i+1)) // else they would still be in one frame
		}
	}
}

// laidAsDrawn reports whether an inside says that a piece lies as it is drawn.
func laidAsDrawn(g *model.Garment, p *model.Piece) bool {
	return slices.ContainsFunc(g.Insides, func(n *model.Inside) bool { return n.Laid && (n.Outer.Has(p) || n.Inner.Has(p)) })
}
