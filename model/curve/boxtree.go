package curve

import "math"

// boxTree holds boxes in order and bundles of them, so that a search passes over
// whatever lies too far away at once instead of box by box. The boxes of a line's
// stretches come one after the other on paper too, so neighbours in the list make
// good bundles. A search goes through the boxes that are left in the list's order,
// just as one that looks at all of them would.
type boxTree struct {
	// levels[0] are the boxes; each box of a further level holds bundleSize of
	// the level before.
	levels [][]Box
}

// bundleSize is how many boxes make a bundle.
const (
	bundleBits = 3
	bundleSize = 1 << bundleBits
)

// newBoxTree bundles the boxes, which it keeps.
func newBoxTree(boxes []Box) boxTree {
	t := boxTree{levels: [][]Box{boxes}}
	for len(boxes) > 2*bundleSize {
		above := make([]Box, (len(boxes)+bundleSize-1)/bundleSize)
		for i := range above {
			above[i] = boxes[i*bundleSize]
			for _, b := range boxes[i*bundleSize+1 : min((i+1)*bundleSize, len(boxes))] {
				above[i] = above[i].Union(b)
			}
		}
		t.levels = append(t.levels, above)
		boxes = above
	}
	return t
}

// whole returns the box that holds all boxes, of which there must be one.
func (t *boxTree) whole() Box {
	top := t.levels[len(t.levels)-1]
	b := top[0]
	for _, c := range top[1:] {
		b = b.Union(c)
	}
	return b
}

// next returns the first box from index i on that is not passed over, or the
// number of boxes. What pass answers of a bundle holds for all boxes in it, those
// with an index from first up to, but without, end.
func (t *boxTree) next(i int, pass func(b *Box, first, end int) bool) int {
	n := len(t.levels[0])
each:
	for i < n {
		for level := len(t.levels) - 1; level > 0; level-- {
			bits := level * bundleBits
			if i&(1<<bits-1) != 0 {
				continue
			}
			end := min(i+1<<bits, n)
			if pass(&t.levels[level][i>>bits], i, end) {
				i = end
				continue each
			}
		}
		if !pass(&t.levels[0][i], i, i+1) {
			return i
		}
		i++
	}
	return n
}

// nearest returns the box nearest to q, the first of several.
func (t *boxTree) nearest(q Point) int {
	if len(t.levels) == 1 {
		first, least := 0, math.Inf(1)
		for i := range t.levels[0] {
			if d := t.levels[0][i].distance(q); d < least {
				first, least = i, d
			}
		}
		return first
	}
	s := boxSearch{tree: t, q: q, least: math.Inf(1)}
	top := len(t.levels) - 1
	s.among(top, 0, len(t.levels[top]))
	return s.first
}

// boxSearch looks for the box nearest to a point, in the nearest bundles first.
type boxSearch struct {
	tree  *boxTree
	q     Point
	first int
	least float64
}

// among looks through the boxes of a level from one index to before another.
func (s *boxSearch) among(level, from, to int) {
	var room [2 * bundleSize]float64
	away := room[:0]
	for i := from; i < to; i++ {
		away = append(away, s.tree.levels[level][i].distance(s.q))
	}
	for range away {
		k := 0
		for i, d := range away {
			if d < away[k] {
				k = i
			}
		}
		d, i := away[k], from+k
		away[k] = math.Inf(1)
		if d > s.least {
			return
		}
		if level > 0 {
			s.among(level-1, i<<bundleBits, min((i+1)<<bundleBits, len(s.tree.levels[level-1])))
		} else if d < s.least || i < s.first {
			s.first, s.least = i, d
		}
	}
}
