package fullscale

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model"
	"understitch/model/curve"
)

// These tests measure the printed page as a ruler would, on a picture of it that
// poppler makes; they do not ask the program where it meant to draw.

func TestSquaresMeasured(t *testing.T) {
	const dpi = 600
	for _, paper := range Papers() {
		t.Run(paper.Name, func(t *testing.T) {
			file := printed(t, job(rectangle(400, 600)), paper.Name)
			p := taken(t, file, 1, dpi, 113, 262)
			pairs := func(strokes []stroke, size float64) []stroke {
				var out []stroke
				for _, s := range strokes {
					if s.to-s.from > size-0.5 && s.to-s.from < size+0.5 {
						out = append(out, s)
					}
				}
				require.Len(t, out, 2, "two lines of %g mm among %v", size, strokes)
				return out
			}
			for _, size := range []float64{100, 101.6} { // 4 in of 25.4 mm
				down := pairs(p.upright(90), size)
				require.InDelta(t, size, down[1].across-down[0].across, 0.1, "across")
				over := pairs(p.level(90), size)
				require.InDelta(t, size, over[1].across-over[0].across, 0.1, "down")
				t.Logf("%g mm: %.3f across, %.3f down", size, down[1].across-down[0].across, over[1].across-over[0].across)
			}
		})
	}
}

func TestEachSheetHasABar(t *testing.T) {
	j := job(rectangle(400, 600))
	file := printed(t, j, "a4")
	p := taken(t, file, 6, 300, 0, 0)
	for _, s := range p.level(49) {
		if s.to-s.from < 51 && s.across > p.mm(float64(p.high))-margin-foot {
			require.InDelta(t, 50, s.to-s.from-0.2, 0.2, "the bar less the width of its ends")
			return
		}
	}
	t.Fatal("there is no bar of 5 cm")
}

// fullJoin is a board that takes three by three tiles of A4, all of them
// printed, and the page of each.
func fullJoin(t *testing.T) (file string, page func(r, c int) int) {
	panel := rectangle(500, 740)
	// Two lines that slant by half a right angle, so that a tile that is off in
	// any direction shows: one over the upright joins, one over the level ones.
	for _, line := range []*curve.Path{curve.Polyline(at(0, 150), at(500, 650)), curve.Polyline(at(20, 0), at(500, 480))} {
		panel.Marks = append(panel.Marks, drawing.Mark{Kind: drawing.StitchLine, Side: model.Outer, Layer: "shell", Subject: "shell.slant", Line: line})
	}
	j := job(panel)
	w := newWriter(Papers()[0])
	w.layers(j.Full)
	pages := plan(w, j, Papers()[0])
	first := 0
	for first < len(pages) && pages[first].grid == nil {
		first++
	}
	g := pages[first].grid
	require.Equal(t, []int{3, 3, 9}, []int{g.rows, g.cols, g.count()})
	require.Equal(t, Papers()[0].upright(), g.sheet)
	return printed(t, j, "a4"), func(r, c int) int { return first + 1 + 3*r + c }
}

// joinLine is where the long dashes of a join line run, near a place.
func joinLine(t *testing.T, p *picture, upright bool, near float64) float64 {
	t.Helper()
	list := p.level(3.5)
	if upright {
		list = p.upright(3.5)
	}
	n, sum := 0, 0.0
	for _, s := range list {
		if s.across > near-3 && s.across < near+3 && s.to-s.from < 4.5 {
			sum += s.across
			n++
		}
	}
	require.Greater(t, n, 10, "dashes of a join line near %g mm", near)
	return sum / float64(n)
}

// crossing is where a dark line, met going along a row or column of the page at
// a place, has its middle.
func crossing(t *testing.T, p *picture, upright bool, place, from, to float64) float64 {
	t.Helper()
	px := func(mm float64) int { return int(mm / p.mm(1)) }
	weight, sum := 0.0, 0.0
	for i := px(from); i < px(to); i++ {
		v := p.at(i, px(place))
		if upright {
			v = p.at(px(place), i)
		}
		if dark := float64(255 - v); dark > 30 {
			weight += dark
			sum += dark * (float64(i) + 0.5)
		}
	}
	require.Positive(t, weight, "a line crosses at %g mm", place)
	return p.mm(sum / weight)
}

