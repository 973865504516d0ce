package house

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// wardrobe is a garment of every kind of thing; its figures are closed forms.
const wardrobe = `garment "g" {
  unit  = "mm"
  title = "Trial"
}
body { waist_girth = 300 }
fabric "net" {
  thickness = 1
  stretch   = { across = 20, along = 10 }
}
level "bust"  { y = 0 }
level "waist" {
  y    = 100
  body = body.waist_girth
}
layer "shell" {
  side   = "outer"
  fabric = fabric.net
  piece "front" {
    cut   = 2
    grain = [[50, 10], [50, 90]]
    edge "top" { line = [[0, 0], [100, 0]] }
    edge "side" {
      line      = [[100, 0], [100, 100]]
      allowance = 12
    }
    edge "hem" {
      line      = [[100, 100], [0, 100]]
      finish    = "hem"
      allowance = 30
    }
    edge "centre" {
      line      = [[0, 100], [0, 0]]
      allowance = 15
    }
    dart "waist" {
      on     = hem
      at     = 50
      intake = 10
      tip    = [50, 60]
    }
    notch "mark" {
      on    = side
      at    = 40
      kind  = "double"
      depth = 4
    }
  }
  piece "back" {
    cut = 2
    edge "side" { length = 103 }
    edge "hem" {
      length = 90
      finish = "hem"
    }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    cut = 2
    edge "top"  { line = [[0, 0], [90, 0]] }
    edge "side" { line = [[90, 0], [90, 100]] }
    edge "hem"  { line = [[90, 100], [0, 100]] }
    edge "in"   { line = [[0, 100], [0, 0]] }
  }
}
seam "side" {
  join = [shell.front.side, shell.back.side]
  ease = [-5, 0]
}
share "in" {
  outer = shell.front.centre
  inner = lining.front.in
}
nest "front" {
  outer = shell.front
  inner = lining.front
}
closure "front" {
  kind  = "lacing"
  edges = [lining.front.in, lining.front.in]
}
elastic "hem" {
  edges  = [shell.front.hem]
  length = 70
}
bone "side" {
  along  = shell.front.side
  length = 90
}
measure "side" {
  along   = [shell.front.side]
  against = body.waist_girth
}
`

func theGarment(t testing.TB, h *spec.House) *model.Garment {
	t.Helper()
	doc, diags := spec.Read("g.garment.hcl", []byte(wardrobe), h)
	require.Empty(t, diags)
	g, diags := doc.Garment("")
	require.Empty(t, diags)
	return g
}

// houseOf is a house in centimetres with one rule whose name is "trial".
func houseOf(t testing.TB, body string) *spec.House {
	t.Helper()
	h, diags := spec.ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\nrequire \"trial\" {\n"+body+"\n}\n"))
	require.Empty(t, diags)
	return h
}

// outcomes runs a rule over the garment and writes down what came of it, one
// line for each look: "subject: passed|finding message|cannot reason".
func outcomes(t testing.TB, body string) []string {
	t.Helper()
	var lines []string
	for _, o := range looks(t, body) {
		line := o.Subject
		if o.Key != "" {
			line += " (" + o.Key + ")"
		}
		switch o.Status {
		case rules.Passed:
			line += ": passed"
		case rules.Found:
			line += ": " + o.Message
		default:
			line += ": cannot, " + o.Reason
		}
		lines = append(lines, line)
	}
	return lines
}

func looks(t testing.TB, body string) []rules.Outcome {
	t.Helper()
	h := houseOf(t, body)
	own, diags := Compile(h, nil)
	require.Empty(t, diags)
	engine, err := rules.New(own)
	require.NoError(t, err)
	settings, diags := engine.Settings(h.Model())
	require.Empty(t, diags)
	return engine.Check(theGarment(t, h), settings)
}

