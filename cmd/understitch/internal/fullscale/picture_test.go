package fullscale

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// picture is a page in grey, 0 black to 255 white.
type picture struct {
	wide, high int
	grey       []byte
	dpi        float64
}

func (p *picture) at(x, y int) byte { return p.grey[y*p.wide+x] }

func (p *picture) mm(px float64) float64 { return px * 25.4 / p.dpi }

// taken is a picture of part of a page, from its top left; all of it where the
// size is 0.
func taken(t *testing.T, file string, page int, dpi float64, wide, high float64) *picture {
	t.Helper()
	to := filepath.Join(t.TempDir(), "page")
	px := func(mm float64) string { return fmt.Sprint(int(mm / 25.4 * dpi)) }
	args := []string{"-gray", "-r", fmt.Sprint(dpi), "-f", fmt.Sprint(page), "-singlefile"}
	if wide > 0 {
		args = append(args, "-x", "0", "-y", "0", "-W", px(wide), "-H", px(high))
	}
	poppler(t, "pdftoppm", append(args, file, to)...)
	raw, err := os.ReadFile(to + ".pgm")
	require.NoError(t, err)
	p := &picture{dpi: dpi}
	var most int
	_, err = fmt.Fscanf(bytes.NewReader(raw), "P5\n%d %d\n%d\n", &p.wide, &p.high, &most)
	require.NoError(t, err)
	p.grey = raw[len(raw)-p.wide*p.high:]
	return p
}

// upright finds the straight lines of ink that run down a page for at least so
// many millimetres: where their middle lies across, and from where to where
// they run.
type stroke struct{ across, from, to float64 }

func (p *picture) upright(least float64) []stroke {
	return p.strokes(p.wide, p.high, func(a, d int) byte { return p.at(a, d) }, least)
}

func (p *picture) level(least float64) []stroke {
	return p.strokes(p.high, p.wide, func(a, d int) byte { return p.at(d, a) }, least)
}

func (p *picture) strokes(across, along int, at func(a, d int) byte, least float64) []stroke {
	const ink = 200
	type growing struct {
		stroke
		weight float64
		last   int
	}
	var list []*growing
	add := func(a, from, to int) {
		dark := 0.0
		for i := from; i < to; i++ {
			dark += float64(255-at(a, i)) / float64(to-from)
		}
		one := stroke{p.mm(float64(a) + 0.5), p.mm(float64(from)), p.mm(float64(to))}
		for _, g := range list {
			if g.last == a-1 && g.from < one.to && one.from < g.to {
				g.across = (g.across*g.weight + one.across*dark) / (g.weight + dark)
				g.weight, g.last = g.weight+dark, a
				g.from, g.to = min(g.from, one.from), max(g.to, one.to)
				return
			}
		}
		list = append(list, &growing{one, dark, a})
	}
	for a := range across {
		run := 0
		for d := 0; d <= along; d++ {
			if d < along && at(a, d) < ink {
				run++
				continue
			}
			if p.mm(float64(run)) >= least {
				add(a, d-run, d)
			}
			run = 0
		}
	}
	var out []stroke
	for _, g := range list {
		out = append(out, g.stroke)
	}
	return out
}

// about is the darkest and the lightest of a dot and those beside it.
func (p *picture) about(x, y int) (darkest, lightest int) {
	darkest = 255
	for _, dy := range []int{-1, 0, 1} {
		for _, dx := range []int{-1, 0, 1} {
			v := int(p.at(x+dx, y+dy))
			darkest, lightest = min(darkest, v), max(lightest, v)
		}
	}
	return darkest, lightest
}
