// Package docs_test keeps the examples of the documentation alive: whatever
// stands in a block marked as hcl is read by the program itself.
//
// The first line of a block tells what it is:
//
//	# file: NAME.garment.hcl      a whole garment, built in all its sizes
//	# file: house.hcl             a house file; it holds for the garments that follow on the page
//	# in a garment                some blocks of a garment; likewise in a layer, in a piece, in a house
//	# refused in a garment: TEXT  the same, which must be refused with that text
//
// A snippet is put into a small garment that gives it the layers, pieces, edges
// and levels that it does not state itself.
package docs_test

import (
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// example is one block of a page.
type example struct {
	page string
	line int // where its text begins
	text string
}

var fence = regexp.MustCompile("(?ms)^```hcl\n(.*?)^```$")

// examples are the hcl blocks of a page, in order.
func examples(t *testing.T, page string) []example {
	t.Helper()
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	var out []example
	for _, at := range fence.FindAllSubmatchIndex(src, -1) {
		out = append(out, example{page, 1 + strings.Count(string(src[:at[2]]), "\n"), string(src[at[2]:at[3]])})
	}
	return out
}

func pages(t *testing.T) []string {
	t.Helper()
	list, err := filepath.Glob("*.md")
	require.NoError(t, err)
	require.NotEmpty(t, list)
	return list
}

var (
	fileMark    = regexp.MustCompile(`^# file: (\S+)\n`)
	snippetMark = regexp.MustCompile(`^# (?:(refused) )?in a (garment|layer|piece|house)(?:: (.+))?\n`)
)

func TestExamples(t *testing.T) {
	for _, page := range pages(t) {
		var house *spec.House
		for _, x := range examples(t, page) {
			t.Run(fmt.Sprintf("%s:%d", x.page, x.line), func(t *testing.T) {
				if m := fileMark.FindStringSubmatch(x.text); m != nil {
					if m[1] == spec.HouseFile {
						house = readHouse(t, m[1], x.text)
						return
					}
					require.True(t, strings.HasSuffix(m[1], ".garment.hcl"), "a garment's file is called NAME.garment.hcl")
					buildAll(t, m[1], x.text, house)
					return
				}
				m := snippetMark.FindStringSubmatch(x.text)
				require.NotNil(t, m, "the first line does not say what the example is")
				if m[1] == "" {
					require.Empty(t, m[3])
					if m[2] == "house" {
						readHouse(t, "house.hcl", framed(t, m[2], x.text))
						return
					}
					buildAll(t, "snippet.garment.hcl", framed(t, m[2], x.text), frameHouse(t))
					return
				}
				require.Equal(t, m[3], refusal(t, m[2], framed(t, m[2], x.text)))
			})
		}
	}
}

func readHouse(t *testing.T, name, src string) *spec.House {
	t.Helper()
	h, diags := spec.ReadHouse(name, []byte(src))
	require.Empty(t, diags, src)
	return h
}

// buildAll reads a garment and builds it in every size.
func buildAll(t *testing.T, name, src string, h *spec.House) []*model.Garment {
	t.Helper()
	doc, diags := spec.Read(name, []byte(src), h)
	require.Empty(t, diags, src)
	sizes := doc.Sizes()
	if len(sizes) == 0 {
		sizes = []string{""}
	}
	var out []*model.Garment
	for _, size := range sizes {
		g, diags := doc.Garment(size)
		require.Empty(t, diags, src)
		out = append(out, g)
	}
	return out
}

// refusal is what the first diagnostic says of a spec that must be refused.
func refusal(t *testing.T, kind, src string) string {
	t.Helper()
	if kind == "house" {
		_, diags := spec.ReadHouse("house.hcl", []byte(src))
		require.NotEmpty(t, diags)
		return diags[0].Summary
	}
	doc, diags := spec.Read("snippet.garment.hcl", []byte(src), frameHouse(t))
	if len(diags) == 0 {
		_, diags = doc.Garment("")
	}
	require.NotEmpty(t, diags, "this is not refused")
	return diags[0].Summary
}

// frameHouse is the house that snippets stand below.
func frameHouse(t *testing.T) *spec.House {
	return readHouse(t, "house.hcl", `
house "harbour-lane" { unit = "cm" }
size "38" { waist_girth = 70 }
size "40" { waist_girth = 74 }
`)
}

// part is a line or block of the frame, left out where the snippet states the
// same word and name itself, or does not speak of what it is for.
type part struct {
	word, name, text string
	spokenOf         string // the address under which snippets use it; "" for a part that is always there
}

func framed(t *testing.T, kind, snippet string) string {
	t.Helper()
	switch kind {
	case "house":
		return fill(t, snippet, part{word: "house", text: `house "harbour-lane" { unit = "cm" }`})
	case "piece":
		inside := fill(t, snippet, pieceFrame...)
		return framed(t, "layer", "piece \"front\" {\n"+inside+"\n}\n")
	case "layer":
		inside := fill(t, snippet,
			part{word: "side", text: `side = "outer"`},
			block("piece", "front", piece(t, "front")),
			block("piece", "back", piece(t, "back")))
		return framed(t, "garment", "layer \"shell\" {\n"+inside+"\n}\n")
	}
	body := part{word: "body", text: "body {\n" + frameBody + "\n}"}
	if strings.Contains(snippet, "graded(") || strings.Contains(snippet, "size \"") {
		body = block("size", "38", "size \"38\" {\n"+frameBody+"\n}")
	}
	return fill(t, snippet,
		part{word: "garment", text: `garment "example" { unit = "cm" }`},
		body,
		block("level", "bust", "level \"bust\" { y = 0 }"),
		block("level", "waist", "level \"waist\" {\n  y = 17.5\n  body = body.waist_girth\n}"),
		block("level", "hip", "level \"hip\" { y = 37 }"),
		block("fabric", "satin", "fabric \"satin\" { thickness = mm(0.4) }"),
		block("tape", "snap-19", frameTape),
		block("layer", "shell", layer(t, "shell", "outer")),
		block("layer", "brief", layer(t, "brief", "inner")),
		part{"layer", "skirt", layer(t, "skirt", "outer"), "skirt."},
		part{"closure", "gusset", frameGusset, "closure.gusset"},
		part{"share", "top", frameShare, "share.top"},
		part{"nest", "front", "nest \"front\" {\n outer = shell.front\n inner = brief.front\n}", "nest.front"},
	)
}

func block(word, name, text string) part { return part{word: word, name: name, text: text} }

const (
	frameBody = "bust_girth = 88\nwaist_girth = 70\nhip_girth = 96\ntotal_crotch_length = 66\nback_waist_length = 40"
	frameTape = `tape "snap-19" {
  kind         = "snap"
  pitch        = mm(19)
  head         = mm(9)
  clear        = mm(1.5)
  width_closed = [mm(24)]
}`
	frameGusset = `closure "gusset" {
  kind  = "tape"
  tape  = tape.snap-19
  edges = [brief.front.gusset, brief.back.gusset]
}`
	frameShare = `share "top" {
  outer = [shell.front.top, shell.back.top]
  inner = [brief.front.top, brief.back.top]
}`
)

// pieceFrame is a piece with the edges that the examples name.
var pieceFrame = []part{
	block("edge", "top", "edge \"top\" { line = [[0, -8], [22, 0]] }"),
	block("edge", "side", "edge \"side\" { line = [[22, 0], [20, 17.5], [22, 37]] }"),
	block("edge", "hem", "edge \"hem\" { line = [[22, 37], [10, 40]] }"),
	block("edge", "leg", "edge \"leg\" { line = [[10, 40], [4, 42]] }"),
	block("edge", "gusset", "edge \"gusset\" { line = [[4, 42], [0, 42]] }"),
	block("edge", "centre", "edge \"centre\" { line = [[0, 42], [0, -8]] }"),
}

func layer(t *testing.T, name, side string) string {
	return "layer \"" + name + "\" {\nside = \"" + side + "\"\n" + piece(t, "front") + "\n" + piece(t, "back") + "\n}"
}

func piece(t *testing.T, name string) string {
	return "piece \"" + name + "\" {\n" + fill(t, "", pieceFrame...) + "\n}"
}

// fill puts the parts that a snippet does not state itself before it.
func fill(t *testing.T, snippet string, parts ...part) string {
	t.Helper()
	stated := words(snippet)
	var b strings.Builder
	for _, p := range parts {
		same := func(w string) bool { return w == p.word+" "+p.name || p.name == "" && strings.HasPrefix(w, p.word+" ") }
		if !slices.ContainsFunc(stated, same) && strings.Contains(snippet, p.spokenOf) {
			b.WriteString(p.text + "\n")
		}
	}
	return b.String() + snippet
}

// words are the attributes and blocks at the top of a snippet, as far as it can
// be parsed.
func words(snippet string) []string {
	file, _ := hclsyntax.ParseConfig([]byte(snippet), "snippet", hcl.InitialPos)
	if file == nil {
		return nil
	}
	body, ok := file.Body.(*hclsyntax.Body)
	if !ok {
		return nil
	}
	var out []string
	for name := range body.Attributes {
		out = append(out, name+" ")
	}
	for _, b := range body.Blocks {
		out = append(out, b.Type+" "+strings.Join(b.Labels, " "))
	}
	slices.Sort(out)
	return out
}

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

// The figures that how-figures-are-computed.md quotes of its own examples are
// those that the model gives.
func TestQuotedFigures(t *testing.T) {
	const page = "how-figures-are-computed.md"
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	garments := map[string]*model.Garment{}
	for _, x := range examples(t, page) {
		m := fileMark.FindStringSubmatch(x.text)
		require.NotNil(t, m)
		g := buildAll(t, m[1], x.text, nil)[0]
		garments[g.Name] = g
	}
	skirt, bodice, brief, altered := garments["darted-skirt"], garments["bust-dart"], garments["brief"], garments["taken-in"]
	front := skirt.Layers[0].Pieces[0]
	across := func(p *model.Piece, l *model.Level) float64 {
		w, err := p.Width(l)
		require.NoError(t, err)
		return w.Net
	}
	girth, err := skirt.Girth(skirt.Layers[0], skirt.Levels[0])
	require.NoError(t, err)
	_, open := bodice.Girth(bodice.Layers[0], bodice.Levels[0])
	require.Error(t, open)
	run, err := brief.RunLength(brief.Measures[0])
	require.NoError(t, err)
	tape := model.Tape{Pitch: 19.05, Head: 9, Clear: 1.5}
	quoted := []string{
		"`shell.front.waist` as drawn | " + skirt.Show(front.Edges[0].Length()),
		"`shell.front.waist` as sewn | " + skirt.Show(front.Edges[0].SewnLength()),
		"less the whole mouth | " + skirt.Show(front.Edges[0].Net(front.Notches[0].At)),
		"across at the waist | " + skirt.Show(across(front, skirt.Levels[0])),
		"half of the dart | " + skirt.Show(across(front, skirt.Levels[1])),
		"below the dart | " + skirt.Show(across(front, skirt.Levels[2])),
		"2 × 17 + 2 × 20 | " + skirt.Show(girth),
		skirt.Show(across(bodice.Layers[0].Pieces[0], bodice.Levels[0])) + " across, as if the dart were not there",
		"sews to " + bodice.Show(bodice.Layers[0].Pieces[0].Edges[1].SewnLength()) + " of the 18 cm drawn",
		"\"" + open.Error() + "\"",
		"down the front " + brief.Show(run.Parts[0].Length),
		"the closed tape " + brief.Show(run.Parts[1].Length),
		"up the back " + brief.Show(run.Parts[2].Length) + ": " + brief.Show(run.Total) + " in all, " +
			brief.Show(brief.Measures[0].Against-run.Total) + " less than the body",
	}
	taken := altered.Layers[0].Pieces[0]
	for i, row := range []string{
		"at the bust | 22 cm | 0.5", "means of what is stated above and below", "1.4 less 0.4", "0 less 0.4: let out",
	} {
		quoted = append(quoted, row+" | "+altered.Show(across(taken, altered.Levels[i])))
	}
	quoted = append(quoted, "trimmed to "+altered.Show(taken.Edges[0].Length())+", the hem runs on to "+altered.Show(taken.Edges[2].Length()))
	text := strings.Join(strings.Fields(string(src)), " ")
	for n := 1; n <= 4; n++ {
		w := tape.Window(n)
		quoted = append(quoted, fmt.Sprintf("| %d | %s mm | %s mm |", n, model.Decimal(w.Low, 2), model.Decimal(w.High, 2)))
	}
	for _, q := range quoted {
		require.True(t, strings.Contains(text, q), "the page does not say: %s", q)
	}
}

// block of a page: an hcl example or a report that is quoted.
var anyBlock = regexp.MustCompile("(?ms)^```(hcl|text)\n(.*?)^```$")

// subjectAndRule is the heading of a finding in a report: shell.front (fold-straight).
var subjectAndRule = regexp.MustCompile(`(?m)^(?: ?\d+  |    )(?:ERROR|WARNING|NOTE|error|warning|note) +(\S+) \(([a-z-]+)\)$`)

var update = flag.Bool("update", false, "put the reports as they are now into the pages")

// A report that is quoted below a garment is what the rules find in it: every
// finding it shows is found with that message, nothing that is found is left out,
// and its verdict agrees. Only the figures of checks that passed are not held.
// With -update the reports are written anew; the text around them is still for a
// person to read.
func TestQuotedReports(t *testing.T) {
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	held := 0
	for _, page := range pages(t) {
		src, err := os.ReadFile(page)
		require.NoError(t, err)
		if *update {
			src = quoteAnew(t, page, src)
		}
		garment := ""
		for _, at := range anyBlock.FindAllSubmatchIndex(src, -1) {
			kind, text := string(src[at[2]:at[3]]), string(src[at[4]:at[5]])
			if kind == "hcl" {
				garment = changed(garment, text)
				continue
			}
			if !strings.HasPrefix(text, "$ understitch check ") || garment == housed {
				continue
			}
			require.Regexp(t, fileMark, garment, "a report of no garment")
			line := 1 + strings.Count(string(src[:at[0]]), "\n")
			t.Run(fmt.Sprintf("%s:%d", page, line), func(t *testing.T) { holdReport(t, engine, garment, text) })
			held++
		}
	}
	require.Positive(t, held)
}

// changed is the garment that a reader has after one more example of a page: the
// whole one, or the last one with the blocks of a snippet put in the place of those
// of the same names, or added. Once there is a house on a page it is housed, and
// its reports are not held here.
func changed(garment, text string) string {
	m := snippetMark.FindStringSubmatch(text)
	switch file := fileMark.FindStringSubmatch(text); {
	case garment == housed, file != nil && file[1] == spec.HouseFile, m != nil && m[2] == "house":
		return housed
	case file != nil:
		return text
	case m == nil || m[1] != "" || garment == "":
		return garment
	}
	snippet := parsed(text)
	for _, b := range snippet.Blocks {
		put := text[b.TypeRange.Start.Byte:b.CloseBraceRange.End.Byte]
		body, end := parsed(garment), len(garment)
		if m[2] == "layer" {
			layer := body.Blocks[slices.IndexFunc(body.Blocks, func(x *hclsyntax.Block) bool { return x.Type == "layer" })]
			body, end = layer.Body, layer.CloseBraceRange.Start.Byte
			put = strings.ReplaceAll(put, "\n", "\n  ")
		}
		at := slices.IndexFunc(body.Blocks, func(old *hclsyntax.Block) bool {
			return old.Type == b.Type && slices.Equal(old.Labels, b.Labels)
		})
		if at < 0 {
			garment = garment[:end] + put + "\n" + garment[end:]
			continue
		}
		old := body.Blocks[at]
		garment = garment[:old.TypeRange.Start.Byte] + put + garment[old.CloseBraceRange.End.Byte:]
	}
	return garment
}

const housed = "a garment below a house"

func parsed(src string) *hclsyntax.Body {
	file, _ := hclsyntax.ParseConfig([]byte(src), "example", hcl.InitialPos)
	return file.Body.(*hclsyntax.Body)
}

func holdReport(t *testing.T, engine *rules.Engine, garment, text string) {
	t.Helper()
	in := &inspect.Inspector{Engine: engine, FS: fstest.MapFS{}}
	name := fileMark.FindStringSubmatch(garment)[1]
	report := in.Source(name, []byte(garment), inspect.Options{Today: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)})
	require.Empty(t, report.Diagnostics)
	shown := map[[2]string]bool{}
	for _, m := range subjectAndRule.FindAllStringSubmatch(text, -1) {
		shown[[2]string{m[1], m[2]}] = true
	}
	flat := strings.Join(strings.Fields(text), " ")
	forbidden := false
	for _, f := range append(slices.Clone(report.Result.Findings), report.Result.Waived...) {
		require.Contains(t, flat, f.Message)
		require.True(t, shown[[2]string{f.Subject, f.Rule.Name}], "%s (%s) is not shown", f.Subject, f.Rule.Name)
		forbidden = forbidden || f.Waiver == nil && f.Severity == rules.Error
	}
	require.Len(t, shown, len(report.Result.Findings)+len(report.Result.Waived), "more is shown than is found")
	require.Equal(t, forbidden, strings.Contains(text, "\nDO NOT CUT"))
	require.Equal(t, !forbidden, strings.Contains(text, "\nMAY BE CUT"))
	for _, n := range report.Result.NotPossible {
		require.Contains(t, text, n.Rule.Name)
	}
}

