package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/inspect"
)

const longPath = "wardrobe/second-act/quick-changes/rink-dress.garment.hcl"

func longReport(t *testing.T, width int) []string {
	t.Helper()
	f := finding(rules.Error, 12)
	f.Place.File = longPath
	f.Figures = model.Range{Low: 3.5, High: 4.1}
	f.Related = []rules.Related{
		{Message: "the other side", Place: model.Place{File: longPath, Start: model.Pos{Line: 73, Column: 5}}},
		{Message: "the house says so", Place: model.Place{File: "wardrobe/house.hcl", Start: model.Pos{Line: 7, Column: 1}}},
	}
	r := inspected(f)
	r.File, r.Sizes, r.Title = longPath, []string{"38", "40"}, strings.Repeat("a long title ", 20)
	return strings.Split(written(t, "text", Of([]*inspect.Report{r}, Options{Least: rules.Error}), Look{Width: width}), "\n")
}

// A place in a file is never broken, though it be longer than the line; it
// stands in full once, and by its line alone where the heading names the file.
func TestPathsStayWhole(t *testing.T) {
	for _, width := range []int{1, 30, 40, 80, 400} {
		lines := longReport(t, width)
		text := strings.Join(lines, "\n")
		require.Contains(t, text, "    look at   "+longPath+":12:3\n")
		require.Contains(t, text, "    see also  line 73,")
		require.Contains(t, text, "    see also  wardrobe/house.hcl")
		require.Equal(t, 2, strings.Count(text, longPath), "once in the heading, once in the finding")
		for _, l := range lines {
			if Columns(l) > min(max(width, narrowest), widest) {
				require.True(t, strings.HasSuffix(l, longPath+":12:3") || strings.HasSuffix(l, longPath+":") || strings.HasSuffix(l, "wardrobe/house.hcl"), "only a path is longer than the line: %q", l)
			}
		}
	}
}

// On a wide terminal running text keeps a width that can be read, and a line of
// a spec takes what it needs.
func TestWideTerminal(t *testing.T) {
	d := plain()
	spec := strings.Repeat("x", 180)
	d.Source = func(string) []byte { return []byte("first\n" + spec) }
	for l := range strings.Lines(written(t, "text", d, Look{Width: 240})) {
		if l = strings.TrimSpace(l); l != spec {
			require.LessOrEqual(t, Columns(l), widest)
		}
	}
	require.Contains(t, written(t, "text", d, Look{Width: 240}), spec)
	require.NotContains(t, written(t, "text", d, Look{Width: 120}), spec)
}

// Where the figures of all sizes are alike, none is called the worst.
func TestWorstOnlyWhereTheyDiffer(t *testing.T) {
	for _, c := range []struct {
		name      string
		low, high float64
		worst     bool
	}{
		{"alike", 4.1, 4.1, false},
		{"alike as far as is shown", 4.06, 4.1, false},
		{"different", 4.0, 4.1, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := finding(rules.Error, 1)
			f.Figures = model.Range{Low: c.low, High: c.high}
			text := written(t, "text", Of([]*inspect.Report{inspected(f)}, Options{Least: rules.Error}), Look{Width: 80})
			require.Equal(t, c.worst, strings.Contains(text, "worst in 40"), text)
		})
	}
}

// Close calls in which one rule says the same of several things take one line.
func TestCloseCallsAreFolded(t *testing.T) {
	pass := func(subject string, measured, margin float64) rules.Finding {
		f := finding(rules.Off, 1)
		f.Subject, f.Measured, f.Limit, f.Margin = subject, measured, 3.2, margin
		return f
	}
	r := inspected()
	r.Result.Closest = []rules.Finding{
		pass("seam.a", 3.1, 0.1), pass("seam.b", -3.104, 0.096), pass("seam.c", 2, 1.2), pass("seam.a", 3.1, 0.1), pass("seam.d", 1, 2.2), pass("seam.e", 3.1, 0.1),
	}
	d := Of([]*inspect.Report{r}, Options{Closest: 2})
	require.Len(t, d.Garments[0].Closest, 2)
	require.Equal(t, []string{"seam.b", "seam.e"}, d.Garments[0].Closest[0].Likewise)
	require.Contains(t, written(t, "text", d, Look{Width: 80}), "    0.1 mm    seam.a and 2 more (seam-walk: 3.1 mm, limit 3.2 mm)\n")
}