// A free rule of each kind of thing, with the things chosen and the message
// that it gives.
func TestEveryKind(t *testing.T) {
	for _, c := range []struct {
		of, where, that, message string
		want                     []string
	}{
		{"garment", "", `garment.name == "x"`, `${garment.name}, ${garment.title}, ${length(garment.pieces)} pieces`, []string{"garment: g, Trial, 3 pieces"}},
		{"layer", `layer.side == "outer"`, `layer.stretch_across < 20`, `${layer.name} of ${layer.fabric} stretches ${layer.stretch_across} %`, []string{"shell: shell of net stretches 20 %"}},
		{"piece", `piece.layer == "shell"`, `piece.grain != null`, `${piece.address} has no grain`, []string{"shell.front: passed", "shell.back: shell.back has no grain"}},
		{"piece", `!piece.paper && layer.side == "outer"`, `piece.area > 200`, `${piece.area}`, []string{"shell.front: 100"}},
		{"piece", `piece.name == "front" && piece.layer == "shell"`, `piece.width.waist > 20`, `${show(piece.width.waist)} at the waist`, []string{"shell.front: 90 mm at the waist"}},
		{"edge", `edge.finish == "hem"`, `edge.allowance >= cm(3.1)`, `${show(edge.allowance)}`, []string{"shell.front.hem: 30 mm", "shell.back.hem: cannot, edge.allowance is not known"}},
		{"edge", `edge.paper`, `edge.length < inch(4)`, `${edge.length}`, []string{"shell.back.side: 10.3", "shell.back.hem: passed"}},
		{"notch", "", `notch.at == 5`, `${notch.kind} on ${notch.on} at ${show(notch.at)}, ${show(edge.allowance)} allowed`, []string{"shell.front.notch.mark: double on side at 40 mm, 12 mm allowed"}},
		{"dart", "", `abs(dart.legs[0] - dart.legs[1]) < 0.1 && dart.intake > 2`, `${show(dart.intake)}`, []string{"shell.front.dart.waist: 10 mm"}},
		{"seam", "", `abs(seam.difference) <= mm(1)`, `${show(seam.difference)} of ${show(seam.sides[1])}, ease from ${show(seam.ease_least)}`, []string{"seam.side: -3 mm of 103 mm, ease from -5 mm"}},
		{"share", "", `share.match == "eased"`, `${share.match}`, []string{"share.in: identical"}},
		{"nest", "", `between(nest.clearance.bust, 0, mm(9))`, `${nest.inner} has ${show(nest.clearance.bust)} in ${nest.outer}`, []string{"nest.front: lining.front has 10 mm in shell.front"}},
		{"closure", "", `closure.kind == "zip"`, `${closure.kind} of ${show(closure.sides[0])}`, []string{"closure.front: lacing of 100 mm"}},
		{"level", `level.body != null`, `level.y > 12`, `${level.name} lies at ${show(level.y)}, ${show(level.body)} round`, []string{"level.waist: waist lies at 100 mm, 300 mm round"}},
		{"elastic", "", `elastic.length / elastic.edges >= 0.8`, `${elastic.length / elastic.edges}`, []string{"elastic.hem: 0.778"}},
		{"bone", "", `bone.along - bone.length < mm(6)`, `${show(bone.along - bone.length)}`, []string{"bone.side: 10 mm"}},
		{"measure", "", `measure.total > measure.body`, `${show(measure.total)} of ${show(measure.body)}`, []string{"measure.side: 100 mm of 300 mm"}},
	} {
		t.Run(c.of+" "+c.that, func(t *testing.T) {
			body := "of = " + c.of + "\nthat = " + c.that + "\nmessage = \"" + c.message + "\"\n"
			if c.where != "" {
				body += "where = " + c.where + "\n"
			}
			require.Equal(t, c.want, outcomes(t, body))
		})
	}
}

