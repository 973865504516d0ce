package report

import (
	"encoding/json"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
)

// plain is a document of one garment with a finding that a safe edit puts
// right, one that is accepted and a check that was not possible.
func plain() *Document {
	d := spiteful("side")
	g := d.Garments[0]
	g.File = "shop/a.garment.hcl"
	at := model.Place{File: g.File, Start: model.Pos{Line: 2, Column: 9}, End: model.Pos{Line: 2, Column: 12}}
	house := model.Place{File: "house.hcl", Start: model.Pos{Line: 1, Column: 1}, End: model.Pos{Line: 1, Column: 3}}
	f := &g.Findings[0]
	f.Range, f.Related = at, []rules.Related{{Message: "so says the house", Place: house}}
	f.Mend = &rules.Mend{Title: "shorten it", Safe: true, Edits: []rules.Edit{{Place: at, Text: "{18.6}"}}}
	g.Waived[0].Finding, g.Waived[0].Waiver = *f, Waiver{Reason: "eased in", Until: "2999-12-31", Range: at}
	g.Diagnostics, g.Complete = nil, true
	d.Summary = Summary{}
	d.Summary.count(g)
	// 𝄞 is one character and two UTF-16 code units; é here is two characters that
	// show as one.
	d.Source = func(string) []byte { return []byte("first\na = \"𝄞e\u0301\" = 袖\n") }
	return d
}

func result(t *testing.T, d *Document, n int) map[string]any {
	t.Helper()
	var log struct {
		Runs []struct{ Results []map[string]any }
	}
	require.NoError(t, json.Unmarshal([]byte(written(t, "sarif", d, Look{})), &log))
	return log.Runs[0].Results[n]
}

func asJSON(t *testing.T, v any) string {
	t.Helper()
	text, err := json.Marshal(v)
	require.NoError(t, err)
	return string(text)
}

func TestSARIFResult(t *testing.T) {
	d := plain()
	r := result(t, d, 0)
	require.Equal(t, "error", r["level"])
	require.JSONEq(t, `{"text": "side It shows in sizes side, other; worst in side. To put it right: shorten it."}`, asJSON(t, r["message"]))
	require.JSONEq(t, `[]`, asJSON(t, r["suppressions"]), "it is said of every result whether it is suppressed")
	require.JSONEq(t, `[{"id": 1, "message": {"text": "so says the house"}, "physicalLocation": {
		"artifactLocation": {"uri": "house.hcl", "uriBaseId": "%SRCROOT%", "index": 0},
		"region": {"startLine": 1, "startColumn": 1, "endLine": 1, "endColumn": 3}}}]`, asJSON(t, r["relatedLocations"]))
	// The text of an edit goes into the file as it is: its braces stay single.
	require.JSONEq(t, `[{"description": {"text": "shorten it"}, "artifactChanges": [{
		"artifactLocation": {"uri": "shop/a.garment.hcl", "uriBaseId": "%SRCROOT%", "index": 1},
		"replacements": [{"deletedRegion": {"startLine": 2, "startColumn": 10, "endLine": 2, "endColumn": 13}, "insertedContent": {"text": "{18.6}"}}]}]}]`,
		asJSON(t, r["fixes"]))
	require.Equal(t, d.Garments[0].Findings[0].Fingerprint, r["partialFingerprints"].(map[string]any)["understitch/v1"])

	waived := result(t, d, 1)
	require.Contains(t, asJSON(t, waived["suppressions"]), `"justification":"eased in (until 2999-12-31)","kind":"inSource"`)
}

func TestSARIFTellsTheRun(t *testing.T) {
	d := plain()
	text := written(t, "sarif", d, Look{})
	require.Contains(t, text, `"executionSuccessful":true`)
	require.Contains(t, text, `"id":"not-possible"`)
	for _, r := range d.Rules {
		require.Contains(t, text, `{"id":"`+r.Name+`","shortDescription"`)
	}
	d.Garments[0].Diagnostics = []model.Diagnostic{{Severity: "error", Summary: "cut off"}}
	d.Summary.Unreadable = 1
	text = written(t, "sarif", d, Look{})
	require.Contains(t, text, `"executionSuccessful":false`)
	require.Contains(t, text, `"level":"error","message":{"text":"cut off"}`)
}

