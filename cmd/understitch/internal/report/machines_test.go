package report

import (
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
)

func TestGitHub(t *testing.T) {
	d := plain()
	g := d.Garments[0]
	g.File, g.Title = "a.garment.hcl", "a coat"
	note := g.Findings[0]
	note.Severity, note.Sizes, note.Mend = "note", nil, nil
	note.Range.File = "50%, or: so\n.hcl"
	note.Range.End = model.Pos{Line: 4, Column: 1}
	note.Message = "100% wool\nsecond line: here, too"
	g.Findings = []Finding{note}
	g.Diagnostics = []model.Diagnostic{{Severity: "warning", Summary: "odd", Detail: "look again", Place: model.Place{File: "house.hcl", Start: model.Pos{Line: 3, Column: 4}, End: model.Pos{Line: 3, Column: 4}}}}
	require.Equal(t, []string{
		"DO NOT CUT: 1 note",
		"::warning file=house.hcl,line=3,endLine=3,col=4,endColumn=4,title=not read::odd. Look again",
		"::notice file=50%25%2C or%3A so%0A.hcl,line=2,endLine=3,title=seam-walk%3A seam.side::100%25 wool%0Asecond line: here, too",
	}, strings.Split(strings.TrimSpace(written(t, "github", withLeast(d, rules.Note), Look{})), "\n"))
}

func withLeast(d *Document, least rules.Severity) *Document {
	d.Least = least
	return d
}

func TestJUnitCounts(t *testing.T) {
	d := plain()
	g := d.Garments[0]
	warning := g.Findings[0]
	warning.Severity = "warning"
	g.Findings = append(g.Findings, warning)
	g.Diagnostics = []model.Diagnostic{{Severity: "error", Summary: "cut off"}}
	var got struct {
		Tests    int `xml:"tests,attr"`
		Failures int `xml:"failures,attr"`
		Errors   int `xml:"errors,attr"`
		Suites   []struct {
			Name    string `xml:"name,attr"`
			Skipped int    `xml:"skipped,attr"`
			Cases   []struct {
				Name    string `xml:"name,attr"`
				Class   string `xml:"classname,attr"`
				Skipped string `xml:"skipped"`
				Output  string `xml:"system-out"`
				Failure *struct {
					Message string `xml:"message,attr"`
				} `xml:"failure"`
			} `xml:"testcase"`
		} `xml:"testsuite"`
	}
	require.NoError(t, xml.Unmarshal([]byte(written(t, "junit", d, Look{})), &got))
	require.Equal(t, []int{6, 1, 1}, []int{got.Tests, got.Failures, got.Errors})
	suite := got.Suites[0]
	require.Equal(t, 2, suite.Skipped)
	var names []string
	for _, c := range suite.Cases {
		names = append(names, c.Name)
		require.Equal(t, "shop.a", c.Class)
	}
	require.Equal(t, []string{
		"checks that passed", "the spec can be read", "seam-walk seam.side", "seam-walk seam.side (2)", "seam-walk seam.side (3)", "seam-walk seam.side (4)",
	}, names)
	require.NotNil(t, suite.Cases[2].Failure)
	require.Nil(t, suite.Cases[3].Failure, "a warning does not forbid cutting")
	require.Contains(t, suite.Cases[3].Output, "warning: side")
	require.Equal(t, "accepted: eased in (until 2999-12-31)", suite.Cases[4].Skipped)
	require.Equal(t, "not possible: side", suite.Cases[5].Skipped)

	require.NoError(t, xml.Unmarshal([]byte(written(t, "junit", withLeast(d, rules.Warning), Look{})), &got))
	require.Equal(t, 2, got.Failures)
}

func TestInert(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "a: b :: c", "a: b :: c"},
		{"at the start", "::error::x", ": :error::x"},
		{"after spaces", "   ::x", "   : :x"},
		{"anywhere", "x ##[add-mask]y", "x # #[add-mask]y"},
		{"another agent's", "##vso[task]", "# #vso[task]"},
		{"a heading", "## heading [1]", "## heading [1]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, Inert(c.in))
			require.Equal(t, c.want, Inert(Inert(c.in)))
		})
	}
}

// A report that is read back says the same in every form; of what a text or a
// page draws from the specs only the lines are missing.
func TestReadBack(t *testing.T) {
	for _, text := range hostile[:7] { // the others cannot be written in JSON as they are
		d := spiteful(text)
		back, err := Read([]byte(written(t, "json", d, Look{})))
		require.NoError(t, err)
		merged, err := Merge([]Part{{"one.json", back}}, Options{Version: "0.0.0", Least: d.Least, Rules: d.Rules})
		require.NoError(t, err)
		d.Source = nil
		for _, f := range []string{"text", "json", "sarif", "junit", "github"} {
			require.Equal(t, written(t, f, d, Look{Width: 80}), written(t, f, merged, Look{Width: 80}), f)
		}
	}
}

func TestMerge(t *testing.T) {
	part := func(name string, files ...string) Part {
		d := &Document{}
		for _, f := range files {
			d.Garments = append(d.Garments, &Garment{File: f, Complete: true, Passed: 2})
		}
		return Part{name, d}
	}
	d, err := Merge([]Part{part("1", "b", "d"), part("2", "a", "c"), part("3", "b")}, Options{})
	require.NoError(t, err)
	var files []string
	for _, g := range d.Garments {
		files = append(files, g.File)
	}
	require.Equal(t, []string{"a", "b", "c", "d"}, files)
	require.Equal(t, Summary{Garments: 4, Passed: 8}, d.Summary)

	other := part("other.json", "b")
	other.Document.Garments[0].Passed = 3
	_, err = Merge([]Part{part("1.json", "b"), other}, Options{})
	require.EqualError(t, err, "b stands in 1.json and in other.json, and not the same is said of it")
}

func TestReadRefuses(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"nothing", " ", "empty or cut off"},
		{"cut off", `{"version": 1, "tool": {`, "not JSON, or it is cut off"},
		{"another JSON", `{"a": 1}`, "not a report of understitch"},
		{"a list", `[]`, "not a report of understitch"},
		{"another version", `{"version": 2, "tool": {"name": "understitch"}}`, "version 2; only version 1"},
		{"no file", `{"version": 1, "tool": {"name": "understitch"}, "garments": [{}]}`, "a garment has no file"},
		{"no garment", `{"version": 1, "tool": {"name": "understitch"}, "garments": [null]}`, "a garment has no file"},
		{"a wrong type", `{"version": 1, "tool": {"name": "understitch"}, "garments": 3}`, "not a report of understitch"},
		{"no severity", `{"version": 1, "tool": {"name": "understitch"}, "garments": [{"file": "a", "findings": [{}]}]}`, `a: a finding has the severity ""`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read([]byte(c.src))
			require.ErrorContains(t, err, c.want)
		})
	}
}
