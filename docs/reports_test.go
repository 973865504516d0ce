package docs_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/require"

	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/inspect"
)

// A report that is quoted below a garment is what the rules find in it: every
// finding it shows is found with that message, nothing that is found is left out,
// and its verdict agrees. Only the figures of checks that passed are not held.
// With -update the reports are written anew; the text around them is still for a
// person to read.
func TestQuotedReports(t *testing.T) {
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	held := 0
	for _, page := range pages(t) {
		src, err := os.ReadFile(page)
		require.NoError(t, err)
		if *update {
			src = quoteAnew(t, page, src)
		}
		garment := ""
		for _, at := range anyBlock.FindAllSubmatchIndex(src, -1) {
			kind, text := string(src[at[2]:at[3]]), string(src[at[4]:at[5]])
			if kind == "hcl" {
				garment = changed(garment, text)
				continue
			}
			if !strings.HasPrefix(text, "$ understitch check ") || garment == housed {
				continue
			}
			require.Regexp(t, fileMark, garment, "a report of no garment")
			line := 1 + strings.Count(string(src[:at[0]]), "\n")
			t.Run(fmt.Sprintf("%s:%d", page, line), func(t *testing.T) { holdReport(t, engine, garment, text) })
			held++
		}
	}
	require.Positive(t, held)
}

// changed is the garment that a reader has after one more example of a page: the
// whole one, or the last one with the blocks of a snippet put in the place of those
// of the same names, or added. Once there is a house on a page it is housed, and
// its reports are not held here.
func changed(garment, text string) string {
	m := snippetMark.FindStringSubmatch(text)
	switch file := fileMark.FindStringSubmatch(text); {
	case garment == housed, file != nil && file[1] == spec.HouseFile, m != nil && m[2] == "house":
		return housed
	case file != nil:
		return text
	case m == nil || m[1] != "" || garment == "":
		return garment
	}
	snippet := parsed(text)
	for _, b := range snippet.Blocks {
		put := text[b.TypeRange.Start.Byte:b.CloseBraceRange.End.Byte]
		body, end := parsed(garment), len(garment)
		if m[2] == "layer" {
			layer := body.Blocks[slices.IndexFunc(body.Blocks, func(x *hclsyntax.Block) bool { return x.Type == "layer" })]
			body, end = layer.Body, layer.CloseBraceRange.Start.Byte
			put = strings.ReplaceAll(put, "\n", "\n  ")
		}
		at := slices.IndexFunc(body.Blocks, func(old *hclsyntax.Block) bool {
			return old.Type == b.Type && slices.Equal(old.Labels, b.Labels)
		})
		if at < 0 {
			garment = garment[:end] + put + "\n" + garment[end:]
			continue
		}
		old := body.Blocks[at]
		garment = garment[:old.TypeRange.Start.Byte] + put + garment[old.CloseBraceRange.End.Byte:]
	}
	return garment
}

const housed = "a garment below a house"

func parsed(src string) *hclsyntax.Body {
	file, _ := hclsyntax.ParseConfig([]byte(src), "example", hcl.InitialPos)
	return file.Body.(*hclsyntax.Body)
}

func holdReport(t *testing.T, engine *rules.Engine, garment, text string) {
	t.Helper()
	in := &inspect.Inspector{Engine: engine, FS: fstest.MapFS{}}
	name := fileMark.FindStringSubmatch(garment)[1]
	report := in.Source(t.Context(), name, []byte(garment), inspect.Options{Today: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)})
	require.Empty(t, report.Diagnostics)
	shown := map[[2]string]bool{}
	for _, m := range subjectAndRule.FindAllStringSubmatch(text, -1) {
		shown[[2]string{m[1], m[2]}] = true
	}
	flat := strings.Join(strings.Fields(text), " ")
	forbidden := false
	for _, f := range append(slices.Clone(report.Result.Findings), report.Result.Waived...) {
		require.Contains(t, flat, f.Message)
		require.True(t, shown[[2]string{f.Subject, f.Rule.Name}], "%s (%s) is not shown", f.Subject, f.Rule.Name)
		forbidden = forbidden || f.Waiver == nil && f.Severity == rules.Error
	}
	require.Len(t, shown, len(report.Result.Findings)+len(report.Result.Waived), "more is shown than is found")
	require.Equal(t, forbidden, strings.Contains(text, "\nDO NOT CUT"))
	require.Equal(t, !forbidden, strings.Contains(text, "\nMAY BE CUT"))
	for _, n := range report.Result.NotPossible {
		require.Contains(t, text, n.Rule.Name)
	}
}

// quoteAnew puts what the program says now in the place of a page's reports.
func quoteAnew(t *testing.T, page string, src []byte) []byte {
	t.Helper()
	dir := t.TempDir()
	program := filepath.Join(dir, "understitch")
	out, err := exec.Command("go", "build", "-o", program, "../cmd/understitch").CombinedOutput()
	require.NoError(t, err, string(out))
	garment := ""
	src = anyBlock.ReplaceAllFunc(src, func(b []byte) []byte {
		m := anyBlock.FindSubmatch(b)
		kind, text := string(m[1]), string(m[2])
		if kind == "hcl" {
			garment = changed(garment, text)
			return b
		}
		if !strings.HasPrefix(text, "$ understitch check ") || garment == housed {
			return b
		}
		name := fileMark.FindStringSubmatch(garment)[1]
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(garment), 0o600))
		run := exec.Command(program, "check", name)
		run.Dir = dir
		said, _ := run.Output() // findings are no failure
		now := strings.TrimRight(string(said), "\n")
		if i := strings.LastIndex(now, "\n\n"); i > 0 && !strings.Contains(text, "\nAdvice, not authority") {
			now = now[:i] // the closing lines stand in one place only
		}
		return []byte("```text\n$ understitch check " + name + "\n" + now + "\n```")
	})
	require.NoError(t, os.WriteFile(page, src, 0o644))
	return src
}
