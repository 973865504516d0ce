package layers

import (
	"fmt"
	"strings"
	"testing"

	"understitch/rules/ruletest"
)

// shifted is a shell and a lining whose side seam lies 2 cm further back: the
// lining's front is wider than the shell's and its back narrower.
const shifted = `
garment "shifted" { unit = "cm" }
level "bust"  { y = 0 }
level "waist" { y = 18 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 0]] }
    edge "side"   { line = [[22, 0], [18, 18]] }
    edge "hem"    { line = [[18, 18], [0, 18]] }
    edge "centre" { line = [[0, 18], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, 0], [22, 0]] }
    edge "side"   { line = [[22, 0], [18, 18]] }
    edge "hem"    { line = [[18, 18], [0, 18]] }
    edge "centre" { line = [[0, 18], [0, 0]] }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    fold = centre
    edge "top"    { line = [[0, 0], [24, 0]] }
    edge "side"   { line = [[24, 0], [20, 18]] }
    edge "hem"    { line = [[20, 18], [0, 18]] }
    edge "centre" { line = [[0, 18], [0, 0]] }
  }
  piece "back" {
    fold = centre
    edge "top"    { line = [[0, 0], [20, 0]] }
    edge "side"   { line = [[20, 0], [%s, 18]] }
    edge "hem"    { line = [[%s, 18], [0, 18]] }
    edge "centre" { line = [[0, 18], [0, 0]] }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
seam "lining-side" { join = [lining.front.side, lining.back.side] }
inside "half" { # fault inner-within-outer
  outer = [shell.front, shell.back]
  inner = [lining.front, lining.back]
}
`

func TestPiecesTakenTogether(t *testing.T) {
	for _, c := range []struct{ name, waist, want string }{
		{"the side seam lies elsewhere, all else agrees", "16", ""},
		{"and the lining is larger in all", "16.7", " error -7mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			want := ""
			if c.want != "" {
				want = "# fault inner-within-outer" + c.want
			}
			src := fmt.Sprintf(shifted, c.waist, c.waist)
			src = strings.Replace(src, "# fault inner-within-outer", want, 1)
			ruletest.Spec(t, InnerWithinOuter, src)
		})
	}
}
