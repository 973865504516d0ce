package fullscale

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model/curve"
)

func TestTileNames(t *testing.T) {
	for name, at := range map[string][2]int{"A1": {0, 0}, "B3": {1, 2}, "Z10": {25, 9}, "AA1": {26, 0}, "AZ2": {51, 1}, "BA1": {52, 0}} {
		require.Equal(t, name, tileName(at[0], at[1]))
	}
}

// Whatever is drawn on a board is on the tile to which it belongs, with half the
// overlap to spare on every side that is joined, and that tile is printed.
func TestEverythingIsOnATile(t *testing.T) {
	w := newWriter(Papers()[0])
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(Papers()).Draw(t, "paper")
		panel := rectangle(rapid.Float64Range(60, 2000).Draw(t, "wide"), rapid.Float64Range(60, 2000).Draw(t, "high"))
		b := newBoard(w, job(panel), panel)
		g := spread(b, p)
		wide, high := g.sheet.room()
		b.inked(func(q curve.Point) {
			found := 0
			for r := range g.rows {
				for c := range g.cols {
					core := g.core(r, c)
					x, y := q.X+g.left, q.Y+g.top
					if x < core.Min.X || x > core.Max.X || y < core.Min.Y || y > core.Max.Y {
						continue
					}
					found++
					px, py := x-float64(c)*g.stepX, y-float64(r)*g.stepY
					require.True(t, px >= 0 && px <= wide && py >= 0 && py <= high, "on the sheet")
					if x > core.Min.X && x < core.Max.X && y > core.Min.Y && y < core.Max.Y {
						require.True(t, g.need[r][c], "tile %s is printed", tileName(r, c))
					}
				}
			}
			require.Positive(t, found)
		})
	})
}

// A tile that lies within a piece is printed though it is blank; one beside the
// piece is not.
func TestBlankTiles(t *testing.T) {
	w := newWriter(Papers()[0])
	panel := rectangle(900, 1300)
	panel.Marks = panel.Marks[:1]
	g := gridOf(newBoard(w, job(panel), panel), Papers()[0].upright(), 0.5, 0.5)
	require.Equal(t, g.rows*g.cols, g.count())

	panel.Marks[0].Line = curve.Polyline(at(0, 0), at(900, 1300), at(0, 1300), at(0, 0))
	g = gridOf(newBoard(w, job(panel), panel), Papers()[0].upright(), 0.5, 0.5)
	require.Less(t, g.count(), g.rows*g.cols)
	require.True(t, g.has(g.rows-2, 1), "within")
	require.False(t, g.has(0, g.cols-1), "beside")
}

func TestPacked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(Papers()).Draw(t, "paper").upright()
		wide, high := s.room()
		var items []*item
		for i := range rapid.IntRange(1, 30).Draw(t, "items") {
			items = append(items, &item{
				title: fmt.Sprint(i), wide: rapid.Float64Range(5, wide).Draw(t, "wide"), high: rapid.Float64Range(5, high).Draw(t, "high"),
			})
		}
		for i := range items[1:] {
			if rapid.Bool().Draw(t, "goes on") {
				items[i+1].after = items[i]
			}
		}
		seen := map[*item]int{}
		for number, p := range pack(items, s) {
			for i, a := range p.placed {
				require.NotContains(t, seen, a.item)
				seen[a.item] = number
				require.LessOrEqual(t, a.x+a.wide, wide+1e-6)
				require.LessOrEqual(t, a.y+a.high, high+1e-6)
				for _, b := range p.placed[i+1:] {
					apart := a.x+a.wide <= b.x || b.x+b.wide <= a.x || a.y+a.high <= b.y || b.y+b.high <= a.y
					require.True(t, apart, "%s and %s lie on each other", a.title, b.title)
				}
			}
		}
		require.Len(t, seen, len(items))
		for _, i := range items {
			if i.after != nil {
				require.LessOrEqual(t, seen[i.after], seen[i])
			}
		}
	})
}

// On paper the words of a level stand within the pieces, and off the tags.
func TestWordsStandWithin(t *testing.T) {
	w := newWriter(Papers()[0])
	panel := rectangle(400, 600)
	panel.Marks = append(panel.Marks, drawing.Mark{
		Kind: drawing.LevelWidth, At: at(402, 290), Dir: at(1, 0), Reach: 38, Align: drawing.Start, Text: []string{"waist", "room 2 mm", "20.5 less 20.3"},
	})
	b := newBoard(w, job(panel), panel)
	level, tag := b.marks[len(b.marks)-1], b.marks[4]
	require.Equal(t, drawing.Tag, tag.Sign)
	require.Equal(t, at(-1, 0), tag.Dir, "turned in")
	words, over := b.extents(level)[0], b.extents(tag)[0]
	require.Less(t, words.Max.X, over.Min.X)
	require.Greater(t, words.Min.X, 0.0)
	require.Less(t, b.wide, 410.0, "no paper is spent on words")
}
