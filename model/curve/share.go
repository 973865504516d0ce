package curve

// stretchPair is a stretch of share of length, x0 to x1, over which both of
// two paths stay on one segment each.
type stretchPair struct {
	x0, x1 float64
	i, j   int32 // indexes of the segments
}

// shareWalk walks along two paths at equal share of their lengths, from knot
// to knot of either.
type shareWalk struct {
	a, b   *Path
	la, lb float64
	x      float64
	i, j   int32
	done   bool
}

func walkShares(a, b *Path) shareWalk {
	return shareWalk{a: a, b: b, la: a.Length(), lb: b.Length(), done: len(a.segs) == 0 || len(b.segs) == 0}
}

// next returns the next stretch. Stretches of no length are left out.
func (w *shareWalk) next() (stretchPair, bool) {
	for !w.done {
		ea, eb := shareAfter(w.a, w.la, w.i), shareAfter(w.b, w.lb, w.j)
		e := min(ea, eb)
		pair := stretchPair{w.x, max(w.x, e), w.i, w.j}
		stepA := ea <= e && int(w.i)+1 < len(w.a.segs)
		stepB := eb <= e && int(w.j)+1 < len(w.b.segs)
		if stepA {
			w.i++
		}
		if stepB {
			w.j++
		}
		w.done = !stepA && !stepB
		w.x = pair.x1
		if pair.x1 > pair.x0 {
			return pair, true
		}
	}
	return stretchPair{}, false
}

// shareAfter returns the share at the end of a segment, exactly 1 at the last.
func shareAfter(p *Path, length float64, index int32) float64 {
	if int(index)+1 >= len(p.segs) || length == 0 {
		return 1
	}
	return p.knot(index+1) / length
}
