package main

import (
	"fmt"
	"strings"
)

// most is how much one dart may take in, in millimetres. Put the figure of your
// house here.
const most = 40

// Judge looks at every dart of the garment: one that takes in too much makes a
// point that no iron presses flat, and is better made two.
func Judge(t Table, a *Answer) {
	for _, l := range t {
		if l.Figure != "intake" || !strings.Contains(l.Address, ".dart.") {
			continue
		}
		intake, ok := l.Number()
		switch {
		case !ok:
			a.NotPossible("dart-intake", l.Address, "what the dart takes in is not a number")
		case intake > most:
			a.Found("dart-intake", "warning", l.Address, intake, most, "mm",
				fmt.Sprintf("this dart takes in %.1f cm; from %.1f cm on make two of it", intake/10, most/10.0))
		default:
			a.Passed("dart-intake", l.Address, intake, most, "mm")
		}
	}
}
