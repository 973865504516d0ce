package docs_test

import (
	"flag"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

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
		w, err := measuring.WidthOf(p, l)
		require.NoError(t, err)
		return w.Net
	}
	girth, err := measuring.Girth(skirt, skirt.Layers[0], skirt.Levels[0])
	require.NoError(t, err)
	_, open := measuring.Girth(bodice, bodice.Layers[0], bodice.Levels[0])
	require.Error(t, open)
	run, err := sewing.LayRun(brief, brief.Measures[0])
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
var subjectAndRule = regexp.MustCompile(`(?m)^(?: ?\d+  |    )(?:ERROR|WARNING|NOTE|error|warning|note) +(\S+) \(([a-z-]+)(?:, [^)]*)?\)?$`)

var update = flag.Bool("update", false, "put the reports as they are now into the pages")
