package fullscale

import (
	"math"
	"strings"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model/curve"
)

// Overlap is by how much neighbouring tiles show the same, in millimetres.
const Overlap = 12.0

// Room at the edges of a page, in millimetres: what printers leave white, and
// the line at the foot.
const (
	margin = 8.0
	foot   = 7.0
)

// sheet is a page's size in millimetres.
type sheet struct{ wide, high float64 }

func (p Paper) upright() sheet  { return sheet{p.Wide, p.High} }
func (p Paper) sideways() sheet { return sheet{p.High, p.Wide} }

// room is what may be drawn on.
func (s sheet) room() (wide, high float64) {
	return s.wide - 2*margin, s.high - 2*margin - foot
}

// grid is how a board that no page holds is spread over tiles. The board's own
// millimetres run from its top left; tile row r, column c shows the board from c
// and r steps onward.
type grid struct {
	board        *board
	sheet        sheet
	rows, cols   int
	stepX, stepY float64
	left, top    float64 // white before the board, for it lies in the middle
	need         [][]bool
}

// spread lays a board on as few tiles as may be: on sheets upright or sideways,
// in the middle of the tiles or nearer to a side.
func spread(b *board, p Paper) *grid {
	var best *grid
	least := 0
	shares := []float64{0.5, 0, 0.25, 0.75, 1}
	for _, s := range []sheet{p.upright(), p.sideways()} {
		for _, down := range shares {
			for _, along := range shares {
				g := gridOf(b, s, along, down)
				if n := g.count(); best == nil || n < least {
					best, least = g, n
				}
			}
		}
	}
	return best
}

// gridOf lays a board on sheets. Of the white that is left over, a share comes
// before the board, from the left and from the top.
func gridOf(b *board, s sheet, along, down float64) *grid {
	wide, high := s.room()
	g := &grid{board: b, sheet: s, stepX: wide - Overlap, stepY: high - Overlap}
	g.cols = max(int(math.Ceil((b.wide-Overlap)/g.stepX)), 1)
	g.rows = max(int(math.Ceil((b.high-Overlap)/g.stepY)), 1)
	g.left = (float64(g.cols)*g.stepX + Overlap - b.wide) * along
	g.top = (float64(g.rows)*g.stepY + Overlap - b.high) * down
	g.need = make([][]bool, g.rows)
	for r := range g.need {
		g.need[r] = make([]bool, g.cols)
	}
	b.inked(g.touch)
	g.cloth()
	return g
}

// touch notes that something is drawn at a place on the board.
func (g *grid) touch(p curve.Point) {
	cell := func(v, step float64, n int) int { return min(max(int(math.Floor((v-Overlap/2)/step)), 0), n-1) }
	g.need[cell(p.Y+g.top, g.stepY, g.rows)][cell(p.X+g.left, g.stepX, g.cols)] = true
}

// cloth keeps the tiles that lie wholly within a piece, for they are wanted
// where the paper is cut out.
func (g *grid) cloth() {
	for r := range g.need {
		for c := range g.need[r] {
			if g.need[r][c] {
				continue
			}
			middle := curve.Point{
				X: (float64(c)+0.5)*g.stepX + Overlap/2 - g.left,
				Y: (float64(r)+0.5)*g.stepY + Overlap/2 - g.top,
			}
			g.need[r][c] = g.board.covers(middle)
		}
	}
}

func (g *grid) count() int {
	n := 0
	for _, row := range g.need {
		for _, need := range row {
			if need {
				n++
			}
		}
	}
	return n
}

func (g *grid) has(r, c int) bool {
	return r >= 0 && r < g.rows && c >= 0 && c < g.cols && g.need[r][c]
}

// first tells whether a tile is the first that is printed.
func (g *grid) first(r, c int) bool {
	for row := range g.need {
		for col, need := range g.need[row] {
			if need {
				return row == r && col == c
			}
		}
	}
	return false
}

// tileName names a tile by its row's letter and its column's number.
func tileName(r, c int) string {
	name := ""
	for r++; r > 0; r = (r - 1) / 26 {
		name = string(rune('A'+(r-1)%26)) + name
	}
	return name + decimal(c+1)
}

// outlines are the lines about a panel's pieces, as points close enough together
// to tell which tiles they run through.
func outlines(p *drawing.Panel) map[string][][]curve.Point {
	out := map[string][][]curve.Point{}
	for _, m := range p.Marks {
		if m.Line == nil || (m.Kind != drawing.StitchLine && m.Kind != drawing.FoldLine) {
			continue
		}
		piece := m.Subject
		if parts := strings.Split(piece, "."); len(parts) > 2 {
			piece = strings.Join(parts[:2], ".")
		}
		out[piece] = append(out[piece], points(m.Line))
	}
	return out
}

// points are places along a line, a few millimetres apart.
func points(p *curve.Path) []curve.Point {
	const step = 4.0
	n := max(int(math.Ceil(p.Length()/step)), 1)
	out := make([]curve.Point, 0, n+1)
	for i := range n + 1 {
		out = append(out, p.At(p.Length()*float64(i)/float64(n)))
	}
	return out
}

// within tells whether a place lies within lines that go round, by how often
// they are crossed to the right and below; one of the two is enough, for lines
// may stand open at a dart.
func within(lines [][]curve.Point, q curve.Point) bool {
	right, below := false, false
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			a, b := line[i-1], line[i]
			if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				right = !right
			}
			if (a.X > q.X) != (b.X > q.X) && q.Y < a.Y+(q.X-a.X)/(b.X-a.X)*(b.Y-a.Y) {
				below = !below
			}
		}
	}
	return right || below
}
