package docs_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every word of the language, taken from the tables that the reader goes by, is
// mentioned in the reference as code.
func TestEveryWordIsInTheReference(t *testing.T) {
	src, err := os.ReadFile("spec-language.md")
	require.NoError(t, err)
	known := slices.Concat(wordsOf(t, "words.go", "Shape"), wordsOf(t, "words.go", "bodyMeasures"), wordsOf(t, "functions.go", "functions"))
	for _, w := range []string{"garment", "base_size", "piece", "up_to", "other_tape", "graded", "require", "waist_girth"} {
		require.Contains(t, known, w, "the tables of words were not found")
	}
	explained := map[string]bool{}
	for _, span := range codeSpans(string(src)) {
		for _, w := range word.FindAllString(span, -1) {
			explained[w] = true
		}
	}
	lost := slices.DeleteFunc(known, func(w string) bool { return explained[w] })
	require.Empty(t, lost, "words that spec-language.md does not explain")
}

var word = regexp.MustCompile(`[a-z][a-z0-9_]*`)

// codeSpans are the stretches between backticks of a page's running text,
// fenced blocks left out.
func codeSpans(page string) []string {
	var out []string
	fenced := false
	for line := range strings.Lines(page) {
		if strings.HasPrefix(line, "```") {
			fenced = !fenced
		}
		if fenced {
			continue
		}
		for i, span := range strings.Split(line, "`") {
			if i%2 == 1 {
				out = append(out, span)
			}
		}
	}
	return out
}

// wordsOf collects the quoted words in the variables of a file of package spec
// whose names end as given.
func wordsOf(t *testing.T, file, ending string) []string {
	t.Helper()
	parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", "model", "spec", file), nil, 0)
	require.NoError(t, err)
	var out []string
	for _, d := range parsed.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.VAR {
			continue
		}
		for _, s := range g.Specs {
			v := s.(*ast.ValueSpec)
			if !strings.HasSuffix(v.Names[0].Name, ending) {
				continue
			}
			ast.Inspect(v, func(n ast.Node) bool {
				if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
					w, err := strconv.Unquote(l.Value)
					require.NoError(t, err)
					out = append(out, w)
				}
				return true
			})
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
