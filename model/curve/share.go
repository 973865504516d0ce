package curve

// stretchPair is a stretch of share of length, x0 to x1, over which both of
// two paths stay on one segment each.
type stretchPair struct {
	x0, x1 float64
	i, j   int32
}

// sharePairs walks along two paths at equal share of their lengths, and
// yields the stretches between the knots of either. Stretches of no length
// are left out.
func sharePairs(a, b *Path, yield func(stretchPair) bool) {
	la, lb := a.Length(), b.Length()
	na, nb := int32(len(a.segs)), int32(len(b.segs))
	x := 0.0
	for i, j := int32(0), int32(0); i < na && j < nb; {
		ea, eb := 1.0, 1.0
		if i+1 < na && la > 0 {
			ea = a.knot(i+1) / la
		}
		if j+1 < nb && lb > 0 {
			eb = b.knot(j+1) / lb
		}
		e := min(ea, eb)
		if e > x || la == 0 && lb == 0 {
			if !yield(stretchPair{x, max(x, e), i, j}) {
				return
			}
		}
		x = max(x, e)
		stepA, stepB := ea <= e && i+1 < na, eb <= e && j+1 < nb
		if stepA {
			i++
		}
		if stepB {
			j++
		}
		if !stepA && !stepB {
			return
		}
	}
}
