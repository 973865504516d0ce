package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/demo"
)

// faultyRinkDress writes the page of the faulty rink dress and tells which
// findings must be on it.
func faultyRinkDress(t *testing.T) (file string, found []string) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, demo.Files()))
	spec := filepath.Join(dir, "faulty", "rink-dress.faulty"+suffix)
	file = filepath.Join(dir, "page.html")
	status, _, stderr := tryRun(t, "overlay", spec, "--output", file)
	require.Equal(t, 0, status, stderr)
	_, out, _ := tryRun(t, "check", spec, "--format", "json")
	var doc struct {
		Garments []struct {
			Findings []struct{ Subject, Message string }
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &doc))
	for _, f := range doc.Garments[0].Findings {
		found = append(found, f.Message)
	}
	require.NotEmpty(t, found)
	return file, found
}

func tryRun(t *testing.T, args ...string) (status int, stdout, stderr string) {
	t.Helper()
	var out, err bytes.Buffer
	status = run(t.Context(), args, strings.NewReader(""), &out, &err)
	return status, out.String(), err.String()
}

func TestPageInABrowser(t *testing.T) {
	b := newBrowser(t)
	file, found := faultyRinkDress(t)
	b.open(t, file, 1400)

	t.Run("every finding is listed and marked", func(t *testing.T) {
		require.Equal(t, found, eval[[]string](t, b, `[...document.querySelectorAll('.finding .message')].map(e => e.textContent)`))
		require.Empty(t, eval[[]string](t, b, `[...document.querySelectorAll('.finding')].map(e => e.dataset.number)
			.filter(n => !document.querySelector('figure g.found[data-number~="'+n+'"]') && !document.querySelector('.elsewhere [data-number="'+n+'"]'))`))
	})
	t.Run("a click on a finding goes to the drawing and to the spec", func(t *testing.T) {
		b.do(t, chromedp.Click(chromedp.CSS(`#g1-f2 .open`)))
		require.True(t, eval[bool](t, b, `document.querySelector('figure g.found[data-number~="2"]').classList.contains('picked')`))
		require.True(t, onScreen(t, b, `figure g.found[data-number~="2"]`))
		require.Contains(t, eval[string](t, b, `document.querySelector('#g1-f2 .excerpt .meant').textContent`), "clearance = { bust")
		b.do(t, chromedp.Click(chromedp.CSS(`#g1-f2 a.line`)))
		require.True(t, onScreen(t, b, `.source li.picked`))
	})
	t.Run("a click on a tag goes to the list", func(t *testing.T) {
		press(t, b, `document.querySelector('figure g.found[data-number="3"] .body').dispatchEvent(new MouseEvent('click', {bubbles: true}))`)
		require.Equal(t, "3", eval[string](t, b, `document.querySelector('.finding.picked').dataset.number`))
	})
	t.Run("the keyboard alone will do", func(t *testing.T) {
		b.do(t, chromedp.KeyEvent("n"))
		require.Equal(t, "4", eval[string](t, b, `document.querySelector('.finding.picked').dataset.number`))
		b.do(t, chromedp.KeyEvent("p"), chromedp.KeyEvent("p"))
		require.Equal(t, "2", eval[string](t, b, `document.querySelector('.finding.picked').dataset.number`))
		require.Equal(t, "true", eval[string](t, b, `document.activeElement.getAttribute('aria-current')`))
		b.do(t, chromedp.Focus(chromedp.CSS(`figure g.found[data-number="1"]`)), chromedp.KeyEvent("\r"))
		require.Equal(t, "1", eval[string](t, b, `document.querySelector('.finding.picked').dataset.number`))
		before := eval[float64](t, b, `document.querySelector('figure path.cut').getBoundingClientRect().width`)
		b.do(t, chromedp.KeyEvent("+"))
		require.Greater(t, eval[float64](t, b, `document.querySelector('figure path.cut').getBoundingClientRect().width`), 1.4*before)
		b.do(t, chromedp.KeyEvent("0"))
		require.InDelta(t, before, eval[float64](t, b, `document.querySelector('figure path.cut').getBoundingClientRect().width`), 1)
	})
	t.Run("another size is another drawing", func(t *testing.T) {
		const line = `document.querySelector('figure path.stitch').getAttribute('d')`
		first := eval[string](t, b, line)
		b.do(t, chromedp.Focus(chromedp.CSS(`.sizes input:checked`)), chromedp.KeyEvent("\u0303")) // arrow to the right
		require.Equal(t, "38", eval[string](t, b, `document.querySelector('.sheet').dataset.size`))
		require.NotEqual(t, first, eval[string](t, b, line))
		require.Contains(t, eval[string](t, b, `document.querySelector('.cutsheet h2').textContent`), "size 38")
		press(t, b, `document.querySelector('.sizes input[value="36"]').click()`)
		require.Equal(t, first, eval[string](t, b, line), "and back")
	})
	t.Run("layers and marks can be hidden", func(t *testing.T) {
		const shown = `[...document.querySelectorAll('figure path.stitch.inner')].filter(e => e.getClientRects().length > 0).length`
		require.Positive(t, eval[int](t, b, shown))
		press(t, b, `document.querySelector('.layers input[value="brief"]').click()`)
		require.Zero(t, eval[int](t, b, shown))
		press(t, b, `document.querySelector('.marks input[value="found"]').click()`)
		require.Zero(t, eval[int](t, b, `[...document.querySelectorAll('figure g.found')].filter(e => e.getClientRects().length > 0).length`))
	})
	t.Run("nothing sticks out on a phone", func(t *testing.T) {
		b.open(t, file, 390)
		require.LessOrEqual(t, eval[int](t, b, `document.documentElement.scrollWidth`), 390)
		press(t, b, `document.querySelector('#g1-f2 .open').click()`)
		require.True(t, onScreen(t, b, `figure g.found[data-number~="2"]`))
		require.Contains(t, eval[string](t, b, `document.querySelector('.bar.on p').textContent`), "brief.front is 2.5 mm wider")
	})
	b.wellBehaved(t)
}