// quoteAnew puts what the program says now in the place of a page's reports.
func quoteAnew(t *testing.T, page string, src []byte) []byte {
	t.Helper()
	dir := t.TempDir()
	program := filepath.Join(dir, "understitch")
	out, err := exec.Command("go", "build", "-o", program, "../cmd/understitch").CombinedOutput()
	require.NoError(t, err, string(out))
	garment := ""
	src = anyBlock.ReplaceAllFunc(src, func(b []byte) []byte {
		m := anyBlock.FindSubmatch(b)
		kind, text := string(m[1]), string(m[2])
		if kind == "hcl" {
			garment = changed(garment, text)
			return b
		}
		if !strings.HasPrefix(text, "$ understitch check ") || garment == housed {
			return b
		}
		name := fileMark.FindStringSubmatch(garment)[1]
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(garment), 0o600))
		run := exec.Command(program, "check", name)
		run.Dir = dir
		said, _ := run.Output() // findings are no failure
		now := strings.TrimRight(string(said), "\n")
		if i := strings.LastIndex(now, "\n\n"); i > 0 && !strings.Contains(text, "\nAdvice, not authority") {
			now = now[:i] // the closing lines stand in one place only
		}
		return []byte("```text\n$ understitch check " + name + "\n" + now + "\n```")
	})
	require.NoError(t, os.WriteFile(page, src, 0o644))
	return src
}
