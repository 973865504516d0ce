package docs_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

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
		part{"inside", "front", "inside \"front\" {\n outer = shell.front\n inner = brief.front\n}", "inside.front"},
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
