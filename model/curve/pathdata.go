package curve

import (
	"math"
	"strconv"
	"strings"
)

// Data writes the path as path data, with up to digits digits after the
// point (−1 for as many as give back the very same numbers). Gaps become
// further M commands.
func (p *Path) Data(digits int) string {
	var b strings.Builder
	put := func(command string, n ...float64) {
		b.WriteString(command)
		for i, v := range n {
			if i > 0 {
				b.WriteByte(' ')
			}
			if digits >= 0 {
				e := math.Pow(10, float64(digits))
				if v = math.Round(v*e) / e; v == 0 {
					v = 0 // no "-0"
				}
			}
			b.WriteString(strconv.FormatFloat(v, 'f', -1, 64))
		}
	}
	at := p.Start()
	put("M", at.X, at.Y)
	for i := range p.segs {
		g := &p.segs[i]
		if g.a.Dist(at) > 1e-9 {
			put("M", g.a.X, g.a.Y)
		}
		at = g.d
		switch g.kind {
		case Straight:
			put("L", at.X, at.Y)
		case Bezier:
			put("C", g.b.X, g.b.Y, g.c.X, g.c.Y, at.X, at.Y)
		case Elliptic:
			rx, ry, rotation, large, sweep := g.Ellipse()
			put("A", rx, ry, rotation, bit(large), bit(sweep), at.X, at.Y)
		}
	}
	return b.String()
}

func bit(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
