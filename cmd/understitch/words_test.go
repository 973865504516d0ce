package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/demo"
)

// overprints lists the words and tags of a page's drawings that lie on each
// other, stick out of their drawing or touch its frame.
const overprints = `(() => {
	const out = [], box = e => e.getBoundingClientRect();
	const hit = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 3;
	for (const figure of document.querySelectorAll('figure.panel')) {
		const svg = figure.querySelector('svg'), frame = box(svg), name = figure.dataset.subject + ': ';
		const words = [...svg.querySelectorAll('text:not(.number), g.found .body')].filter(e => e.getClientRects().length > 0);
		words.forEach((a, i) => {
			const r = box(a);
			if (r.left < frame.left + 2 || r.right > frame.right - 2 || r.top < frame.top || r.bottom > frame.bottom) out.push(name + a.textContent + ' at the frame');
			words.slice(0, i).forEach(b => { if (hit(r, box(b))) out.push(name + a.textContent + ' on ' + b.textContent); });
		});
	}
	return out;
})()`

// The room that words are given suits a typeface that is there: nothing in the
// drawings of the wardrobe overprints on a telephone or on a desk, and the page
// does not grow wider than its screen.
func TestWordsInABrowser(t *testing.T) {
	b := newBrowser(t)
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, demo.Files()))
	specs, err := filepath.Glob(filepath.Join(dir, "faulty", "*"+suffix))
	require.NoError(t, err)
	require.NotEmpty(t, specs)
	for _, spec := range specs {
		t.Run(filepath.Base(spec), func(t *testing.T) {
			file := filepath.Join(dir, "page.html")
			status, _, stderr := tryRun(t, "overlay", spec, "--output", file)
			require.Equal(t, 0, status, stderr)
			for _, width := range []int64{360, 390, 768, 1440} {
				b.open(t, file, width)
				require.Empty(t, eval[[]string](t, b, overprints), "%d pixels wide", width)
				require.LessOrEqual(t, eval[int64](t, b, `document.documentElement.scrollWidth`), width)
			}
		})
	}
}
