package seams_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// A shell and a lining of a front and a back, sewn at shoulder and side; the
// fronts' and backs' armholes are shared.
const vest = `garment "vest" { unit = "cm" }
LAYER shell outer
LAYER lining inner
seam "shell-shoulder" { join = [shell.front.shoulder, shell.back.shoulder] }
seam "shell-side" { join = [shell.front.side, shell.back.side] }
seam "lining-shoulder" { join = [lining.front.shoulder, lining.back.shoulder] }
seam "lining-side" { join = [lining.front.side, lining.back.side] }
share "armhole" {
  outer = [shell.front.armhole, shell.back.armhole]
  inner = [lining.front.armhole, lining.back.armhole]
}
`

func vestOf(changes ...string) string {
	const piece = `  piece "NAME" {
    fold = centre
    edge "neck"     { length = NECK }
    edge "shoulder" { length = 12 }
    edge "armhole"  { length = 23 }
    edge "side"     { length = 30 }
    edge "hem" {
      length = 26
      finish = "hem"
    }
    edge "centre" { length = 55 }
  }
`
	src := vest
	for _, layer := range [][2]string{{"shell", "outer"}, {"lining", "inner"}} {
		name, side := layer[0], layer[1]
		var pieces strings.Builder
		for _, p := range []string{"front", "back"} {
			text := strings.ReplaceAll(strings.ReplaceAll(piece, "NAME", p), "length = NECK", "length = 9\n      finish = \"bound\"\n    ")
			pieces.WriteString(strings.ReplaceAll(text, `edge "neck"     { length`, "edge \"neck\" {\n      length"))
		}
		src = strings.Replace(src, "LAYER "+name+" "+side, "layer \""+name+"\" {\n  side = \""+side+"\"\n"+pieces.String()+"}", 1)
	}
	for i := 0; i < len(changes); i += 2 {
		src = strings.Replace(src, changes[i], changes[i+1], 1)
	}
	return src
}

// A seam that names a wrong edge is one finding, which names the right one and
// puts it right.
func TestMisjoined(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&seams.Walk, &seams.EdgeUnused, &seams.True})
	require.NoError(t, err)
	require.Empty(t, ruletest.Found(t, engine, "", vestOf()))
	for _, c := range []struct{ name, from, to, subject, mend string }{
		{"of the other layer", "[lining.front.side, lining.back.side]", "[lining.front.side, shell.back.side]", "seam.lining-side",
			"write lining.back.side for shell.back.side"},
		{"another of the piece, which a share takes too", "[lining.front.side, lining.back.side]", "[lining.front.side, lining.back.armhole]", "seam.lining-side",
			"write lining.back.side for lining.back.armhole"},
		{"another of the piece, which a seam takes too", "[shell.front.shoulder, shell.back.shoulder]", "[shell.front.side, shell.back.shoulder]", "seam.shell-shoulder",
			"write shell.front.shoulder for shell.front.side"},
		{"a seam copied and not changed", "[lining.front.side, lining.back.side]", "[shell.front.side, shell.back.side]", "seam.lining-side",
			"write lining.front.side and lining.back.side for shell.front.side and shell.back.side"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := vestOf(c.from, c.to)
			found := ruletest.Found(t, engine, "", src)
			require.Len(t, found, 1)
			require.Equal(t, "seam-walk", found[0].Rule.Name)
			require.Equal(t, rules.Error, found[0].Severity)
			require.Equal(t, c.subject, found[0].Subject)
			require.Equal(t, c.mend, found[0].Mend.Title)
			require.Equal(t, vestOf(), ruletest.Mended(src, found[0].Mend))
		})
	}
	for _, c := range []struct {
		name    string
		changes []string
		want    []string
	}{
		{"an edge forgotten beside a seam that does not walk is no wrong edge", []string{
			`seam "lining-shoulder" { join = [lining.front.shoulder, lining.back.shoulder] }`, "", `edge "side"     { length = 30 }`, `edge "side"     { length = 31 }`},
			[]string{"edge-unused", "edge-unused", "seam-walk"}},
		{"an edge that would not fit is not meant", []string{`{ join = [lining.front.side, lining.back.side] }`, `{
  join = [lining.front.side, lining.back.armhole]
  ease = 3
}`}, []string{"edge-unused", "seam-walk"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var names []string
			for _, f := range ruletest.Found(t, engine, "", vestOf(c.changes...)) {
				names = append(names, f.Rule.Name)
			}
			require.ElementsMatch(t, c.want, names)
		})
	}
}
