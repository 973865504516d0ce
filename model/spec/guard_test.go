package spec

import (
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What would overflow the parser's stack, or keep it busy, is refused with one
// diagnostic at the place.
func TestGuardRefuses(t *testing.T) {
	const n = 300_000
	many := func(s string) string { return strings.Repeat(s, n) }
	for _, c := range []struct {
		name, src, summary string
		line, column       int
	}{
		{"brackets", "x = " + many("["), "brackets are nested more than 64 deep", 1, 69},
		{"round brackets", "x = " + many("("), "brackets are nested more than 64 deep", 1, 69},
		{"closed brackets", "x = " + many("[") + many("]"), "brackets are nested more than 64 deep", 1, 69},
		{"minus signs", "x = " + many("-") + "1", "more than 256 operators in one expression", 1, 260},
		{"exclamation marks", "x = " + many("!") + "1", "more than 256 operators in one expression", 1, 260},
		{"conditions", "x = " + many("a ? b : ") + "1", "more than 256 operators in one expression", 1, 1027},
		{"conditions over lines in brackets", "x = (" + many("a ?\nb :\n") + "1)", "more than 256 operators in one expression", 257, 3},
		{"sums in brackets", "x = 1" + many("+(1)"), "more than 256 operators in one expression", 1, 1026},
		{"splats", "x = a" + many("[*]"), "* is not used like this in specs", 1, 7},
		{"text in text", "x = " + many(`"${`), "brackets are nested more than 64 deep", 1, 101},
		{"blocks", many("a {\n"), "brackets are nested more than 64 deep", 65, 3},
		{"heredocs", many("<<A\n${"), "brackets are nested more than 64 deep", 33, 3},
		{"directives", "x = \"" + many("%{if a}"), "directives in text are not used in specs", 1, 6},
		{"exponent", "x = 1e999999999", "this number is out of all measure", 1, 5},
		{"exponent below nothing", "x = 1E-999999999", "this number is out of all measure", 1, 5},
		{"digits", "x = " + many("9"), "a number of more than 40 digits", 1, 5},
		{"digits behind the point", "x = 0." + many("9"), "a number of more than 40 digits", 1, 5},
		{"zero byte", "x = 1\n\x00", "the file holds a zero byte, so it is not plain text", 2, 1},
		{"not UTF-8", "# \xff\n", "the file is not plain text in UTF-8", 1, 3},
		{"too large", strings.Repeat("#\n", maxBytes), "the file is larger than 4 MB", 1, 1},
		{"loop", "x = [for a in b : a]", "for is not used in specs", 1, 6},
		{"loop in a map", "x = {\n for a, b in c : a => b }", "for is not used in specs", 2, 2},
		{"quoted text runs on", "x = \"a\ny = 2\n", "the quoted text that begins here is not closed", 1, 5},
		{"quoted text at the end", "x = \"a", "the quoted text that begins here is not closed", 1, 5},
		{"heredoc runs on", "x = <<END\nM 0 0\n", "the text that begins here is not closed", 1, 5},
		{"comment runs on", "x = 1\n/* y\n", "the comment that begins here is not closed", 2, 1},
		{"square bracket", "x = [1, 2\ny = 3\n", "the bracket [ is not closed", 1, 5},
		{"wrong bracket", "a {\n x = [1, 2\n}\n", "the bracket [ is not closed", 2, 6},
		{"brace", "layer \"shell\" {\n  side = \"outer\"\n", "the block layer \"shell\" opened on line 1 has no closing brace before the end of the file", 1, 1},
		{"inner brace", "layer \"a\" {\n  piece \"b\" {\n    cut = 1\n}\nlayer \"c\" {\n}\n", "the block piece \"b\" opened on line 2 has no closing brace before the } on line 4", 2, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := guard("x", []byte(c.src), garmentShape)
			require.NotNil(t, f)
			require.Equal(t, c.summary, f.summary)
			require.Equal(t, [2]int{c.line, c.column}, [2]int{f.at.Start.Line, f.at.Start.Column})
			_, diags := Read("x", []byte(c.src), nil)
			require.Len(t, diags, 1)
		})
	}
}

// What only looks like too much passes.
func TestGuardPasses(t *testing.T) {
	for name, src := range map[string]string{
		"brackets in text":      "x = \"" + strings.Repeat("[{(", 100) + "\"\n",
		"brackets in comments":  "# " + strings.Repeat("[{(", 100) + "\n// {\n/* [\n( */",
		"a list of minus signs": "x = [" + strings.Repeat("-1, ", 5000) + "1]\n",
		"a line each":           strings.Repeat("x = 1 - 2\n", 5000),
		"quotes in text":        `x = "say \"[\" \\"` + "\n",
		"heredoc":               "x = <<-END\n  {[( \"\n  END\ny = 2\n",
		"escaped template":      `x = "$${ [ %%{ ["` + "\n",
		"dollar":                `x = "100 $"` + "\n",
		"byte order mark":       "\ufeffx = 1\n",
		"line ends of two":      "x = [\r\n1]\r\ny = <<A\r\n[\r\nA\r\n",
		"hyphens in names":      "x = tape.snap-19\n",
	} {
		t.Run(name, func(t *testing.T) { require.Nil(t, guard("x", []byte(src), garmentShape)) })
	}
}

// A house's rules may go over lists; nothing else about the guard changes.
func TestGuardOfHouses(t *testing.T) {
	require.Nil(t, guard("x", []byte("x = sum([for a in b : a.c])\n"), houseShape))
	require.NotNil(t, guard("x", []byte(strings.Repeat("[for a in ", maxNesting+1)), houseShape))
}

// deepest is how far brackets, text and templates nest for the parser, taken
// from its own tokens.
func deepest(src string) int {
	tokens, _ := hclsyntax.LexConfig([]byte(src), "x", hcl.InitialPos)
	depth, most := 0, 0
	for _, t := range tokens {
		switch t.Type {
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenOQuote,
			hclsyntax.TokenOHeredoc, hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
			depth++
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenCQuote,
			hclsyntax.TokenCHeredoc, hclsyntax.TokenTemplateSeqEnd:
			depth = max(0, depth-1)
		}
		most = max(most, depth)
	}
	return most
}

// The guard reads bytes and the parser tokens. On odd text the two must not
// see different things: where the guard passes, it has seen all the nesting
// that the parser will see. A run of one bracket in the middle shows it, as
// either both see it or neither does.
func TestGuardSeesWhatTheParserSees(t *testing.T) {
	parts := []string{
		`"`, `\`, `$`, `%`, `{`, `}`, `${`, `$${`, `%{`, "\n", "\r\n", "<<A\n", "<<-A\n", "<<--A\n", "<<1\n", "<<“\n", "\nA\n", "\n-A\n", "\n1\n", "\n“\n", "A", "#", "//", "/*", "*/",
		"[", "]", "(", ")", " ", "x", "é", "“", "1", "-", "<", "~}", "'", "\t", "=", ",", "\r",
	}
	rapid.Check(t, func(t *rapid.T) {
		gen := rapid.SliceOfN(rapid.SampledFrom(parts), 0, 14)
		src := strings.Join(gen.Draw(t, "before"), "") + strings.Repeat("[", 200) + strings.Join(gen.Draw(t, "after"), "") +
			strings.Repeat("]", 200) + strings.Join(gen.Draw(t, "last"), "")
		if guard("x", []byte(src), garmentShape) == nil && deepest(src) > maxNesting {
			t.Fatalf("the guard passes %q, which nests %d deep", src, deepest(src))
		}
	})
}
