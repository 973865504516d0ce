package spec

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"understitch/model"
)

// The same garment written in another unit is the same garment.
func TestUnitDoesNotChangeTheModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figures := rapid.SliceOfN(rapid.Float64Range(1, 900), 16, 16).Draw(t, "figures")
		var built []*model.Garment
		for _, unit := range []model.Unit{model.Millimetre, model.Centimetre, model.Inch} {
			d, diags := Read("x", []byte(inUnit(unit, figures)), nil)
			if d == nil {
				t.Fatalf("in %s: %s", unit.Name, told(diags))
			}
			g, diags := d.Garment("")
			if g == nil {
				t.Fatalf("in %s: %s", unit.Name, told(diags))
			}
			built = append(built, g)
		}
		want := lengthsOf(built[0])
		for _, g := range built[1:] {
			for i, v := range lengthsOf(g) {
				if math.Abs(v-want[i]) > 1e-9*(1+math.Abs(want[i])) {
					t.Fatalf("in %s figure %d is %v, in mm %v", g.Unit.Name, i, v, want[i])
				}
			}
		}
	})
}

// inUnit writes a garment whose figures are given in millimetres.
func inUnit(u model.Unit, mm []float64) string {
	n := 0
	next := func() string {
		v := strconv.FormatFloat(mm[n%len(mm)]/u.Millimetre, 'g', -1, 64)
		n++
		return v
	}
	return fmt.Sprintf(`garment "g" { unit = %q }
body { bust_girth = %s }
draft {
  quarter = body.bust_girth / 4 + %s
  sum     = draft.quarter * 2 - mm(3)
}
level "waist" {
  y    = %s
  body = draft.sum + 2 * abs(draft.sum) + %s
}
layer "l" {
  side = "outer"
  ease = { waist = [-%s, null] }
  piece "p" {
    allowance = %s
    points {
      a = [%s, -%s]
      b = [a.x + draft.quarter, a.y * 2]
    }
    edge "a" { smooth = [a, [0, 0], b] }
    edge "b" { path = "M 0 0 L %s %s q 3 4 %s 6" }
    edge "c" { length = %s }
    notch "n" {
      on    = a
      at    = %s
      depth = cm(0.4)
    }
  }
}
elastic "e" {
  edges  = l.p.c
  length = %s
  ratio  = 0.8
}
`, u.Name, next(), next(), next(), next(), next(), next(), next(), next(), next(), next(), next(), next(), next(), next())
}

// lengthsOf are the figures of such a garment. The path's last stretch has
// figures that do not scale, so only its first is looked at.
func lengthsOf(g *model.Garment) []float64 {
	p := g.Layers[0].Pieces[0]
	line := p.Edges[1].Path.Segments()[0]
	return []float64{
		g.Body["bust_girth"], g.Levels[0].Y, g.Levels[0].Body, g.Layers[0].Ease[0].Range.Low,
		p.Edges[0].Allowance.Width, p.Edges[0].Path.Length(), p.Edges[0].Path.Start().X, p.Edges[0].Path.End().Y,
		line.End().X, line.End().Y, p.Edges[2].PaperLength, p.Notches[0].At, p.Notches[0].Depth,
		g.Elastics[0].Length, g.Elastics[0].Ratio.Low,
	}
}

// Values that each need the next, to the longest chain that is allowed and
// beyond, and expressions as deep as the guard lets through.
func TestDeepButBounded(t *testing.T) {
	chain := func(n int, each string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "v%d = draft.v%d%s\n", i, i+1, each)
		}
		fmt.Fprintf(&b, "v%d = 1", n)
		return with("#draft", b.String())
	}
	deep := strings.Repeat(strings.Repeat("-", 250)+"(", 60) + "1" + strings.Repeat(")", 60)
	for _, c := range []struct{ name, src, want string }{
		{"a long chain", chain(maxChain-1, ""), ""},
		{"too long a chain", chain(maxChain+1, ""), "511:1 more than 500 values that each need the next"},
		{"deep", with("#draft", "x = "+strings.Repeat("-(", 60)+"1"+strings.Repeat(")", 60)), ""},
		{"too deep", with("#draft", "x = "+deep), "11:5005 this expression is too deep"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := told(everything(c.src, nil)); got != c.want {
				t.Fatalf("got %q, want %q", got, c.want)
			}
		})
	}
}

// Whatever the bytes are, reading ends, in a garment or in diagnostics that
// have a place in the file.
func FuzzRead(f *testing.F) {
	for _, file := range []string{"testdata/rink-dress.garment.hcl", "testdata/house.hcl"} {
		src, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(src)
	}
	cases, err := os.ReadFile("testdata/faults.txt")
	if err != nil {
		f.Fatal(err)
	}
	for _, c := range strings.Split(string(cases), "== ")[1:] {
		head, _, _ := strings.Cut(c, "\n-- said\n")
		_, rest, _ := strings.Cut(head, "\n-- ")
		mark, text, _ := strings.Cut(rest, "\n")
		f.Add([]byte(with(strings.TrimPrefix(mark, "file"), text)))
	}
	house, _ := LoadHouse("testdata/house.hcl")
	f.Fuzz(func(t *testing.T, src []byte) {
		d, diags := Read("x", src, house)
		check := func(diags []model.Diagnostic) {
			for _, d := range diags {
				if d.Place.End.Byte > len(src) && d.Place.File == "x" || d.Place.Start.Line < 1 || d.Summary == "" {
					t.Fatalf("a diagnostic without a place: %+v", d)
				}
			}
		}
		check(diags)
		if (d == nil) != model.Errors(diags) {
			t.Fatalf("a document is missing without an error, or there with one: %s", told(diags))
		}
		if d != nil {
			for _, size := range append(d.Sizes(), "") {
				g, diags := d.Garment(size)
				check(diags)
				if (g == nil) != model.Errors(diags) {
					t.Fatalf("a garment is missing without an error, or there with one: %s", told(diags))
				}
			}
		}
		_, diags = ReadHouse("x", src)
		check(diags)
	})
}
