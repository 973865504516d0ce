package slips

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
)

// Slip is one mistake in the text of a spec.
type Slip struct {
	Kind  string // "a point", "the unit of a notch", "a name"
	What  string // in words: "12.5 becomes 13.1, line 40"
	edits []edit
	of    thing
}

// kinds are the kinds of slip with how often each is drawn, of a hundred.
var kinds = []struct {
	name  string
	often int
}{
	{point, 28}, {length, 5}, {width, 5}, {level, 5}, {girth, 8}, {allowance, 9}, {intake, 6}, {notch, 12},
	{"unit of one figure", 10}, {"unit of the file", 3}, {"name", 9},
}

// drawKind draws a kind of slip.
func drawKind(r *rand.Rand) string {
	n := r.IntN(100)
	for _, k := range kinds {
		if n -= k.often; n < 0 {
			return k.name
		}
	}
	return point
}

// draw makes a slip of a kind. It reports false where the spec has nothing that
// could slip so.
func (t *text) draw(kind string, r *rand.Rand) (Slip, bool) {
	switch kind {
	case "unit of the file":
		return t.fileUnit(r), true
	case "name":
		return t.drawName(r)
	case "unit of one figure":
		if len(t.figures) == 0 {
			return Slip{}, false
		}
		return t.figureUnit(t.figures[r.IntN(len(t.figures))], r)
	}
	list := t.ofKind(kind)
	if len(list) == 0 {
		return Slip{}, false
	}
	f := list[r.IntN(len(list))]
	by := limits[kind] * math.Exp(math.Log(2)+r.Float64()*math.Log(10)) // 2 to 20 times the limit
	if r.IntN(2) == 0 {
		by = -by
	}
	if kind != point && kind != level && kind != notch && f.value*f.unit+by <= 0 {
		by = -by // no cloth is less than nothing wide
	}
	return t.slip(kind, f, f.moved(by))
}

func (t *text) ofKind(kind string) []figure {
	return slices.DeleteFunc(slices.Clone(t.figures), func(f figure) bool { return f.kind != kind })
}

// slip is a figure that is written otherwise, far enough to matter.
func (t *text) slip(kind string, f figure, e edit) (Slip, bool) {
	var now float64
	if _, err := fmt.Sscan(e.text, &now); err != nil || math.Abs(now-f.value)*f.unit < 2*limits[f.kind]*0.99 {
		return Slip{}, false
	}
	return Slip{kind, t.told(e), []edit{e}, f.of}, true
}

// told says what becomes of some bytes.
func (t *text) told(e edit) string {
	line := 1
	for _, b := range t.src[:e.from] {
		if b == '\n' {
			line++
		}
	}
	return fmt.Sprintf("line %d: %s becomes %s", line, t.src[e.from:e.to], e.text)
}

// figureUnit writes one figure in another unit than the file's, as who reads it
// off a tape with two scales.
func (t *text) figureUnit(f figure, r *rand.Rand) (Slip, bool) {
	var others []float64
	for _, u := range []float64{1, 10, 25.4} {
		if u != f.unit {
			others = append(others, u)
		}
	}
	return t.slip("unit of one figure", f, f.scaled(f.unit/others[r.IntN(len(others))]))
}

// fileUnit states another unit for the whole file.
func (t *text) fileUnit(r *rand.Rand) Slip {
	others := slices.DeleteFunc([]string{"mm", "cm", "in"}, func(u string) bool { return u == t.unit })
	e := t.unitAt
	e.text = `"` + others[r.IntN(2)] + `"`
	return Slip{"unit of the file", t.told(e), []edit{e}, t.garment}
}

// drawName names another thing than the one that is meant, or, now and then, two
// edges of a piece by each other's names.
func (t *text) drawName(r *rand.Rand) (Slip, bool) {
	if r.IntN(5) == 0 {
		return t.labelsSwapped(r)
	}
	if len(t.names) == 0 {
		return Slip{}, false
	}
	n := t.names[r.IntN(len(t.names))]
	e := edit{n.from, n.to, n.others[r.IntN(len(n.others))]}
	th := n.of
	th.names = append(slices.Clone(th.names), e.text)
	return Slip{"name", t.told(e), []edit{e}, th}, true
}

func (t *text) labelsSwapped(r *rand.Rand) (Slip, bool) {
	pieces := t.pieces()
	list := t.labels[pieces[r.IntN(len(pieces))]]
	if len(list) < 2 {
		return Slip{}, false
	}
	i := r.IntN(len(list))
	j := (i + 1 + r.IntN(len(list)-1)) % len(list)
	a, b := list[min(i, j)], list[max(i, j)]
	th := a.of
	th.names = []string{a.of.piece + "." + a.name, a.of.piece + "." + b.name, a.of.piece}
	edits := []edit{{a.from, a.to, `"` + b.name + `"`}, {b.from, b.to, `"` + a.name + `"`}}
	return Slip{"two labels", t.told(edits[0]) + " and the other way round", edits, th}, true
}

// with is the spec with slips in it, none of which lies in another.
func (t *text) with(slips ...Slip) []byte {
	var all []edit
	for _, s := range slips {
		all = append(all, s.edits...)
	}
	slices.SortFunc(all, func(a, b edit) int { return b.from - a.from })
	out := slices.Clone(t.src)
	for _, e := range all {
		out = slices.Concat(out[:e.from], []byte(e.text), out[e.to:])
	}
	return out
}
