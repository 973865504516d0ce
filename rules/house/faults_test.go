package house

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model/spec"
	"understitch/rules"
)

// What is wrong with a rule is said with its place and what is known.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"kind", "of = egde\nhas = edge.name", `3:6 there is no kind of thing called "egde" | did you mean "edge"?`},
		{"figure", "of = edge\nthat = edge.alowance > 3\nmessage = \"x\"", `4:8 an edge has no figure alowance | did you mean "allowance"? Known are address, allowance, drafted_length, finish,`},
		{"figure in a loop", "of = garment\nthat = sum([for p in garment.pieces : p.aera]) > 3\nmessage = \"x\"", `4:39 a piece has no figure aera | did you mean "area"?`},
		{"figure of a thing by name", "of = garment\nthat = garment.layers.shell.grith.waist > 3\nmessage = \"x\"", `4:8 a layer has no figure grith | did you mean "girth"?`},
		{"figure in the message", "of = edge\nthat = edge.length > 3\nmessage = \"${edge.lenght}\"", `5:14 an edge has no figure lenght | did you mean "length"?`},
		{"another kind's thing", "of = edge\nthat = seam.difference > 3\nmessage = \"x\"", `4:8 seam is not known in a rule of = edge | Known are edge, piece, layer, garment, body.`},
		{"a thing, no figure", "of = edge\nthat = edge == \"x\"\nmessage = \"x\"", `4:8 edge is a thing; say which figure of it is meant | Known are edge.address,`},
		{"text as a number", "of = edge\nthat = edge.finish > 3\nmessage = \"x\"", `4:8 a number is meant here | edge.finish is text; lengths are numbers too`},
		{"number against text", "of = edge\nthat = edge.length == \"x\"\nmessage = \"x\"", `4:8 these two are never equal | edge.length is a number; what stands here is text`},
		{"number as truth", "of = edge\nthat = edge.length && true\nmessage = \"x\"", `4:8 something that is true or false is meant here | edge.length is a number`},
		{"that is a number", "of = edge\nthat = edge.length\nmessage = \"x\"", `4:8 that is to be true or false | edge.length is a number.`},
		{"where is text", "of = edge\nwhere = edge.finish\nhas = edge.role", `4:9 where is to be true or false | edge.finish is text.`},
		{"function", "of = edge\nthat = show_(edge.length) > 3\nmessage = \"x\"", `4:8 there is no function show_ | did you mean "show"?`},
		{"text to a function", "of = edge\nthat = abs(edge.finish) > 3\nmessage = \"x\"", `4:12 abs cannot be reckoned: edge.finish is text, and a number is meant here`},
		{"too few figures", "of = edge\nthat = between(edge.length, 3)\nmessage = \"x\"", `4:8 between cannot be reckoned: it is given 2 figures and takes 3`},
		{"a list of text summed", "of = garment\nthat = sum([for p in garment.pieces : p.name]) > 3\nmessage = \"x\"", `4:12 sum cannot be reckoned: numbers are meant here, or a list of them`},
		{"two forms", "of = edge\nthat = edge.length > 3\nhas = edge.finish\nmessage = \"x\"", `2:1 a rule states one of that, figure, has and named`},
		{"no form", "of = edge", `2:1 a rule states one of that, figure, has and named`},
		{"no message", "of = edge\nthat = edge.length > 3", `2:1 a rule with that needs a message`},
		{"a figure without a bound", "of = edge\nfigure = edge.length", `4:10 a figure has a least or a greatest value, or equals another`},
		{"a stray bound", "of = edge\nhas = edge.finish\nleast = 3", `5:9 least goes with figure`},
		{"a bound of text", "of = edge\nfigure = edge.length\nleast = \"3\"", `5:9 least is to be a number`},
		{"only of nothing", "of = edge\nonly = { finnish = \"hem\" }\nhas = edge.role", `4:10 an edge has no figure finnish | did you mean "finish"?`},
		{"only of another type", "of = edge\nonly = { finish = 3 }\nhas = edge.role", `4:19 edge.finish is text`},
		{"has of a sum", "of = edge\nhas = edge.length + 1", `4:7 the name of a figure is meant here | For example: has = edge.finish.`},
		{"loops too deep", "of = garment\nthat = length([for a in garment.layers : [for b in garment.layers : [for c in garment.layers : c.name]]]) > 3\nmessage = \"x\"", `4:69 for stands inside for more than 2 deep`},
		{"a member called like a thing", "of = edge\nthat = length([for edge in garment.edges : edge.name]) > 3\nmessage = \"x\"", `4:15 edge means something else already; give the members another name`},
		{"figure of a list", "of = garment\nthat = [for p in garment.pieces : p.area].area > 3\nmessage = \"x\"", `4:42 there is no figure of this name here | A list has no figures; go over its members with for, or name one of them.`},
		{"for over a figure", "of = edge\nthat = sum([for x in edge.length : x]) > 3\nmessage = \"x\"", `4:22 for goes over a list, and this is none`},
		{"a list in the message", "of = garment\nthat = length(garment.pieces) > 9\nmessage = \"x ${[for p in garment.pieces : p.name]}\"", `5:16 what stands in ${ } is to be a figure or text`},
		{"a choice of two kinds", "of = edge\nthat = (edge.length > 3 ? [1] : \"x\") == 3\nmessage = \"x\"", `4:27 both answers of a choice are of one kind`},
		{"splat", "of = garment\nthat = length(garment.sizes[*]) > 3\nmessage = \"x\"", `4:15 this cannot stand in a rule of the house`},
		{"a measure of nothing", "of = garment\nthat = body > 3\nmessage = \"x\"", `4:8 a measure of the body is meant here | For example: body.waist_girth.`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, diags := Compile(houseOf(t, c.body), nil)
			require.NotEmpty(t, diags)
			d := diags[0]
			got := fmt.Sprintf("%d:%d %s", d.Place.Start.Line, d.Place.Start.Column, d.Summary)
			if d.Detail != "" {
				got += " | " + d.Detail
			}
			require.True(t, strings.HasPrefix(got, c.want), "%s\nis not\n%s", got, c.want)
		})
	}
}

