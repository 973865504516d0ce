package fullscale

import (
	"os"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestTitlesOfManyScripts(t *testing.T) {
	for _, title := range []string{"Gehrock für den Ausrufer", "Φόρεμα χορού", "Платье для катка", "Şalvar, ğ and ő", "Café, from two signs: Cafe\u0301"} {
		j := job(rectangle(100, 100))
		j.Title = title
		text := words(t, printed(t, j, "a4"))
		require.Contains(t, text, shown(title))
	}
}

func TestHostileTitles(t *testing.T) {
	for name, title := range map[string]string{
		"markup":        "<script>alert(1)</script>",
		"escapes":       "red \x1b[31m bell \a null \x00 end",
		"lines":         "one\r\ntwo\tthree",
		"direction":     "abc \u202etxt.exe",
		"PDF":           ") Tj ET Q (",
		"backslash":     `\) \\ \n \377`,
		"signs":         "needle 🪡 and 𝔉raktur",
		"no text":       "\xff\xfe broken \xc3",
		"endless":       strings.Repeat("m", 4000),
		"endless words": strings.Repeat("ruffle ", 700),
		"none":          "",
	} {
		t.Run(name, func(t *testing.T) {
			j := job(rectangle(400, 600))
			j.Title, j.Name, j.Size = title, title, title
			j.Findings[0].Message, j.Findings[0].Place = title, title
			j.Cut.Layers[0].Pieces[0].Name = title
			j.Cut.Layers[0].Pieces[0].Notches = []string{title}
			j.Full.Panels[0].Title = title
			j.Full.Panels[0].Facts = []string{title}
			j.Full.Panels[0].Marks[3].Text = []string{title}
			j.Full.Layers[0].Name = title
			file := printed(t, j, "a4")
			raw, err := os.ReadFile(file)
			require.NoError(t, err)
			require.NotContains(t, string(raw), "/JavaScript")
			text := words(t, file)
			for _, r := range text {
				require.False(t, unicode.IsControl(r) && r != '\n' && r != '\f', "%q", r)
				require.NotEqual(t, '\u202e', r)
			}
			require.Contains(t, text, "do not cut")
			if name == "markup" || name == "PDF" {
				require.Contains(t, text, title)
			}
			poppler(t, "pdftoppm", "-r", "20", "-f", "1", "-l", "2", file, t.TempDir()+"/x")
		})
	}
}

func TestManyFindings(t *testing.T) {
	j := job(rectangle(100, 100))
	for i := range 10000 {
		j.Findings = append(j.Findings, Finding{Number: i + 2, Severity: "warning", Subject: "seam.side", Message: "one side is longer than the other."})
	}
	file := printed(t, j, "a4")
	info, err := os.Stat(file)
	require.NoError(t, err)
	require.Less(t, info.Size(), int64(1<<20))
	require.Contains(t, words(t, file), "and 9701 more, which the report lists")
}

func TestWrap(t *testing.T) {
	p, err := PaperNamed("a4")
	require.NoError(t, err)
	w := newWriter(p)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(0, 200, -1).Draw(t, "text")
		wide := rapid.Float64Range(20, 200).Draw(t, "wide")
		lines := w.wrap(9, wide, text)
		for _, line := range lines {
			require.LessOrEqual(t, w.width(9, line), wide+1e-9)
		}
		bare := func(s string) string { return strings.Join(strings.Fields(s), "") }
		require.Equal(t, bare(shown(text)), bare(strings.Join(lines, "")), "nothing is lost")
		require.LessOrEqual(t, w.width(9, w.fitted(9, wide, text)), wide)
	})
}
