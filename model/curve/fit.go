package curve

import "math"

// Fit returns the rigid motion of moving (turned over first if mirrored is
// set) that brings it closest to fixed: least squares of the distance between
// points at equal share of length along, integrated over the share by
// Gauss–Legendre between the knots and cusps of either path. Closed form in the plane:
// the centres of gravity fall together, and the turn is atan2 of the summed
// cross and dot products (Kabsch 1976; Umeyama 1991). Where the sums vanish
// and every turn is equally good the motion does not turn.
func Fit(fixed, moving *Path, mirrored bool) Motion {
	if len(fixed.segs) == 0 || len(moving.segs) == 0 {
		return Motion{mirrored: mirrored}
	}
	// Sums are taken about the starts, which keeps small shapes that lie far
	// from the origin accurate.
	oa, ob := fixed.Start(), moving.Start()
	la, lb := fixed.Length(), moving.Length()
	var sa, sb Point
	var dot, cross, weight float64
	add := func(x, w float64, i, j int32) {
		p := fixed.onLeaf(i, x*la).Sub(oa)
		q := moving.onLeaf(j, x*lb).Sub(ob)
		if mirrored {
			q.Y = -q.Y
		}
		sa, sb = sa.Add(p.Scale(w)), sb.Add(q.Scale(w))
		dot += w * q.Dot(p)
		cross += w * q.Cross(p)
		weight += w
	}
	walk := walkLeaves(fixed, moving)
	for pair, more := walk.next(); more; pair, more = walk.next() {
		mid, half := (pair.x0+pair.x1)/2, (pair.x1-pair.x0)/2
		for k, u := range gaussNodes {
			w := gaussWeights[k] * half
			add(mid-u*half, w, pair.i, pair.j)
			add(mid+u*half, w, pair.i, pair.j)
		}
	}
	cos, sin := 1.0, 0.0
	var ca, cb Point
	if weight > 0 {
		ca, cb = sa.Scale(1/weight), sb.Scale(1/weight)
		dot = dot/weight - cb.Dot(ca)
		cross = cross/weight - cb.Cross(ca)
		if l := math.Hypot(dot, cross); l > 0 {
			cos, sin = dot/l, cross/l
		}
	}
	if mirrored {
		cb.Y = -cb.Y
	}
	return turnAbout(ob.Add(cb), oa.Add(ca), cos, sin, mirrored)
}