func TestNames(t *testing.T) {
	h, diags := spec.ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\nrequire \"seam-walk\" {\n of = edge\n has = edge.role\n}\nrequire \"hem_3\" {\n of = edge\n has = edge.role\n}\n"))
	require.Empty(t, diags)
	_, diags = Compile(h, []*rules.Rule{{Name: "seam-walk"}})
	require.Equal(t, `"seam-walk" is a rule that is built in`, diags[0].Summary)
	require.Equal(t, "the name of a rule is small letters with hyphens between", diags[1].Summary)
}

// A figure that is not there never counts as passed, and can be asked about.
func TestMissing(t *testing.T) {
	require.Equal(t, []string{"shell.back: cannot, piece.area is not known"},
		outcomes(t, "of = piece\nonly = { name = \"back\" }\nthat = piece.area > 3\nmessage = \"x\""))
	require.Equal(t, []string{"garment: cannot, body.bust_girth is not known"}, outcomes(t, "of = garment\nthat = body.bust_girth > 3\nmessage = \"x\""))
	require.Equal(t, []string{"garment: cannot, there is no garment.layers.coat.order, which house.hcl:4:8 asks for"}, outcomes(t, "of = garment\nthat = garment.layers.coat.order > 3\nmessage = \"x\""))
	require.Equal(t, []string{"shell.back: passed"},
		outcomes(t, "of = piece\nonly = { name = \"back\" }\nthat = piece.area == null || piece.area > 3\nmessage = \"x\""))
	require.Equal(t, []string{"shell.back: area not known"},
		outcomes(t, "of = piece\nonly = { name = \"back\" }\nthat = piece.area != null\nmessage = \"area ${piece.area}\""))
	require.Equal(t, []string{"garment: cannot, this has no value; is something divided by nothing?"},
		outcomes(t, "of = garment\nthat = 1 / (length(garment.seams) - 1) > 3\nmessage = \"x\""))
}

