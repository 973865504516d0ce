package page

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model"
	"understitch/model/curve"
)

func write(t *testing.T, p Page) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, Write(&b, p))
	return b.String()
}

func finding(n int, severity string) Finding {
	return Finding{
		Number: n, Severity: severity, Subject: fmt.Sprintf("seam.s%d", n), Rule: "seam-walk", Figure: "4.1 mm", Line: n,
		Message: "shell.front.side is 4.1 mm longer than shell.back.side (50.28 cm against 49.87 cm); no more than 3.2 mm is allowed.",
		Facts:   []Note{{"figure", "4.1 mm, where the limit is 3.2 mm"}, {"shows in", "36, 38; worst in 38"}},
	}
}

// drawn draws a sheet with so many marks.
func drawn(marks int) func(string) (*drawing.Sheet, *drawing.CutSheet) {
	return func(size string) (*drawing.Sheet, *drawing.CutSheet) {
		p := &drawing.Panel{Kind: drawing.Laid, Title: "a", Point: 1, Box: curve.Box{Max: curve.Point{X: 100, Y: 100}}}
		for i := range marks {
			p.Marks = append(p.Marks, drawing.Mark{Kind: drawing.StitchLine, Side: model.Outer, Line: curve.Polyline(curve.Point{X: float64(i)}, curve.Point{Y: 10})})
		}
		return &drawing.Sheet{Title: "a", Size: size, Panels: []*drawing.Panel{p}}, &drawing.CutSheet{}
	}
}

// Ten thousand findings with their drawings and sources stay a page that can be
// opened: errors are told in full before anything else, and all are accounted for.
func TestTenThousandFindings(t *testing.T) {
	p := Page{Verdict: Verdict{"do not cut", "10000 errors"}}
	source := []byte(strings.Repeat("seam \"side\" { join = [shell.front.side, shell.back.side] }\n", 12_000))
	for g := range 20 {
		garment := &Garment{File: fmt.Sprintf("g%d.garment.hcl", g), Sizes: []string{"36", "38", "40"}, First: "38", Source: source, Draw: drawn(2000)}
		for i := range 500 {
			severity := "warning"
			if i%20 == 0 {
				severity = "error"
			}
			garment.Findings = append(garment.Findings, finding(i+1, severity))
		}
		p.Garments = append(p.Garments, garment)
	}
	v := p.view()
	inFull, errors, all := 0, 0, 0
	for _, g := range v.Garments {
		inFull += len(g.Findings)
		all += len(g.Findings) + len(g.Short)
		for _, f := range g.Findings {
			if f.Severity == "error" {
				errors++
			}
		}
		for _, r := range g.Rest {
			all += r.Count
		}
	}
	require.Equal(t, 10_000, all)
	require.Equal(t, 20*25, errors, "all errors in full")
	require.Greater(t, inFull, 1500)
	require.Less(t, inFull, 10_000)
	text := write(t, p)
	require.Less(t, len(text), 5_000_000)
	require.Contains(t, text, "Left out to keep the page small")
	require.Contains(t, text, "Further findings, in short")
}

// What there is room for is there: all sizes, all findings, all of the spec.
func TestAllOfASmallGarment(t *testing.T) {
	p := Page{Garments: []*Garment{{
		File: "a.garment.hcl", Sizes: []string{"36", "38"}, First: "38", Draw: drawn(3),
		Findings: []Finding{finding(1, "error"), finding(2, "note")}, Source: []byte("one\ntwo\nthree\n"),
	}}}
	v := p.view().Garments[0]
	require.Len(t, v.Findings, 2)
	require.Empty(t, v.Rest)
	require.Equal(t, "36", v.Drawings[0].Size)
	require.False(t, v.Drawings[0].Shown)
	require.True(t, v.Drawings[1].Shown)
	require.Len(t, v.Lines, 3)
	require.Equal(t, []int{2}, v.Lines[1].Numbers)
}

func TestLineIsMarked(t *testing.T) {
	for _, c := range []struct {
		name                 string
		from, to             int
		before, meant, after string
	}{
		{"inside", 3, 5, "zw", "ei", " ü"},
		{"to the end", 3, 99, "zw", "ei ü", ""},
		{"past the end", 90, 99, "zwei ü", "", ""},
		{"nothing stated", 0, 0, "", "", "zwei ü"},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := line{Before: "zwei ü"}
			l.mark([]Finding{{From: c.from, To: c.to}})
			require.Equal(t, []string{c.before, c.meant, c.after}, []string{l.Before, l.Meant, l.After})
		})
	}
}

// Whatever stands in a spec is text in the page.
func TestEverythingIsEscaped(t *testing.T) {
	const bad = `</script><script>alert(1)</script>"'<img src=x onerror=alert(2)>`
	f := Finding{Number: 1, Severity: "error", Subject: bad, Rule: bad, Message: bad, Figure: bad, Facts: []Note{{bad, bad}}, Sizes: []string{bad}, Place: bad, Line: 1, From: 1, To: 9}
	sheet := &drawing.Sheet{
		Title: bad, Name: bad, Size: bad, Layers: []drawing.Layer{{Name: bad, Side: model.Outer, Cloth: bad}},
		Panels: []*drawing.Panel{
			{Title: bad, Subject: bad, Point: 1, Facts: []string{bad}, Layers: []string{bad}, Marks: []drawing.Mark{
				{Kind: drawing.PieceName, Layer: bad, Subject: bad, Text: []string{bad}},
				{Kind: drawing.Found, Sign: drawing.Tag, Severity: "error", Numbers: []string{bad}, Text: []string{bad}},
			}},
			{Title: bad, Missing: bad},
		},
		Elsewhere: []drawing.Finding{{Number: bad, Severity: "note", Subject: bad, Figure: bad}},
	}
	cut := &drawing.CutSheet{
		Layers:  []drawing.CutLayer{{Name: bad, Cloth: bad, Pieces: []drawing.CutPiece{{Name: bad, How: bad, Allowances: []string{bad}, Notches: []string{bad}}}}},
		Lengths: []drawing.CutLength{{Subject: bad, What: bad, Length: bad, How: bad}}, Problems: []string{bad},
	}
	g := &Garment{
		File: bad, Title: bad, Verdict: Verdict{bad, bad}, About: bad, Sizes: []string{bad}, First: bad, Findings: []Finding{f}, Source: []byte(bad),
		Trouble: []Note{{bad, bad}}, Closest: []Note{{bad, bad}}, Waived: []Note{{bad, bad}}, Undone: []Note{{bad, bad}},
		Draw: func(string) (*drawing.Sheet, *drawing.CutSheet) { return sheet, cut },
	}
	text := write(t, Page{Verdict: Verdict{bad, bad}, Advice: bad, Tool: bad, Garments: []*Garment{g, g}})
	require.Equal(t, 1, strings.Count(text, "<script"), "only the page's own")
	require.NotContains(t, text, "<img")
	require.Greater(t, strings.Count(text, "&lt;script&gt;"), 40)
}

func TestWriterThatFails(t *testing.T) {
	require.Error(t, Write(full{}, Page{}))
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, fmt.Errorf("full") }