// Of a rule that takes several figures of one thing a close call says which it
// means; where two of them come to the same, one is told.
func TestCloseCallsSayWhichFigure(t *testing.T) {
	of := func(rule, key string, margin float64) rules.Finding {
		f := finding(rules.Error, 1)
		f.Rule = &rules.Rule{Name: rule, Family: "layers"}
		f.Subject, f.Key, f.Measured, f.Limit, f.Margin, f.Sizes, f.Size = "share.top", key, 1-margin, 1, margin, nil, ""
		return f
	}
	r := inspected()
	r.Result.Closest = []rules.Finding{
		of("shared-edge", "length", 0.1), of("shared-edge", "shape shell.front.top", 0.2),
		of("shared-edge", "corner shell.front.top", 0.2), of("fold-straight", "straight", 0.3), of("hem-drop", "", 0.4),
	}
	d := Of([]*inspect.Report{r}, Options{Closest: 9})
	text := written(t, "text", d, Look{Width: 100})
	require.Contains(t, text, "share.top (shared-edge, length: 0.9 mm, limit 1 mm)\n")
	require.Contains(t, text, "share.top (shared-edge, shape shell.front.top: 0.8 mm, limit 1 mm)\n")
	require.NotContains(t, text, "corner", "the same figure again")
	require.Contains(t, text, "share.top (fold-straight: 0.7 mm, limit 1 mm)\n", "the rule's name says it")
	require.Contains(t, text, "share.top (hem-drop: 0.6 mm, limit 1 mm)\n")
	require.Contains(t, written(t, "json", d, Look{}), `"key": "shape shell.front.top"`)
}

// The wearers of a table are called so.
func TestWearersAreCalledSo(t *testing.T) {
	f := finding(rules.Error, 12)
	f.Sizes, f.Size, f.Figures = []string{"anna", "rosa"}, "rosa", model.Range{Low: 1, High: 4}
	r := inspected(f)
	r.Sizes, r.OfWearers = []string{"anna", "rosa", "lotte"}, true
	d := Of([]*inspect.Report{r}, Options{Least: rules.Error})
	text := written(t, "text", d, Look{Width: 100})
	require.Contains(t, text, "; wearers anna, rosa, lotte\n")
	require.Contains(t, text, "    shows on  anna, rosa; worst on rosa\n")
	require.Contains(t, written(t, "github", d, Look{}), "It shows on wearers anna, rosa; worst on rosa.")
	require.Contains(t, written(t, "json", d, Look{}), `"wearers": true`)
	r.OfWearers = false
	text = written(t, "text", Of([]*inspect.Report{r}, Options{Least: rules.Error}), Look{Width: 100})
	require.Contains(t, text, "; sizes anna, rosa, lotte\n")
	require.Contains(t, text, "    shows in  anna, rosa; worst in rosa\n")
}

// Without colour nothing but text is written, and with it the same text.
func TestColour(t *testing.T) {
	d := plain()
	bare, painted := written(t, "text", d, Look{Width: 80}), written(t, "text", d, Look{Width: 80, Color: true})
	require.NotContains(t, bare, "\x1b")
	require.Contains(t, painted, "\x1b[1;31mDO NOT CUT")
	var cleaned strings.Builder
	for l := range strings.Lines(painted) {
		cleaned.WriteString(Clean(strings.TrimSuffix(l, "\n")) + "\n")
	}
	require.Equal(t, bare, cleaned.String())
}

// A share is shown in percent, any other ratio as it is; the machine's report has
// both plain.
func TestSharesAreShownInPercent(t *testing.T) {
	for _, c := range []struct {
		measured, limit, margin float64
		want                    string
	}{
		{2.0 / 3, 0.5, 0.5 - 2.0/3, "figure    67 %, where the limit is 50 %"},
		{0.503, 0.5, -0.003, "figure    50.3 %, where the limit is 50 %"},
		{3.4, 2.5, -0.9, "figure    3.4, where the limit is 2.5"},
		{0, 1, -1, "figure    0, where the limit is 1"},
	} {
		f := finding(rules.Error, 1)
		f.Measured, f.Limit, f.Margin, f.Unit = c.measured, c.limit, c.margin, rules.Ratio
		f.Figures = model.Exactly(c.measured)
		d := Of([]*inspect.Report{inspected(f)}, Options{Least: rules.Error})
		require.Contains(t, written(t, "text", d, Look{Width: 80}), c.want)
		require.Contains(t, written(t, "json", d, Look{}), `"unit": "ratio"`)
	}
}
