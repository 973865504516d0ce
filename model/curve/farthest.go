package curve

import (
	"cmp"
	"slices"
)

// FarthestApart returns the largest distance between any two of the points, and
// the indexes of the two, the lower first. Of several pairs that lie equally far
// apart that one is taken whose second point comes soonest, then the first. All
// points in one place give 0 and no indexes.
//
// Only corners of the points' hull can lie farthest apart, and of those only two
// that parallel lines can enclose all points between (Shamos 1978); they are met
// by going once round.
func FarthestApart(points []Point) (distance float64, first, second int) {
	hull := hullOf(points)
	n := len(hull)
	at := func(i int) Point { return points[hull[i%n]] }
	see := func(i, j int) {
		a, b := hull[i%n], hull[j%n]
		a, b = min(a, b), max(a, b)
		d := points[a].Dist(points[b])
		if d > distance || d == distance && d > 0 && (b < second || b == second && a < first) {
			distance, first, second = d, a, b
		}
	}
	far := 1
	for i := range n {
		side := at(i + 1).Sub(at(i))
		for see(i, far); far < i+n && side.Cross(at(far+1).Sub(at(far))) > 0; see(i, far) {
			far++
		}
		see(i+1, far)
		see(i, far+1) // as far off where the two sides are parallel
		see(i+1, far+1)
	}
	return distance, first, second
}

// hullOf returns the indexes of the corners of the points' convex hull, in order
// round it: one or two where the points lie in one place or on one line. Of points
// in one place the lowest index is given.
func hullOf(points []Point) []int {
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		p, q := points[i], points[j]
		return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y), cmp.Compare(i, j))
	})
	order = slices.CompactFunc(order, func(i, j int) bool { return points[i] == points[j] })
	if len(order) < 3 {
		return order
	}
	hull := make([]int, 0, 2*len(order))
	half := func() {
		base := len(hull)
		for _, i := range order {
			for len(hull) >= base+2 {
				a, b := points[hull[len(hull)-2]], points[hull[len(hull)-1]]
				if b.Sub(a).Cross(points[i].Sub(b)) > 0 {
					break
				}
				hull = hull[:len(hull)-1]
			}
			hull = append(hull, i)
		}
		hull = hull[:len(hull)-1] // the next half begins there
	}
	half()
	slices.Reverse(order)
	half()
	return hull
}
