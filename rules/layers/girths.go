package layers

import (
	"math"

	"understitch/model"
	"understitch/model/layering"
	"understitch/model/measuring"
	"understitch/rules"
	"understitch/rules/fit"
)

// sharedNear is a limit of the rules that compare girths.
var sharedNear = rules.Limit{
	Name: "shared", Value: 20, Unit: rules.Millimetres, Source: "common practice, no source",
	Text: "how near to a level a shared edge lies that holds both layers to one girth there",
}

// toldByWidth reports whether what two layers measure at a level is found at
// fault already, by inner-within-outer or layer-girth.
func toldByWidth(p *rules.Pass, outer, inner *model.Layer, l *model.Level) bool {
	for _, n := range measuring.InsidesAt(p.Garment, outer, inner, l) {
		clearance, err := layering.ClearanceAt(n, l)
		if err == nil && math.Abs(n.Allowed(l).Beyond(clearance)) > p.LeftTo(PastClearance) {
			return true
		}
	}
	if !ownPieces(p.Garment, inner, l) {
		return false
	}
	round, errOuter := measuring.Girth(p.Garment, outer, l)
	within, errInner := measuring.Girth(p.Garment, inner, l)
	return errOuter == nil && errInner == nil && within-round > meantLarger(p.Garment, outer, inner, l)+p.LeftTo(larger)
}

// toldByEase reports whether a layer's girth at a level is found at fault
// against the body already.
func toldByEase(p *rules.Pass, layer *model.Layer, l *model.Level) bool {
	ease, ok := measuring.EaseAt(layer, l)
	round, err := measuring.Girth(p.Garment, layer, l)
	return ok && err == nil && model.Known(l.Body) && math.Abs(ease.Beyond(round-l.Body)) > p.LeftTo(fit.PastEase)
}

// toldByWidthBetween reports whether the widths of an inside's pieces are found at
// fault, by inner-within-outer, at a level or between two that reach into the
// stretch from one height of the outer piece's frame to another.
func toldByWidthBetween(p *rules.Pass, inside *model.Inside, top, bottom float64) bool {
	beyond := p.LeftTo(PastClearance)
	levels := layering.Compared(inside, p.Garment)
	for i, l := range levels {
		y, ok := inside.Outer.LevelY(l)
		if clearance, err := layering.ClearanceAt(inside, l); ok && err == nil && y >= top && y <= bottom && math.Abs(inside.Allowed(l).Beyond(clearance)) > beyond {
			return true
		}
		if i == 0 || !inside.OneFrame() || !layering.SameHalves(inside) {
			continue
		}
		above, okAbove := inside.Outer.LevelY(levels[i-1])
		low := math.Min(inside.Allowed(levels[i-1]).Low, inside.Allowed(l).Low)
		if !ok || !okAbove || above > bottom || y < top || y-above <= 1 || math.IsInf(low, -1) {
			continue
		}
		if least, err := layering.LeastBetween(inside, above, y); err == nil && low-least.Low > beyond {
			return true
		}
	}
	return false
}
