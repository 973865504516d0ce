package fullscale

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/model"
	"understitch/model/curve"
)

func at(x, y float64) curve.Point { return curve.Point{X: x, Y: y} }

// rectangle is the drawing of one piece, so wide and high in millimetres, with a
// broken line, an arc, its name and a finding.
func rectangle(wide, high float64) *drawing.Panel {
	mark := func(kind drawing.Kind, side model.Side, layer string, line *curve.Path) drawing.Mark {
		return drawing.Mark{Kind: kind, Side: side, Layer: layer, Subject: layer + ".front." + fmt.Sprint(line.Length()), Line: line}
	}
	return &drawing.Panel{
		Kind: drawing.Laid, Subject: "inside.front", Title: "lining.front in shell.front", Point: Point,
		Box: curve.Box{Max: at(wide, high)},
		Marks: []drawing.Mark{
			mark(drawing.StitchLine, model.Outer, "shell", curve.Polyline(at(0, 0), at(wide, 0), at(wide, high), at(0, high), at(0, 0))),
			mark(drawing.StitchLine, model.Inner, "lining", curve.New(curve.Cubic(at(20, 30), at(wide, 60), at(0, high-60), at(wide-20, high-30)))),
			mark(drawing.CutLine, model.Inner, "lining", curve.New(curve.Arc(at(10, high/2), wide/2-10, high/3, 0, false, true, at(wide-10, high/2)))),
			{Kind: drawing.PieceName, Side: model.Outer, Layer: "shell", At: at(wide/2, high/2), Text: []string{"shell.front", "cut 1 on the fold"}, Bold: true},
			{Kind: drawing.Found, Severity: "error", Sign: drawing.Tag, At: at(wide, high/2), Dir: at(1, 0), Reach: 26, Numbers: []string{"1"}, Text: []string{"2.5 mm"}},
		},
	}
}

func seam() *drawing.Panel {
	return &drawing.Panel{
		Kind: drawing.Strip, Subject: "seam.side", Title: "seam.side", Facts: []string{"50.28 cm along 50.3 cm"}, Point: 1.2,
		Box: curve.Box{Min: at(-30, -30), Max: at(530, 80)},
		Marks: []drawing.Mark{
			{Kind: drawing.StitchLine, Side: model.Outer, Layer: "shell", Line: curve.Polyline(at(0, 0), at(502.8, 0))},
			{Kind: drawing.StitchLine, Side: model.Outer, Layer: "shell", Line: curve.Polyline(at(0, 48), at(503, 48))},
		},
	}
}

// job is one of everything.
func job(panels ...*drawing.Panel) Job {
	sheet := &drawing.Sheet{
		Title: "Understudy bodice", Name: "understudy-bodice", Size: "38",
		Layers: []drawing.Layer{{Name: "shell", Side: model.Outer, Cloth: "barathea"}, {Name: "lining", Side: model.Inner}},
		Panels: panels,
	}
	reduced := *sheet
	reduced.Panels = []*drawing.Panel{seam()}
	return Job{
		Title: sheet.Title, Name: sheet.Name, Size: sheet.Size, Ruling: "do not cut", Reasons: "1 error", Forbids: true,
		Advice: "Advice, not authority.", Tool: "understitch test",
		Findings: []Finding{{Number: 1, Severity: "error", Subject: "inside.front", Message: "lining.front is 2.5 mm wider than shell.front.", Figure: "2.5 mm", Place: "bodice.garment.hcl:12"}},
		Full:     sheet, Reduced: &reduced,
		Cut: &drawing.CutSheet{
			Layers: []drawing.CutLayer{{Name: "shell", Cloth: "barathea", Pieces: []drawing.CutPiece{
				{Name: "front", How: "cut 1 on the fold", Allowances: []string{"1.2 cm: side, shoulder"}, Notches: []string{"side: waist at 21.2 cm"}},
				{Name: "back", How: "cut 2, a mirrored pair", ByTape: true},
			}}},
			Lengths:  []drawing.CutLength{{Subject: "closure.gusset", What: "tape snap-19", Length: "7.6 cm", How: "4 fasteners"}},
			Problems: []string{"closure.neck: its edge is not drawn"},
		},
	}
}

// printed writes a job to a file.
func printed(t *testing.T, j Job, paper string) string {
	t.Helper()
	p, err := PaperNamed(paper)
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, Write(&b, j, p))
	file := filepath.Join(t.TempDir(), "x.pdf")
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o600))
	return file
}

