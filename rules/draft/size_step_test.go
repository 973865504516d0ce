package draft_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/draft"
	"understitch/rules/ruletest"
)

func TestSizeStep(t *testing.T) {
	// A seam as long as its sizes say, and a body measure of theirs.
	measured := func(i int, m string) string {
		m, fault, _ := strings.Cut(m, "#")
		if fault != "" {
			fault = " #" + fault
		}
		return fmt.Sprintf("size \"s%d\" { bust_girth = %s }%s", i, m, fault)
	}
	spec := func(measures []string, seam, head, join string) string {
		var names, blocks []string
		for i, m := range measures {
			names = append(names, fmt.Sprintf("\"s%d\"", i))
			blocks = append(blocks, measured(i, m))
		}
		return `garment "trial" {` + head + `
  unit  = "cm"
  sizes = [` + strings.Join(names, ", ") + `]
}
` + strings.Join(blocks, "\n") + `
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = ` + seam + ` }
  }
  piece "back" {
    edge "side" { length = 40 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }` + join + "\n"
	}
	for _, c := range []struct {
		name                      string
		measures                  []string
		seam, head, join, message string
		passed                    int
	}{
		{"steady", []string{"84", "88", "92", "96"}, "body.bust_girth / 2", "", "", "", 3},
		{"one out of step, and what follows from it", []string{"84", "88", "95 # fault size-step note 30mm", "96", "100"}, "body.bust_girth / 2", "", "",
			"body.bust_girth is 95 cm in size s2 and falls out of step between 88 cm in size s1 and 96 cm in size s3: its neighbours suggest 92 cm, which is 3 cm off. Look the figure up.", 1},
		{"published grades, ASTM D5585-11e1", []string{"inch(34 + 1/8)", "inch(35 + 1/4)", "inch(36 + 1/4)", "inch(37 + 1/4)", "inch(38 + 3/4)", "inch(40 + 3/8)"}, "body.bust_girth / 2", "", "", "", 3},
		{"a length out of step by itself", []string{"84", "88", "92", "96", "100"}, "body.bust_girth == 92 ? 50 : body.bust_girth / 2", "", " # fault size-step note 40mm",
			"shell.front.side is 50 cm in size s2", 2},
		{"three sizes", []string{"84", "88", "92"}, "40", "", "", "", 1},
		{"two sizes", []string{"84", "120"}, "40", "", "", "", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := ruletest.Spec(t, &draft.SizeStep, spec(c.measures, c.seam, c.head, c.join))
			require.Empty(t, r.Result.NotPossible)
			require.Equal(t, c.passed, r.Result.Passed)
			if c.message != "" {
				require.Contains(t, r.Result.Findings[0].Message, c.message)
				require.Equal(t, []string{"s2"}, r.Result.Findings[0].Sizes)
			}
		})
	}
}

// A table of two girths and a length over three sizes or more.
func TestSizeTable(t *testing.T) {
	for _, c := range []struct {
		name, sizes      string
		bust, waist, leg []float64
		want             string // severity, size, and what is said of it; "" where nothing is
	}{
		{"steady", "36 38 40", []float64{84, 88, 92}, []float64{66, 70, 74}, []float64{79, 78.5, 78}, ""},
		{"goes back", "36 38 40", []float64{84, 88, 92}, []float64{66, 70, 47}, []float64{79, 79, 79}, "error 40 body.waist_girth is 47 cm in size 40 and goes back where most measures grow"},
		{"the first is too large", "36 38 40", []float64{84, 88, 92}, []float64{76, 70, 74}, []float64{79, 79, 79}, "error 36 body.waist_girth is 76 cm in size 36 and goes back"},
		{"the middle is odd", "36 38 40", []float64{84, 88, 92}, []float64{66, 72, 74}, []float64{79, 79, 79}, "note 38 body.waist_girth is 72 cm in size 38 and falls out of step"},
		{"by five steps", "36 38 40", []float64{84, 88, 92}, []float64{66, 70, 94}, []float64{79, 79, 79}, "warning 40 body.waist_girth is 94 cm in size 40 and falls out of step"},
		{"all step so", "36 38 40", []float64{84, 88, 98}, []float64{66, 70, 80}, []float64{79, 79, 79}, ""},
		{"a length without others", "36 38 40", []float64{84, 88, 92}, []float64{66, 70, 74}, []float64{78, 79, 89}, "warning 40 body.inside_leg is 89 cm in size 40"},
		{"out of order", "S L M", []float64{84, 92, 88}, []float64{66, 74, 70}, []float64{79, 79, 79}, "warning  the sizes are listed as S, L, M, and every measure of their bodies grows in the order S, M, L."},
		{"exchanged", "36 38 40", []float64{84, 92, 88}, []float64{66, 74, 70}, []float64{79, 79, 79}, "error  the bodies of the sizes 36, 38, 40 grow in the order 36, 40, 38: some of them look exchanged."},
		{"from the largest", "40 38 36", []float64{92, 88, 84}, []float64{74, 70, 66}, []float64{79, 79, 79}, ""},
		{"five sizes, one far off", "1 2 3 4 5", []float64{84, 88, 92, 96, 100}, []float64{66, 70, 94, 78, 82}, []float64{79, 79, 79, 79, 79}, "error 3 body.waist_girth is 94 cm in size 3"},
	} {
		t.Run(c.name, func(t *testing.T) {
			names := strings.Fields(c.sizes)
			src := "garment \"trial\" {\n  unit = \"cm\"\n  sizes = [\"" + strings.Join(names, "\", \"") + "\"]\n}\n"
			for i, n := range names {
				src += fmt.Sprintf("size %q {\n  bust_girth = %v\n  waist_girth = %v\n  inside_leg = %v\n}\n", n, c.bust[i], c.waist[i], c.leg[i])
			}
			src += "layer \"shell\" {\n  side = \"outer\"\n  piece \"front\" {\n    edge \"side\" { length = 40 }\n  }\n}\n"
			engine, err := rules.New([]*rules.Rule{&draft.SizeStep})
			require.NoError(t, err)
			findings := ruletest.Found(t, engine, "", src)
			if c.want == "" {
				require.Empty(t, findings)
				return
			}
			require.Len(t, findings, 1)
			f := findings[0]
			size := strings.Join(f.Sizes, " ")
			if f.Key == "order" {
				size = ""
			} else {
				require.Equal(t, 7+5*index(names, size), f.Place.Start.Line-map[string]int{"body.bust_girth": -1, "body.waist_girth": 0, "body.inside_leg": 1}[f.Key])
			}
			require.Contains(t, f.Severity.String()+" "+size+" "+f.Message, c.want)
		})
	}
}

func index(names []string, name string) int {
	for i, n := range names {
		if n == name {
			return i
		}
	}
	return -1
}