// No rule can hold up the checking: what it may do is counted.
func TestBudget(t *testing.T) {
	long := strings.Repeat("x", 4000)
	for name, that := range map[string]string{
		"text that grows": `strlen(replace(replace(replace("` + long + `", "x", "` + long + `"), "x", "` + long + `"), "x", "` + long + `")) > 3`,
		"lists of lists":  `length(flatten([for a in split("", "` + long + `") : [for b in split("", "` + long + `") : "${a}${b}"]])) > 3`,
	} {
		t.Run(name, func(t *testing.T) {
			h := houseOf(t, "of = edge\nthat = edge.length > 0 && "+that+"\nmessage = \"x\"")
			_, diags := Compile(h, nil)
			require.NotEmpty(t, diags)
			require.Contains(t, diags[0].Summary, "this takes more than")
		})
	}
	t.Run("over what the garment has", func(t *testing.T) {
		g := theGarment(t, nil)
		piece := g.Layers[0].Pieces[0]
		for i := range 400 {
			e := *piece.Edges[0]
			e.Name = fmt.Sprintf("e%d", i)
			piece.Edges = append(piece.Edges, &e)
		}
		h := houseOf(t, "of = garment\nthat = length(flatten([for a in garment.edges : [for b in garment.edges : a.name if a.name == b.name]])) > 3\nmessage = \"x\"")
		own, diags := Compile(h, nil)
		require.Empty(t, diags)
		engine, err := rules.New(own)
		require.NoError(t, err)
		settings, _ := engine.Settings(nil)
		o := engine.Check(g, settings)
		require.Len(t, o, 1)
		require.Equal(t, "the rule trial takes too many steps here", o[0].Reason)
	})
}

// someExpression draws an expression of so many levels, sensible or not.
func someExpression(t *rapid.T, depth int) string {
	leaf := rapid.SampledFrom([]string{
		"edge.length", "edge.finish", "edge.notches", "edge.allowance", "garment.pieces", "garment.sizes", "layer.girth", "layer.girth.waist", "layer.girth.none",
		"body.waist_girth", "body.none", "piece.grain", "piece.area", "piece.paper", "garment.layers.shell.pieces", "garment.layers[\"shell\"].order", "p", "p.cut", "p.name",
		"1", "0", "-1", "2.5", "\"x\"", "\"\"", "null", "true", "[1, 2]", "[]", "{ a = 1 }", "[\"a\", \"b\"]",
	})
	if depth == 0 {
		return leaf.Draw(t, "leaf")
	}
	sub := func() string { return someExpression(t, depth-1) }
	switch rapid.IntRange(0, 8).Draw(t, "form") {
	case 0, 1:
		return "(" + sub() + rapid.SampledFrom([]string{" + ", " - ", " * ", " / ", " % ", " == ", " != ", " > ", " >= ", " < ", " <= ", " && ", " || "}).Draw(t, "sign") + sub() + ")"
	case 2:
		return rapid.SampledFrom([]string{"!", "-"}).Draw(t, "sign") + "(" + sub() + ")"
	case 3, 4:
		args := make([]string, rapid.IntRange(1, 3).Draw(t, "args"))
		for i := range args {
			args[i] = sub()
		}
		return rapid.SampledFrom(functionNames).Draw(t, "function") + "(" + strings.Join(args, ", ") + ")"
	case 5:
		return "[for p in " + sub() + " : " + sub() + rapid.SampledFrom([]string{"", " if p.cut > 1", " if true"}).Draw(t, "if") + "]"
	case 6:
		return "(" + sub() + " ? " + sub() + " : " + sub() + ")"
	case 7:
		return "\"a${" + sub() + "}\""
	}
	return sub()
}

// Whatever is written as an expression is refused or run; nothing falls over.
func TestNothingFallsOver(t *testing.T) {
	g := theGarment(t, nil)
	ran := 0
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.SampledFrom([]string{"that = ", "where = ", "figure = ", "message = "}).Draw(t, "word")
		body := word + someExpression(t, rapid.IntRange(0, 3).Draw(t, "depth")) + map[string]string{
			"that = ": "\nmessage = \"x\"", "where = ": "\nhas = edge.role", "figure = ": "\nleast = 1", "message = ": "\nthat = edge.length < 0",
		}[word]
		h, diags := spec.ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\nrequire \"trial\" {\nof = edge\n"+body+"\n}\n"))
		if len(diags) > 0 {
			return
		}
		own, diags := Compile(h, nil)
		if len(diags) > 0 {
			return
		}
		ran++
		engine, err := rules.New(own)
		require.NoError(t, err)
		settings, _ := engine.Settings(nil)
		engine.Check(g, settings)
	})
	require.Positive(t, ran)
}