// poppler runs one of poppler's programs and returns what it prints.
func poppler(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s, of the package poppler-utils, is not installed", name)
	}
	out, err := exec.Command(name, args...).Output()
	require.NoError(t, err)
	return string(out)
}

// words are those of a file, in the order in which they are read.
func words(t *testing.T, file string) string {
	return poppler(t, "pdftotext", "-raw", file, "-")
}

func TestPagesAreOfThePaper(t *testing.T) {
	for _, p := range Papers() {
		t.Run(p.Name, func(t *testing.T) {
			info := poppler(t, "pdfinfo", "-f", "1", "-l", "99", printed(t, job(rectangle(400, 600)), p.Name))
			n := 0
			for line := range strings.Lines(info) {
				var page int
				var wide, high float64
				if _, err := fmt.Sscanf(line, "Page %d size: %g x %g", &page, &wide, &high); err != nil {
					continue
				}
				n++
				if wide > high {
					wide, high = high, wide
				}
				require.InDelta(t, p.Wide, wide*Point, 0.01, "page %d", page)
				require.InDelta(t, p.High, high*Point, 0.01, "page %d", page)
			}
			require.Positive(t, n)
			if p.Name == "a0" {
				require.Equal(t, 1, n, "an A0 sheet has room for all of it")
			} else {
				require.Greater(t, n, 4)
			}
		})
	}
}

func TestSameBytesEachTime(t *testing.T) {
	one, err := os.ReadFile(printed(t, job(rectangle(400, 600)), "a4"))
	require.NoError(t, err)
	for range 3 {
		other, err := os.ReadFile(printed(t, job(rectangle(400, 600)), "a4"))
		require.NoError(t, err)
		require.True(t, bytes.Equal(one, other))
	}
	require.Equal(t, 4, bytes.Count(one, []byte("/Type /OCG")), "two layers, levels and findings")
}

func TestWhatIsSaid(t *testing.T) {
	text := words(t, printed(t, job(rectangle(400, 600)), "a4"))
	for _, want := range []string{
		"Understudy bodice", "size 38", "do not cut", "1 error", "10 cm", "4 in", "actual size",
		"lining.front is 2.5 mm wider than shell.front.", "bodice.garment.hcl:12",
		"Cut sheet", "shell: barathea", "cut 1 on the fold", "1.2 cm: side, shoulder", "side: waist at 21.2 cm",
		"cut 2, a mirrored pair", "by the tape", "closure.gusset", "tape snap-19", "7.6 cm", "4 fasteners", "closure.neck: its edge is not drawn",
		"seam.side", "50.28 cm along 50.3 cm", "lining.front in shell.front, tile B2", "shell (barathea), stitch line", "2.5 mm",
	} {
		require.Contains(t, text, want)
	}
	require.NotRegexp(t, `\b(19|20)\d\d\b`, text, "no date")
	require.NotContains(t, text, "may be cut")
}

func TestSeparate(t *testing.T) {
	piece := rectangle(100, 100)
	piece.Kind, piece.Title, piece.Repeats = drawing.Alone, "shell.front", true
	inside := rectangle(100, 100)
	j := job(inside, piece)
	require.Equal(t, []*drawing.Panel{inside}, j.panels())
	j.Separate = true
	require.Equal(t, []*drawing.Panel{piece}, j.panels())
}

func TestNothingAtFullScaleOfTapeMeasures(t *testing.T) {
	bars := &drawing.Panel{Kind: drawing.Laid, Title: "by the tape", Point: Point, Marks: []drawing.Mark{
		{Kind: drawing.StitchLine, Line: curve.Polyline(at(0, 0), at(188, 0))},
		{Kind: drawing.StitchLine, Line: curve.Polyline(at(0, 30), at(250, 30))},
	}}
	j := job(bars)
	require.Empty(t, j.panels())
	j.Reduced.Panels = append(j.Reduced.Panels, bars)
	require.Contains(t, words(t, printed(t, j, "a4")), "by the tape")
}

func TestUnknownPaper(t *testing.T) {
	_, err := PaperNamed("foolscap")
	require.EqualError(t, err, `there is no paper "foolscap"; there is a4, letter, a3, a0`)
	p, err := PaperNamed("A4")
	require.NoError(t, err)
	require.Equal(t, 297.0, p.High)
}
