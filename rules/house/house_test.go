package house

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/reckoned"
	"understitch/model/spec"
	"understitch/rules"
)

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
		{"inside", "", `between(inside.clearance.bust, 0, mm(9))`, `${inside.inner} has ${show(inside.clearance.bust)} in ${inside.outer}`, []string{"inside.front: lining.front has 10 mm in shell.front"}},
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
			[]string{"shell: cannot, there is no layer.girth.waist, which house.hcl:5:10 asks for"}},
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

// A level with a letter or two wrong is a slip of the pen; a name of its own is not.
func TestLevelNamesThatAreSlips(t *testing.T) {
	for _, c := range []struct {
		word, known string
		want        bool
	}{
		{"waits", "waist", true}, {"wast", "waist", true}, {"hips", "hip", true}, {"high_hip", "high-hip", true},
		{"bust", "waist", false}, {"hem", "hip", false}, {"hip", "hem", false}, {"chest", "waist", false},
	} {
		require.Equal(t, c.want, slip(c.word, c.known), c.word+" for "+c.known)
	}
}

// A figure of the house's own has an account that ends in it, as others have.
func TestAccountsOfTheHouse(t *testing.T) {
	for name, body := range map[string]string{
		"bounds":   "of = edge\nonly = { finish = \"hem\", layer = \"sh*\", paper = false }\nfigure = edge.allowance\nleast = 4",
		"equality": "of = seam\nfigure = seam.sides[0]\nequals = seam.sides[1]\nwithin = mm(2)",
		"percent":  "of = layer\nonly = { name = \"shell\" }\nfigure = layer.stretch_across\ngreatest = 15",
	} {
		t.Run(name, func(t *testing.T) {
			told := 0
			for _, o := range looks(t, body) {
				if !o.Numeric {
					continue
				}
				lines := o.Account()
				require.Greater(t, len(lines), 1)
				last := lines[len(lines)-1]
				require.Equal(t, o.Unit, last.Unit)
				require.InDelta(t, o.Measured, last.Figure, 1e-9)
				if last.Kind == reckoned.Sum {
					require.InDelta(t, last.Figure, lines.Before(len(lines)-1), 1e-9)
				}
				told++
			}
			require.Positive(t, told)
		})
	}
}
