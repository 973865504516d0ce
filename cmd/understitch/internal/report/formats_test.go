package report

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"understitch/model"
	"understitch/rules"
	"understitch/rules/builtin"
)

// hostile are texts that do harm where they are not looked after.
var hostile = []string{
	"<script>alert(1)</script>",
	"a \"quoted\" 'name' & more",
	"one\nline\r\n::error::and another",
	"::add-mask::secret",
	"##[error]boo ##vso[task.setvariable]x ##teamcity[x]",
	"\x1b[2J\x1b]0;owned\a\u009b31m",
	"turned \u202e round\u2069, 50% off {0} [click](http://x.example)",
	"]]> <!-- --> broken \xff\xfe text \x00\x01\ufffe",
	"%0A,:line=9::",
}

// spiteful is a document in which a text stands wherever a spec or a file name
// can put one.
func spiteful(text string) *Document {
	place := model.Place{File: text + "/" + text + ".garment.hcl", Start: model.Pos{Line: 2, Column: 3}, End: model.Pos{Line: 2, Column: 9}}
	f := Finding{
		Rule: "seam-walk", Severity: "error", Subject: "seam.side", Message: text, Sizes: []string{text, "other"}, WorstSize: text,
		Figure: &Figure{4.1, 3.2, -0.9, "mm", 1}, Range: place, Related: []rules.Related{{Message: text, Place: place}},
		Mend:        &rules.Mend{Title: text, Edits: []rules.Edit{{Place: place, Text: text}}},
		Fingerprint: fingerprint(text),
	}
	g := &Garment{
		File: place.File, Name: text, Title: text, Unit: "cm", Sizes: []string{text, "other"},
		Findings:    []Finding{f},
		Waived:      []Waived{{f, Waiver{Reason: text, Until: "2999-12-31", Range: place}}},
		NotPossible: []NotPossible{{"seam-walk", "seam.side", text}},
		Passed:      3,
		Closest:     []Close{{Rule: "seam-walk", Subject: "seam.side", Sizes: []string{text}, WorstSize: text, Figure: *f.Figure}},
		Diagnostics: []model.Diagnostic{{Severity: "error", Summary: text, Detail: text, Place: place}},
	}
	d := &Document{Version: Version, Tool: Tool{"understitch", "0.0.0"}, Garments: []*Garment{g}, Least: rules.Error, Rules: builtin.Rules()}
	d.Source = func(string) []byte { return []byte("first\n" + text + "\n" + text) }
	d.Summary.count(g)
	return d
}

func written(t require.TestingT, name string, d *Document, look Look) string {
	for _, f := range Formats() {
		if f.Name == name {
			var b bytes.Buffer
			require.NoError(t, f.Write(&b, d, look))
			return b.String()
		}
	}
	require.Fail(t, "there is no format "+name)
	return ""
}

var agentOrder = regexp.MustCompile(`##[A-Za-z]*\[`)

// requireHarmless holds what a format wrote of a hostile text to be safe on a
// terminal, in the log of a CI job, and for who reads the format.
func requireHarmless(t require.TestingT, format, out string) {
	for _, r := range out {
		require.False(t, r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)), "%s lets %U through", format, r)
	}
	if agentOrder.MatchString(out) {
		require.Fail(t, format+" gives an agent an order")
	}
	orders := 0
	for line := range strings.Lines(out) {
		if strings.HasPrefix(strings.TrimSpace(line), "::") {
			orders++
		}
	}
	if format == "github" {
		require.Equal(t, 2, orders, "a diagnostic and a finding, and nothing that a name smuggled in")
	} else {
		require.Zero(t, orders, "%s gives an agent an order", format)
	}
	if format == "junit" || format == "html" {
		require.NotContains(t, out, "<script>alert(1)")
	}
}

func TestHostileTexts(t *testing.T) {
	for _, f := range Formats() {
		for i, text := range hostile {
			t.Run(fmt.Sprint(f.Name, " ", i), func(t *testing.T) {
				requireHarmless(t, f.Name, written(t, f.Name, spiteful(text), Look{Width: 60}))
			})
		}
	}
}

func TestAnyTextIsHarmless(t *testing.T) {
	schema := sarifCompiled(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringOf(rapid.SampledFrom([]rune(":#[]%\n\r\t\x1b\u009b<>&\"'{}=,a 袖")))).Draw(t, "text")
		d := spiteful(text)
		d.Rules = d.Rules[:1] // their own texts are not in question
		for _, name := range []string{"text", "json", "sarif", "junit", "github"} {
			requireHarmless(t, name, written(t, name, d, Look{Width: 40}))
		}
		requireSuits(t, schema, written(t, "sarif", d, Look{}))
		var suites struct {
			XMLName xml.Name `xml:"testsuites"`
		}
		require.NoError(t, xml.Unmarshal([]byte(written(t, "junit", d, Look{})), &suites))
	})
}

func sarifCompiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	s, err := compiler.Compile("testdata/sarif-2.1.0-rtm.5.json")
	require.NoError(t, err)
	return s
}

func requireSuits(t require.TestingT, s *jsonschema.Schema, text string) {
	v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	require.NoError(t, err)
	require.NoError(t, s.Validate(v))
}

func TestSARIFSuitsItsSchema(t *testing.T) {
	s := sarifCompiled(t)
	for i, text := range hostile {
		t.Run(fmt.Sprint(i), func(t *testing.T) { requireSuits(t, s, written(t, "sarif", spiteful(text), Look{})) })
	}
	requireSuits(t, s, written(t, "sarif", &Document{Tool: Tool{"understitch", "0"}}, Look{}))
	v, err := jsonschema.UnmarshalJSON(strings.NewReader(`{"version": "2.1.0", "runs": [{}]}`))
	require.NoError(t, err)
	require.Error(t, s.Validate(v), "the schema must be able to refuse")
}

func TestJSONSuitsItsSchema(t *testing.T) {
	s, err := jsonschema.NewCompiler().Compile(filepath.FromSlash("../../../../docs/report.schema.json"))
	require.NoError(t, err)
	for i, text := range hostile {
		t.Run(fmt.Sprint(i), func(t *testing.T) { requireSuits(t, s, written(t, "json", spiteful(text), Look{})) })
	}
}

func TestJUnitSuitsItsSchema(t *testing.T) {
	if _, err := exec.LookPath("xmllint"); err != nil {
		t.Skip("xmllint is not installed (Debian: libxml2-utils), so the XML is not held against its schema")
	}
	lint := func(text string) error {
		file := filepath.Join(t.TempDir(), "report.xml")
		require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
		if out, err := exec.Command("xmllint", "--noout", "--nonet", "--schema", "testdata/junit.xsd", file).CombinedOutput(); err != nil {
			return fmt.Errorf("%w: %s", err, out)
		}
		return nil
	}
	for i, text := range hostile {
		t.Run(fmt.Sprint(i), func(t *testing.T) { require.NoError(t, lint(written(t, "junit", spiteful(text), Look{}))) })
	}
	require.NoError(t, lint(written(t, "junit", &Document{}, Look{})))
	require.Error(t, lint("<testsuites><testcase/></testsuites>"), "the schema must be able to refuse")
}
