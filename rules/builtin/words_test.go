package builtin

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

// foreign are words of programmers and of mathematics, beyond what a tape measure,
// a protractor and a set square ask for. No cutter need know them: a rule says it
// in the words of the trade.
var foreign = regexp.MustCompile(`(?i)\b(` + strings.Join([]string{
	"polygons?", "vectors?", "floats?", "arrays?", "null", "nil", "entit(y|ies)", "offsets?", "booleans?", "pars(e|er|ed|ing)", "invalid",
	"algorithms?", "comput(e|es|ed|ing|ation)", "parameters?", "coordinates?", "ind(ex|ices)", "nodes?", "strings?", "integers?", "objects?",
	"instances?", "attributes?", "syntax", "default value", "boundar(y|ies)", "intervals?", "iterat(e|es|ed|ion)",
	"chords?", "tangents?", "normals?", "curvature", "derivatives?", "regressions?", "residuals?", "deviations?", "least squares",
	"tolerance band", "walk length", "second differences?", "transform(s|ed|ation)?", "rigid", "π", "proven bound", "bookkeeping", "negative",
}, "|") + `)\b|π`)

// american are spellings that are not those of the house.
var american = regexp.MustCompile(`(?i)\b(center|color|gray|labeled|measurement tape|meters?|millimeters?|centimeters?)\b`)

func sound(t *testing.T, where, text string) {
	t.Helper()
	require.Empty(t, foreign.FindAllString(text, -1), "%s: %s", where, text)
	require.Empty(t, american.FindAllString(text, -1), "%s: %s", where, text)
}

// The two lists find what they are for, and leave the trade's own words alone.
func TestForeignWords(t *testing.T) {
	for _, text := range []string{"the outline polygon", "an Offset curve", "2π times", "as a proven bound", "parsed", "the boundaries", "null"} {
		require.Regexp(t, foreign, text)
	}
	require.Regexp(t, american, "the center front")
	for _, text := range []string{"set in by its allowance", "a normalised hem", "the centre front", "colour", "a parallel line"} {
		require.NotRegexp(t, american, text)
		require.NotRegexp(t, foreign, text)
	}
}

// The documentation of every rule speaks to cutters, in sentences that can be
// taken in at one reading, and its title is one that fits a list.
func TestDocsSpeakToCutters(t *testing.T) {
	const longest = 40 // words
	for _, r := range Rules() {
		t.Run(r.Name, func(t *testing.T) {
			for _, part := range []struct{ name, text string }{
				{"title", r.Doc.Title}, {"why", r.Doc.Why}, {"how", r.Doc.How}, {"fix", r.Doc.Fix}, {"why it cannot be waived", r.Firm},
			} {
				sound(t, part.name, part.text)
				for _, sentence := range regexp.MustCompile(`[.;:] `).Split(part.text, -1) {
					require.LessOrEqual(t, len(strings.Fields(sentence)), longest, "%s: %s", part.name, sentence)
				}
			}
			require.False(t, strings.HasSuffix(r.Doc.Title, "."), "a title is no sentence")
			for _, text := range []string{r.Doc.Why, r.Doc.How, r.Doc.Fix} {
				require.True(t, strings.HasSuffix(text, "."), text)
			}
			for _, l := range r.Limits {
				sound(t, "limit "+l.Name, l.Text)
			}
		})
	}
}

// Whatever the rules' own code says, and the reasons for which the model has no
// figure, is in the words of the trade: every text in the sources but names of
// things that nobody reads.
func TestMessagesSpeakToCutters(t *testing.T) {
	folders := map[string]bool{filepath.Join("..", "..", "model"): true}
	for _, r := range Rules() {
		folder := r.Family
		if folder == "body" {
			folder = "fit" // model/body is another thing
		}
		folders[filepath.Join("..", folder)] = true
	}
	read := 0
	for folder := range folders {
		files, err := os.ReadDir(folder)
		require.NoError(t, err)
		for _, f := range files {
			if name := f.Name(); strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") {
				read += textsOf(t, filepath.Join(folder, name))
			}
		}
	}
	require.Greater(t, read, 300, "the texts were not found")
}

// textsOf holds each text of a source file that has more than one word.
func textsOf(t *testing.T, path string) (read int) {
	t.Helper()
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
	require.NoError(t, err)
	ast.Inspect(parsed, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.KeyValueExpr:
			key, ok := n.Key.(*ast.Ident)
			return !ok || key.Name != "Source" // titles of books are as they are
		case *ast.BasicLit:
			if n.Kind != token.STRING {
				return true
			}
			text, err := strconv.Unquote(n.Value)
			require.NoError(t, err)
			if strings.Contains(text, " ") {
				sound(t, files.Position(n.Pos()).String(), text)
				read++
			}
		}
		return true
	})
	return read
}

// Every default is accounted for: by a source, or by saying that there is none.
func TestEveryLimitHasASource(t *testing.T) {
	var without []string
	for _, r := range Rules() {
		for _, l := range r.Limits {
			if len(strings.Fields(l.Source)) < 2 {
				without = append(without, r.Name+" "+l.Name)
			}
		}
	}
	require.Empty(t, without, "limits that do not say where their default comes from")
	_, err := rules.New([]*rules.Rule{unsourced()})
	require.ErrorContains(t, err, "source")
}

// unsourced is a rule that is sound but for a limit without a source.
func unsourced() *rules.Rule {
	r := *Rules()[0]
	r.Limits = []rules.Limit{{Name: "most", Value: 1, Unit: rules.Millimetres, Text: "how far"}}
	return &r
}
