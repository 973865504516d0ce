package builtin_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
)

// large are specs in which there is very much of one thing.
func large() map[string]func(n int) string {
	outline := func(top string) string {
		return fmt.Sprintf(`    allowance = 1
    edge "top" { line = [%s] }
    edge "side" { line = [[40, 0], [40, 60]] }
    edge "hem" { line = [[40, 60], [0, 60]] }
    edge "centre" { line = [[0, 60], [0, 0]] }
`, top)
	}
	garment := func(pieces, rest string) string {
		return fmt.Sprintf("garment \"g\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n%s}\n%s", pieces, rest)
	}
	piece := func(name, inside string) string { return fmt.Sprintf("  piece %q {\n%s  }\n", name, inside) }
	const straight = "[0, 0], [40, 0]"
	return map[string]func(n int) string{
		"points": func(n int) string {
			points := make([]string, n)
			for i := range points {
				at := float64(i) / float64(n-1)
				points[i] = fmt.Sprintf("[%.6f, %.6f]", 40*at, 1.5*math.Sin(40*math.Pi*at))
			}
			points[0], points[n-1] = "[0, 0]", "[40, 0]"
			return garment(piece("front", outline(strings.Join(points, ", "))), "")
		},
		"pieces": func(n int) string {
			var pieces, seams strings.Builder
			for i := range n {
				pieces.WriteString(piece(fmt.Sprintf("p%d", i), outline(straight)))
				fmt.Fprintf(&seams, "seam \"s%d\" { join = [shell.p%d.side, shell.p%d.centre] }\n", i, i, (i+1)%n)
			}
			return garment(pieces.String(), seams.String())
		},
		"notches": func(n int) string {
			var notches strings.Builder
			for i := range n {
				fmt.Fprintf(&notches, "notch \"n%d\" {\non = side\nat = %g\n}\n", i, 60*float64(i+1)/float64(n+1))
			}
			return garment(piece("front", outline(straight)+notches.String()), "")
		},
	}
}

// BenchmarkGrowth reads, builds and judges garments of ever more points, pieces
// with seams, and notches on one edge.
func BenchmarkGrowth(b *testing.B) {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		b.Fatal(err)
	}
	specs := large()
	for _, of := range []struct {
		what   string
		counts []int
	}{{"points", []int{1000, 4000, 16_000, 60_000}}, {"pieces", []int{30, 100, 300}}, {"notches", []int{30, 100, 300}}} {
		for _, n := range of.counts {
			b.Run(fmt.Sprintf("%s/%d", of.what, n), func(b *testing.B) {
				src := []byte(specs[of.what](n))
				for b.Loop() {
					doc, diags := spec.Read("g.garment.hcl", src, nil)
					if model.Errors(diags) {
						b.Fatal(diags)
					}
					settings, _ := engine.Settings(nil)
					engine.Check(garment(b, doc), settings)
				}
			})
		}
	}
}
