package curve

// stretchPair is a stretch of share of length, x0 to x1, over which both of
// two paths stay on one segment, or one leaf, each.
type stretchPair struct {
	x0, x1 float64
	i, j   int32 // indexes of the segments, or leaves
}

// shareWalk walks along two paths at equal share of their lengths, from knot
// to knot of either. Knots are the ends of segments or, where a curve must be
// smooth in between, the ends of leaves, which cusps fall on.
type shareWalk struct {
	a, b   *Path
	x      float64
	i, j   int32
	byLeaf bool
	done   bool
}

func walkSegments(a, b *Path) shareWalk {
	return shareWalk{a: a, b: b, done: len(a.segs) == 0 || len(b.segs) == 0}
}

func walkLeaves(a, b *Path) shareWalk {
	w := walkSegments(a, b)
	w.byLeaf = true
	return w
}

// next returns the next stretch. Stretches of no length are left out.
func (w *shareWalk) next() (stretchPair, bool) {
	for !w.done {
		ea, lastA := w.end(w.a, w.i)
		eb, lastB := w.end(w.b, w.j)
		e := min(ea, eb)
		pair := stretchPair{w.x, max(w.x, e), w.i, w.j}
		stepA, stepB := ea <= e && !lastA, eb <= e && !lastB
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

// end returns the share at the end of a segment or leaf, exactly 1 at the last.
func (w *shareWalk) end(p *Path, index int32) (share float64, last bool) {
	n, s := len(p.segs), 0.0
	if w.byLeaf {
		n, s = len(p.leaves), p.leaves[index].s1
	} else {
		s = p.knot(index + 1)
	}
	if int(index)+1 >= n || p.Length() == 0 {
		return 1, true
	}
	return s / p.Length(), false
}