// The slanting lines of the board go on from tile to tile when these are joined
// at their join lines, here measured beside the join on both sheets.
func TestLinesGoOnOverJoins(t *testing.T) {
	const dpi = 600
	file, page := fullJoin(t)
	paper := Papers()[0]
	wide, high := paper.upright().room()
	t.Run("over an upright join", func(t *testing.T) {
		one, two := taken(t, file, page(1, 0), dpi, 0, 0), taken(t, file, page(1, 1), dpi, 0, 0)
		a := joinLine(t, one, true, margin+wide-Overlap/2)
		b := joinLine(t, two, true, margin+Overlap/2)
		for _, off := range []float64{-4, -2, 2, 4} {
			y, z := slanting(t, one, true, a+off), slanting(t, two, true, b+off)
			require.InDelta(t, y, z, 0.1)
			t.Logf("%.3f mm off", z-y)
		}
	})
	t.Run("over a level join", func(t *testing.T) {
		one, two := taken(t, file, page(0, 1), dpi, 0, 0), taken(t, file, page(1, 1), dpi, 0, 0)
		a := joinLine(t, one, false, margin+high-Overlap/2)
		b := joinLine(t, two, false, margin+Overlap/2)
		for _, off := range []float64{-4, -2, 2, 4} {
			x, z := slanting(t, one, false, a+off), slanting(t, two, false, b+off)
			require.InDelta(t, x, z, 0.1)
			t.Logf("%.3f mm off", z-x)
		}
	})
}

// slanting finds the whole black line that crosses a column or row of the page:
// the widest run of black.
func slanting(t *testing.T, p *picture, upright bool, place float64) float64 {
	t.Helper()
	n := p.wide
	if upright {
		n = p.high
	}
	at := int(place / p.mm(1))
	best, run := 0, 0
	end := 0
	low, up := int((margin+Overlap)/p.mm(1)), n-int((margin+foot+Overlap)/p.mm(1))
	for i := low; i < up; i++ {
		v := p.at(i, at)
		if upright {
			v = p.at(at, i)
		}
		if v > 40 { // black alone, not brown or grey
			run = 0
			continue
		}
		if run++; run > best {
			best, end = run, i
		}
	}
	require.Positive(t, best)
	middle := p.mm(float64(end) - float64(best)/2)
	return crossing(t, p, upright, place, middle-1, middle+1)
}

// What two neighbours show of their overlap is the same to a tenth of a
// millimetre: broken lines go on in step, rings close.
func TestOverlapsAreAlike(t *testing.T) {
	const dpi = 254 // ten dots a millimetre, so that tiles lie on whole dots
	file, page := fullJoin(t)
	wide, high := Papers()[0].upright().room()
	stepX, stepY := int((wide-Overlap)*10), int((high-Overlap)*10)
	compare := func(a, b *picture, dx, dy, x0, y0, x1, y1 int) {
		ink, differ := 0, 0
		for y := y0; y < y1; y++ {
			for x := x0; x < x1; x++ {
				v := int(a.at(x+dx, y+dy))
				darkest, lightest := b.about(x, y)
				if v < 128 {
					ink++
				}
				if v < darkest-100 || v > lightest+100 {
					differ++
				}
			}
		}
		require.Greater(t, ink, 500)
		require.Zero(t, differ)
	}
	m, o := int(margin*10), int(Overlap*10)
	left, right := taken(t, file, page(1, 1), dpi, 0, 0), taken(t, file, page(1, 2), dpi, 0, 0)
	compare(left, right, stepX, 0, m+1, m+1, m+o-1, m+int(high*10)-1)
	above, below := taken(t, file, page(0, 1), dpi, 0, 0), taken(t, file, page(1, 1), dpi, 0, 0)
	compare(above, below, 0, stepY, m+1, m+1, m+int(wide*10)-1, m+o-1)
}

// A piece that fits on a page is as large as it was drawn.
func TestPieceMeasured(t *testing.T) {
	panel := rectangle(150, 170)
	panel.Marks = panel.Marks[:1]
	panel.Marks[0].Kind = drawing.StitchLine
	j := job(panel)
	j.Findings, j.Cut, j.Reduced.Panels = nil, nil, nil
	p := taken(t, printed(t, j, "a4"), 2, 600, 0, 0)
	down, over := p.upright(160), p.level(140)
	require.Len(t, down, 2)
	require.Len(t, over, 2)
	require.InDelta(t, 150, down[1].across-down[0].across, 0.1)
	require.InDelta(t, 170, over[1].across-over[0].across, 0.1)
}
