package spec

import (
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// A file may begin with a byte order mark and end its lines as some editors
// do, and places stay right.
func TestLineEndsAndMark(t *testing.T) {
	for name, src := range map[string]string{
		"line ends of two":  strings.ReplaceAll(sound, "\n", "\r\n"),
		"byte order mark":   "\ufeff" + sound,
		"no end to the end": strings.TrimSpace(sound),
		"tabs":              strings.ReplaceAll(sound, "  ", "\t"),
		"path over lines":   with("#edge", "edge \"z\" {\n path = <<END\n  M 0 0\n  L 1 2\n END\n}"),
	} {
		t.Run(name, func(t *testing.T) {
			require.Empty(t, everything(src, nil))
			bad := src + "\nseam \"s\" { join = 3 }"
			line := strings.Count(src, "\n") + 2
			require.Equal(t, fmt.Sprintf("%d:19 a seam has two sides", line),
				strings.Split(told(everything(bad, nil)), " |")[0])
		})
	}
}

// A document serves several goroutines at once; run with -race.
func TestDocumentIsShared(t *testing.T) {
	d := loadDress(t)
	var all sync.WaitGroup
	for _, size := range []string{"36", "38", "40", "36", "38", "40"} {
		all.Go(func() {
			if g, _ := d.Garment(size); g == nil || g.Size != size {
				t.Errorf("size %s was not built", size)
			}
		})
	}
	all.Wait()
}

// However many things are wrong, what is told of them comes soon.
func TestManyFaultsSoon(t *testing.T) {
	many := func(format string) string {
		var b strings.Builder
		for i := range 30_000 {
			fmt.Fprintf(&b, format, i)
		}
		return b.String()
	}
	for _, c := range []struct {
		name, src string
		faults    int
	}{
		{"blocks", sound + many("level \"a%d\" {}\n"), 1},
		{"attributes", sound + many("attr%d = 1\n"), maxFaults},
		{"names of nothing", with("#draft", many("v%[1]d = draft.w%[1]d\n")), maxFaults},
		{"edges of nothing", sound + "elastic \"e\" {\n length = 3\n edges = [" + many("shell.front.x%d, ") + "]\n}\n", maxFaults},
		{"figures by name", with("#layer", "ease = { "+many("a%d = 1, ")+"}"), 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			begun := time.Now()
			require.Len(t, everything(c.src, nil), c.faults)
			require.Less(t, time.Since(begun), 2*time.Minute, "a fault of the order of growth, not of the machine")
		})
	}
}
