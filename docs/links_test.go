package docs_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	link    = regexp.MustCompile(`\]\(([^)\s]+)\)`)
	heading = regexp.MustCompile(`(?m)^#+ (.+)$`)
	unslug  = regexp.MustCompile(`[^\p{L}\p{N}_\- ]`)
)

// Every link of a page, but those out into the world, leads to a file that is
// there and to a heading that it has.
func TestLinks(t *testing.T) {
	held := 0
	for _, page := range append(pages(t), filepath.Join("..", "README.md")) {
		for _, m := range link.FindAllStringSubmatch(running(t, page), -1) {
			file, anchor, _ := strings.Cut(m[1], "#")
			if strings.Contains(file, "://") {
				continue
			}
			held++
			target := page
			if file != "" {
				target = filepath.Join(filepath.Dir(page), filepath.FromSlash(file))
				require.FileExists(t, target, "%s: %s", page, m[1])
			}
			if anchor != "" {
				require.Contains(t, anchors(t, target), anchor, "%s: %s", page, m[1])
			}
		}
	}
	require.Greater(t, held, 30)
}

// running is the text of a page without its examples.
func running(t *testing.T, page string) string {
	t.Helper()
	src, err := os.ReadFile(page)
	require.NoError(t, err)
	return regexp.MustCompile("(?ms)^```.*?^```$").ReplaceAllString(string(src), "")
}

// anchors are the names under which a page's headings are linked to.
func anchors(t *testing.T, page string) []string {
	t.Helper()
	var out []string
	for _, m := range heading.FindAllStringSubmatch(running(t, page), -1) {
		out = append(out, strings.ReplaceAll(unslug.ReplaceAllString(strings.ToLower(m[1]), ""), " ", "-"))
	}
	return out
}