// Expressions over lists, texts and the body.
func TestExpressions(t *testing.T) {
	for _, c := range []struct {
		name, of, that string
		holds          bool
	}{
		{"sum over pieces", "garment", `sum([for p in garment.pieces : p.cut]) == 6`, true},
		{"sum over edges of chosen pieces", "garment", `sum([for e in garment.edges : e.length if e.layer == "lining"]) == 38`, true},
		{"loop in a loop", "garment", `sum(flatten([for l in garment.layers : [for p in l.pieces : length(p.edges)]])) == 10`, true},
		{"a thing by name", "garment", `garment.layers.shell.pieces.front.edges.hem.allowance == 3`, true},
		{"by name in brackets", "garment", `garment.layers["shell"].pieces["front"].cut == 2`, true},
		{"one of several figures", "garment", `contains([0.6, 1.2, 1.5], garment.layers.shell.pieces.front.edges.side.allowance) && !contains([1, 2], 1.2)`, true},
		{"keys", "garment", `contains(keys(garment.layers), "shell") && !contains(keys(garment.layers), "coat")`, true},
		{"names joined", "garment", `join(",", [for l in garment.layers : l.name]) == "lining,shell"`, true},
		{"names sorted and cut up", "garment", `sort(split("-", "c-b-a"))[0] == "a" && upper("ab") == "AB" && strlen("abc") == 3`, true},
		{"lookup", "garment", `lookup(garment.layers.shell.girth, "hip", 99) == 99`, true},
		{"inches", "garment", `abs(inch(1) - 2.54) < 0.0001 && cm(1) == mm(10) && cm(1) == 1`, true},
		{"arithmetic is not exact and need not be", "garment", `0.1 + 0.2 == 0.3 && 0.3 >= 0.1 + 0.2 && !(0.1 + 0.2 > 0.3)`, true},
		{"a figure against a bare number", "garment", `garment.layers.shell.pieces.front.edges.side.allowance >= 1.2`, true},
		{"rounded", "garment", `round(3.26, 0.5) == 3.5 && round(2.4) == 2 && min(3, 1, 2) == 1 && max([3, 1]) == 3`, true},
		{"conditional", "garment", `(garment.size == "" ? 1 : 2) == 1`, true},
		{"null is not zero", "garment", `coalesce(garment.layers.shell.pieces.back.grain, 7) == 7`, true},
		{"patterns", "garment", `matches("side-front", "*-fr?nt") && !matches("side-front", "front") && startswith("hem", "h")`, true},
		{"not", "garment", `!(1 > 2)`, true},
		{"wrong", "garment", `1 + 1 == 3`, false},
		{"body", "garment", `body.waist_girth == 30`, true},
		{"difference of sides", "seam", `seam.sides[0] - seam.sides[1] == seam.difference`, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			want := []string{"garment: passed"}
			if c.of == "seam" {
				want = []string{"seam.side: passed"}
			}
			if !c.holds {
				want = []string{"garment: no"}
			}
			require.Equal(t, want, outcomes(t, "of = "+c.of+"\nthat = "+c.that+"\nmessage = \"no\"\n"))
		})
	}
}

func TestReadyMade(t *testing.T) {
	for _, c := range []struct {
		name, body string
		want       []string
	}{
		{"least", "of = edge\nonly = { finish = \"hem\", layer = \"sh*\", paper = false }\nfigure = edge.allowance\nleast = 4",
			[]string{"shell.front.hem: the allowance of shell.front.hem is 30 mm; at least 40 mm is asked for"}},
		{"greatest", "of = bone\nfigure = bone.length\ngreatest = 8.5",
			[]string{"bone.side: the length of bone.side is 90 mm; at most 85 mm is asked for"}},
		{"both, good", "of = bone\nfigure = bone.length\nleast = 8.5\ngreatest = 9", []string{"bone.side: passed"}},
		{"both, bad", "of = bone\nfigure = bone.length\nleast = 9.5\ngreatest = 10",
			[]string{"bone.side: the length of bone.side is 90 mm; from 95 mm to 100 mm is asked for"}},
		{"of a level", "of = layer\nonly = { side = \"outer\" }\nfigure = layer.girth.waist\nleast = body.waist_girth",
			[]string{"shell: cannot, there is no layer.girth.waist"}},
		{"percent", "of = layer\nonly = { name = \"shell\" }\nfigure = layer.stretch_across\ngreatest = 15",
			[]string{"shell: the stretch across of shell is 20 %; at most 15 % is asked for"}},
		{"equality", "of = seam\nfigure = seam.sides[0]\nequals = seam.sides[1]\nwithin = mm(2)",
			[]string{"seam.side: the first side of seam.side is 100 mm and the second side of seam.side 103 mm; they differ by 3 mm, and 2 mm is allowed"}},
		{"equality, good", "of = seam\nfigure = seam.sides[0]\nequals = seam.sides[1]\nwithin = mm(3)", []string{"seam.side: passed"}},
		{"stated", "of = piece\nonly = { layer = \"shell\" }\nhas = [piece.grain, piece.fold]",
			[]string{"shell.front (grain): passed", "shell.front (fold): shell.front states no fold",
				"shell.back (grain): shell.back states no grain", "shell.back (fold): shell.back states no fold"}},
		{"named", "of = notch\nnamed = [\"waist\", \"m?rk-*\"]",
			[]string{`shell.front.notch.mark: shell.front.notch.mark is called "mark"; names here are waist, m?rk-*`}},
		{"named, good", "of = notch\nnamed = \"m*\"", []string{"shell.front.notch.mark: passed"}},
		{"with a message of its own", "of = bone\nfigure = bone.length\nleast = 10\nmessage = \"too short: ${bone.name}\"", []string{"bone.side: too short: side"}},
		{"where nothing is chosen", "of = bone\nwhere = bone.length > 50\nfigure = bone.length\nleast = 10", nil},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, outcomes(t, c.body)) })
	}
}

