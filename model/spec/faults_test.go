package spec

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
)

// sound is a whole garment of one layer and one piece. Cases put faulty lines
// in place of its marks; each mark is a line of its own, so that the lines
// keep their numbers.
const sound = `garment "g" {
  unit = "cm"
#head
}
body {
  waist_girth = 70
  bust_girth  = 88
}
draft {
  quarter = body.bust_girth / 4
#draft
}
level "waist" { y = 10 }
layer "shell" {
  side = "outer"
#layer
  piece "front" {
#piece
    points {
      a = [0, 0]
      b = [20, 0]
#points
    }
    edge "top" { line = [a, b] }
    edge "side" { line = [b, [20, 30]] }
    edge "low" { line = [[20, 30], a] }
#edge
  }
}
#end
`

// with puts lines in place of a mark of the sound garment.
func with(mark, text string) string {
	if mark == "" {
		return text
	}
	return strings.Replace(sound, mark+"\n", text+"\n", 1)
}

// everything reads a spec and builds its base garment, and gives all that was
// said.
func everything(src string, h *House) []model.Diagnostic {
	d, diags := Read("x.garment.hcl", []byte(src), h)
	if d == nil {
		return diags
	}
	_, more := d.Garment("")
	return append(diags, more...)
}

func told(diags []model.Diagnostic) string {
	var lines []string
	for _, d := range diags {
		text := fmt.Sprintf("%d:%d %s", d.Place.Start.Line, d.Place.Start.Column, d.Summary)
		if d.Severity != "error" {
			text = d.Severity + " " + text
		}
		if d.Detail != "" {
			text += " | " + d.Detail
		}
		lines = append(lines, text)
	}
	return strings.Join(lines, "\n")
}

func TestSoundIsSound(t *testing.T) { require.Empty(t, everything(sound, nil)) }

var update = flag.Bool("update", false, "write the files of what is expected anew")

// Each case of testdata/faults.txt has a name, lines to put in place of a mark
// of the sound garment (or a file of its own), and all that is said about them.
func TestFaults(t *testing.T) {
	const file = "testdata/faults.txt"
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	var anew strings.Builder
	for _, c := range strings.Split("\n"+string(src), "\n== ")[1:] {
		head, want, _ := strings.Cut(c, "\n-- said\n")
		name, rest, _ := strings.Cut(head, "\n-- ")
		mark, text, _ := strings.Cut(rest, "\n")
		if mark == "file" {
			mark = ""
		} else {
			require.Contains(t, sound, mark, name)
		}
		got := told(everything(with(mark, text), nil))
		t.Run(name, func(t *testing.T) {
			if !*update {
				require.Equal(t, strings.TrimSpace(want), got)
			}
		})
		fmt.Fprintf(&anew, "== %s\n-- said\n%s\n\n", head, got)
	}
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(anew.String()), 0o644))
	}
}