// A finding that shows in one size only is dimmed in the others, and picking it
// brings up its size.
func TestFindingOfOneSizeInABrowser(t *testing.T) {
	b := newBrowser(t)
	dir := t.TempDir()
	spec := filepath.Join(dir, "sizes"+suffix)
	require.NoError(t, os.WriteFile(spec, []byte(oneSize), 0o600))
	file := filepath.Join(dir, "page.html")
	status, _, stderr := tryRun(t, "overlay", spec, "--output", file)
	require.Equal(t, 0, status, stderr)
	b.open(t, file, 1400)
	const shown = `document.querySelector('.sheet').dataset.size`
	const row = `[...document.querySelectorAll('.finding')].find(e => e.textContent.includes('seam.side'))`
	require.Equal(t, "40", eval[string](t, b, shown), "where the error is worst")
	require.False(t, eval[bool](t, b, row+`.classList.contains('unseen')`))
	press(t, b, `document.querySelector('.sizes input[value="36"]').click()`)
	require.Equal(t, "36", eval[string](t, b, shown))
	require.True(t, eval[bool](t, b, row+`.classList.contains('unseen')`))
	press(t, b, row+`.querySelector('.open').click()`)
	require.Equal(t, "40", eval[string](t, b, shown))
	b.wellBehaved(t)
}

const oneSize = `garment "sizes" {
  unit  = "cm"
  sizes = ["36", "38", "40"]
}
size "36" { waist_girth = 66 }
size "38" { waist_girth = 70 }
size "40" { waist_girth = 74 }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = 60 }
  }
  piece "back" {
    edge "side" { length = body.waist_girth > 72 ? 61 : 60 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`

// A title and a file name that try to be more than words are shown as they are.
func TestHostileNamesInABrowser(t *testing.T) {
	b := newBrowser(t)
	dir := t.TempDir()
	spec := filepath.Join(dir, "it's \"quoted\" <img src=x onerror=alert(2)>\n\x1b[31m"+suffix)
	text := strings.Replace(dressedUp, "TITLE", `<script>alert(1)</script>`, 1)
	if err := os.WriteFile(spec, []byte(text), 0o600); err != nil {
		t.Skip("this file system has no such names: ", err)
	}
	file := filepath.Join(dir, "page.html")
	status, _, stderr := tryRun(t, "overlay", spec, "--output", file)
	require.Equal(t, 0, status, stderr)
	b.open(t, file, 1400)
	require.Equal(t, `<script>alert(1)</script>`, eval[string](t, b, `document.querySelector('h1').textContent`))
	require.Equal(t, 1, eval[int](t, b, `document.scripts.length`))
	require.Zero(t, eval[int](t, b, `document.images.length`))
	b.wellBehaved(t)
	picture := filepath.Join(dir, "picture.svg")
	status, _, stderr = tryRun(t, "overlay", spec, "--output", picture)
	require.Equal(t, 0, status, stderr)
	b.open(t, picture, 1400)
	require.Equal(t, `<script>alert(1)</script>`, eval[string](t, b, `document.querySelector('text').textContent`))
	require.Zero(t, eval[int](t, b, `document.querySelectorAll('script').length`))
	b.wellBehaved(t)
}

const dressedUp = `garment "dressed-up" {
  title = "TITLE"
  unit  = "cm"
}
layer "shell" {
  side = "outer"
  piece "front" {
    allowance = 1
    edge "top" { line = [[0, 0], [20, 0]] }
    edge "side" { line = [[20, 0], [20, 30]] }
    edge "hem" { line = [[20, 30], [0, 30]] }
    edge "centre" { line = [[0, 30], [0, 0]] }
  }
}
`
