package layers

import (
	"math"

	"understitch/model"
	"understitch/rules"
)

// sharedNear is a limit of the rules that compare girths.
var sharedNear = rules.Limit{
	Name: "shared", Value: 20, Unit: rules.Millimetres, Source: "common practice, no source",
	Text: "how near to a level a shared edge lies that holds both layers to one girth there",
}

// toldByWidth reports whether what two layers measure at a level is found at
// fault already, by inner-within-outer or layer-girth, by the limits that these
// have built in.
func toldByWidth(g *model.Garment, outer, inner *model.Layer, l *model.Level) bool {
	for _, n := range g.NestsAt(outer, inner, l) {
		clearance, err := n.ClearanceAt(l)
		if err == nil && math.Abs(n.Allowed(l).Beyond(clearance)) > InnerWithinOuter.Limits[0].Value {
			return true
		}
	}
	if !ownPieces(g, inner, l) {
		return false
	}
	round, errOuter := g.Girth(outer, l)
	within, errInner := g.Girth(inner, l)
	return errOuter == nil && errInner == nil && within-round > meantLarger(g, outer, inner, l)+Girth.Limits[0].Value
}

// pastEase is how far past its ease a girth is before body-ease finds it, as
// built in there.
const pastEase = 0.5

// toldByEase reports whether a layer's girth at a level is found at fault
// against the body already.
func toldByEase(g *model.Garment, layer *model.Layer, l *model.Level) bool {
	ease, ok := layer.EaseAt(l)
	round, err := g.Girth(layer, l)
	return ok && err == nil && model.Known(l.Body) && math.Abs(ease.Beyond(round-l.Body)) > pastEase
}

// toldByWidthBetween reports whether the widths of a nest's pieces are found at
// fault, by inner-within-outer, at a level or between two that reach into the
// stretch from one height of the outer piece's frame to another, by the limits
// that it has built in.
func toldByWidthBetween(g *model.Garment, nest *model.Nest, top, bottom float64) bool {
	beyond := InnerWithinOuter.Limits[0].Value
	levels := nest.Compared(g)
	for i, l := range levels {
		y, ok := nest.Outer.LevelY(l)
		if clearance, err := nest.ClearanceAt(l); ok && err == nil && y >= top && y <= bottom && math.Abs(nest.Allowed(l).Beyond(clearance)) > beyond {
			return true
		}
		if i == 0 || !nest.OneFrame() || !nest.SameHalves() {
			continue
		}
		above, okAbove := nest.Outer.LevelY(levels[i-1])
		low := math.Min(nest.Allowed(levels[i-1]).Low, nest.Allowed(l).Low)
		if !ok || !okAbove || above > bottom || y < top || y-above <= 1 || math.IsInf(low, -1) {
			continue
		}
		if least, err := nest.LeastBetween(above, y); err == nil && low-least.Low > beyond {
			return true
		}
	}
	return false
}