// A rule of which nothing is known is listed by its name, and results point to
// the place of their rule in the list.
func TestSARIFRuleIndex(t *testing.T) {
	d := plain()
	d.Garments[0].Findings[0].Rule = "house-rule"
	var log struct {
		Runs []struct {
			Tool struct {
				Driver struct{ Rules []struct{ ID string } }
			}
			Results []struct {
				RuleID    string
				RuleIndex int
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(written(t, "sarif", d, Look{})), &log))
	for _, r := range log.Runs[0].Results {
		require.Equal(t, r.RuleID, log.Runs[0].Tool.Driver.Rules[r.RuleIndex].ID)
	}
	require.Len(t, log.Runs[0].Tool.Driver.Rules, len(d.Rules)+1)
}

func TestSARIFColumns(t *testing.T) {
	src := "first\r\na = \"𝄞e\u0301\" = 袖\r\nlast"
	line := "a = \"𝄞e\u0301\" = 袖"
	begins := strings.Index(src, line)
	for _, c := range []struct {
		name   string
		at     model.Pos
		source bool
		want   int
	}{
		{"before them", model.Pos{Line: 2, Column: 5, Byte: begins + 4}, true, 5},
		{"after a letter of two units", model.Pos{Line: 2, Column: 7, Byte: begins + len("a = \"𝄞")}, true, 8},
		{"after an accent of its own", model.Pos{Line: 2, Column: 8, Byte: begins + len("a = \"𝄞e\u0301")}, true, 10},
		{"by characters where no byte is known", model.Pos{Line: 2, Column: 7}, true, 8},
		{"the last line", model.Pos{Line: 3, Column: 3, Byte: len(src) - 2}, true, 3},
		{"the end of the text", model.Pos{Line: 3, Column: 5, Byte: len(src)}, true, 5},
		{"past the last line", model.Pos{Line: 9, Column: 4}, true, 4},
		{"without a text", model.Pos{Line: 2, Column: 7, Byte: begins + 9}, false, 7},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := &sarifPlaces{starts: map[string][]int{}}
			if c.source {
				p.source = func(string) []byte { return []byte(src) }
			}
			require.Equal(t, c.want, p.column("a", c.at))
		})
	}
}

func TestFileURI(t *testing.T) {
	for _, c := range []struct{ name, file, want, base string }{
		{"relative", "shop/a.garment.hcl", "shop/a.garment.hcl", sourceRoot},
		{"up", "../a.garment.hcl", "../a.garment.hcl", sourceRoot},
		{"absolute", "/srv/a b.hcl", "file:///srv/a%20b.hcl", ""},
		{"a colon that looks like a scheme", "x:y/a", "x%3Ay/a", sourceRoot},
		{"quotes, spaces, marks", `a "b" 'c'?#[1]`, "a%20%22b%22%20%27c%27%3F%23%5B1%5D", sourceRoot},
		{"line breaks and escapes", "a\nb\x1b", "a%0Ab%1B", sourceRoot},
		{"a percent sign", "50%25", "50%2525", sourceRoot},
		{"letters beyond ASCII", "Ärmel", "%C3%84rmel", sourceRoot},
		{"bytes that are no text", "a\xff", "a%FF", sourceRoot},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, sarifURI{URI: c.want, Base: c.base}, fileURI(c.file)) })
	}
}

func many(n int) *Document {
	d := plain()
	g := d.Garments[0]
	f := g.Findings[0]
	g.Findings = make([]Finding, n)
	for i := range g.Findings {
		f.Subject = fmt.Sprintf("seam.s%d", i)
		f.Fingerprint = fingerprint(f.Subject)
		g.Findings[i] = f
	}
	return d
}

// chunks is a writer that knows how long the longest of its pieces was.
type chunks struct{ total, longest int }

func (c *chunks) Write(p []byte) (int, error) {
	c.total += len(p)
	c.longest = max(c.longest, len(p))
	return len(p), nil
}

// However many findings there are, no more than one is ever built up.
func TestSARIFIsStreamed(t *testing.T) {
	var c chunks
	require.NoError(t, writeSARIF(&c, many(10_000), Look{}))
	require.Greater(t, c.total, 10_000_000)
	require.Less(t, c.longest, 64_000)
}

// What is in use while ten thousand findings are written, beyond the document
// itself.
func BenchmarkSARIF(b *testing.B) {
	d := many(10_000)
	var before, during runtime.MemStats
	b.ReportAllocs()
	for b.Loop() {
		runtime.GC()
		runtime.ReadMemStats(&before)
		if err := writeSARIF(io.Discard, d, Look{}); err != nil {
			b.Fatal(err)
		}
		runtime.GC()
		runtime.ReadMemStats(&during)
	}
	b.ReportMetric(float64(during.HeapInuse)/1e6, "MB-heap")
}
