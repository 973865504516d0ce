package curve

// Cut returns the stretch between two arc lengths, like Part, but where from
// lies before the start or to beyond the end the path runs on straight along
// its direction there. If from is greater than to the stretch runs backwards.
// A path of no length has no direction to run on in; it is returned as it is.
func (p *Path) Cut(from, to float64) *Path {
	if from > to {
		return p.Cut(to, from).Reverse()
	}
	l := p.Length()
	if l == 0 || from >= 0 && to <= l {
		return p.Part(from, to)
	}
	before := func(s float64) Point { return p.Start().Add(p.Direction(0).Scale(s)) }
	beyond := func(s float64) Point { return p.End().Add(p.DirectionBefore(l).Scale(s - l)) }
	switch {
	case to <= 0:
		return Polyline(before(from), before(to))
	case from >= l:
		return Polyline(beyond(from), beyond(to))
	}
	segs := p.Part(max(from, 0), min(to, l)).Segments()
	if from < 0 {
		if segs[0].kind == Straight {
			segs[0].a = before(from)
		} else {
			segs = append([]Segment{Line(before(from), segs[0].a)}, segs...)
		}
	}
	if to > l {
		if last := &segs[len(segs)-1]; last.kind == Straight {
			last.d = beyond(to)
		} else {
			segs = append(segs, Line(last.d, beyond(to)))
		}
	}
	return New(segs...)
}

// CloseCorners trims or runs on the edges of a closed outline, each by up to
// reach at either end, so that every edge ends where the next one starts and
// the last where the first starts; see Meet. Corner i lies between edge i and
// the next. It returns the edges and the index of the first corner that cannot
// be closed, −1 if all were.
//
// Ends that lie within 1e-5 mm of each other are put on one point: at a smooth
// corner the directions differ by rounding alone, and two lines so nearly
// parallel have no crossing there that could be found.
//
// A corner that cannot be closed is left as it is: where the two edges do not
// meet within reach, and both corners of an edge that lie the wrong way round
// on it, so that nothing of it would be left. Edges at whose ends nothing
// changes are returned themselves.
func CloseCorners(edges []*Path, reach float64) ([]*Path, int) { return CloseSome(edges, reach, nil) }

// CloseSome closes those corners only that close reports true for; all others
// stay as they are. A nil function closes all.
func CloseSome(edges []*Path, reach float64, close func(corner int) bool) ([]*Path, int) {
	n := len(edges)
	wanted := func(i int) bool { return close == nil || close(i) }
	out := append([]*Path(nil), edges...)
	open := make([]bool, n)
	from, to := make([]float64, n), make([]float64, n)
	for i := range edges {
		next := (i + 1) % n
		if !wanted(i) {
			to[i], from[next] = edges[i].Length(), 0
			continue
		}
		var ok bool
		if edges[i].End().Dist(edges[next].Start()) <= smoothNear {
			to[i] = edges[i].Length()
			continue
		}
		to[i], from[next], ok = Meet(edges[i], edges[next], reach)
		open[i] = !ok
	}
	spent := make([]bool, n)
	for i, e := range edges {
		spent[i] = from[i] >= to[i] && (e.Length() > 0 || from[i] > to[i])
	}
	for i := range edges {
		if spent[i] {
			open[i], open[(i+n-1)%n] = true, true
		}
	}
	for i, e := range edges {
		if open[i] {
			to[i], from[(i+1)%n] = e.Length(), 0
		}
	}
	first := -1
	for i, e := range edges {
		out[i] = e.Cut(from[i], to[i])
		if open[i] && first < 0 {
			first = i
		}
	}
	for i := range out {
		if !open[i] && wanted(i) {
			weld(out, i, (i+1)%n, edges)
		}
	}
	return out, first
}

// smoothNear is how far apart, in millimetres, the ends of two parallels may lie
// at a smooth corner: directions up to 1e-7 apart, at an allowance of 10 cm.
const smoothNear = 1e-5

// weld puts the end of edge i and the start of the next on the very same
// point, where they differ by rounding. An edge that did not change stays.
func weld(out []*Path, i, next int, edges []*Path) {
	end, start := out[i].End(), out[next].Start()
	kept := out[i] == edges[i] && out[next] == edges[next]
	if end == start || kept && end.Dist(start) <= joinNear {
		return
	}
	if kept || out[next] != edges[next] {
		segs := out[next].Segments()
		segs[0].startAt(end)
		out[next] = New(segs...)
		return
	}
	segs := out[i].Segments()
	segs[len(segs)-1].endAt(start)
	out[i] = New(segs...)
}