// Findings carry the figure, the limit and the room, so that they can be waived
// up to a figure and be compared with what was known.
func TestFigures(t *testing.T) {
	for _, c := range []struct {
		name, body              string
		status                  rules.Status
		unit                    rules.Unit
		measured, limit, margin float64
	}{
		{"at least", `that = bone.length >= 9.5`, rules.Found, rules.Millimetres, 90, 95, -5},
		{"turned round", `that = cm(9.5) <= bone.length`, rules.Found, rules.Millimetres, 90, 95, -5},
		{"at most", `that = bone.length <= 10`, rules.Passed, rules.Millimetres, 90, 100, 10},
		{"more than", `that = bone.length > 9.5`, rules.Found, rules.Millimetres, 90, 95, -5},
		{"more than, and just that", `that = bone.length > 9`, rules.Found, "", 0, 0, 0},
		{"equal to nothing more or less", "figure = bone.length\nequals = bone.length", rules.Passed, "", 0, 0, 0},
		{"between", `that = between(bone.length, 8, 12)`, rules.Passed, rules.Millimetres, 90, 80, 10},
		{"two figures", `that = bone.along <= bone.length`, rules.Found, rules.Millimetres, 100, 90, -10},
		{"a ratio", `that = bone.length / bone.along >= 0.95`, rules.Found, rules.Ratio, 0.9, 0.95, -0.05},
		{"an area", `that = bone.length * bone.along >= 100`, rules.Found, "", 0, 0, 0},
		{"no comparison", `that = bone.name == "x"`, rules.Found, "", 0, 0, 0},
		{"equal", "figure = bone.length\nequals = bone.along\nwithin = 0.5", rules.Found, rules.Millimetres, -10, 5, -5},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := looks(t, "of = bone\nmessage = \"no\"\n"+c.body)[0]
			require.Equal(t, c.status, o.Status)
			require.Equal(t, c.unit, o.Unit)
			require.InDeltaSlice(t, []float64{c.measured, c.limit, c.margin}, []float64{o.Measured, o.Limit, o.Margin}, 1e-9)
			if c.status == rules.Found {
				require.InDelta(t, -c.margin, o.Off, 1e-9)
				require.Equal(t, "the rule of the house", o.Related[0].Message)
				require.Equal(t, 2, o.Related[0].Place.Start.Line, "the line of the house")
			}
		})
	}
}

// What is wrong with a rule is said with its place and what is known.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"kind", "of = egde\nhas = edge.name", `3:6 there is no kind of thing called "egde" | did you mean "edge"?`},
		{"figure", "of = edge\nthat = edge.alowance > 3\nmessage = \"x\"", `4:8 an edge has no figure alowance | did you mean "allowance"? Known are address, allowance, finish,`},
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
	require.Equal(t, []string{"garment: cannot, there is no garment.layers.coat.order"}, outcomes(t, "of = garment\nthat = garment.layers.coat.order > 3\nmessage = \"x\""))
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

// The severity that is stated is in force from its line, and a rule block may
// still change it.
func TestSeverity(t *testing.T) {
	for _, c := range []struct {
		name, stated, set string
		want              rules.Severity
		line              int
	}{
		{"none", "", "", rules.Warning, 0},
		{"stated", "severity = \"error\"", "", rules.Error, 5},
		{"off", "severity = \"off\"", "", rules.Off, 5},
		{"set", "severity = \"off\"", "rule \"trial\" { severity = \"note\" }", rules.Note, 7},
	} {
		t.Run(c.name, func(t *testing.T) {
			h, diags := spec.ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\nrequire \"trial\" {\n of = edge\n has = edge.role\n "+c.stated+"\n}\n"+c.set+"\n"))
			require.Empty(t, diags)
			own, diags := Compile(h, nil)
			require.Empty(t, diags)
			engine, err := rules.New(own)
			require.NoError(t, err)
			settings, diags := engine.Settings(h.Model())
			require.Empty(t, diags)
			held := settings.InForce("trial")
			require.Equal(t, c.want, held.Severity)
			require.Equal(t, c.line, held.SeverityAt.Start.Line)
		})
	}
}

func TestMatches(t *testing.T) {
	for _, c := range []struct {
		name, pattern string
		want          bool
	}{
		{"front", "front", true}, {"front", "fr", false}, {"front", "*", true}, {"", "*", true}, {"", "?", false},
		{"side-front", "*-front", true}, {"side-front", "s*f*t", true}, {"side-front", "s*x*t", false}, {"ab", "a?", true},
		{strings.Repeat("a", 5000), strings.Repeat("*a", 200) + "b", false},
	} {
		require.Equal(t, c.want, matches(c.name, c.pattern), "%.20s %.20s", c.name, c.pattern)
	}
}
