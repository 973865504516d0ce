package sewing_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/modeltest"
	"understitch/model/sewing"
)

// sleeve is a set-in sleeve, each of its lines drawn the one way or the other.
type sleeve struct {
	front, back, cap, under bool // drawn against the usual way
	backFirst, capFirst     bool // how the join lists them
	mirrored, twoPiece      bool
	paper                   bool
	frontAt                 float64 // the front notch of the body, from the underarm
	notches                 bool    // front and back; else only the crown's
}

const frontArmhole, backArmhole, capLength = 210.0, 225.0, 455.0

func (s sleeve) spec() string {
	var b strings.Builder
	line := func(name string, turned bool, from, to string, length float64) string {
		if s.paper {
			return fmt.Sprintf("edge %q { length = %g }\n", name, length)
		}
		if turned {
			from, to = to, from
		}
		return fmt.Sprintf("edge %q { line = [%s, %s] }\n", name, from, to)
	}
	notch := func(name, on, kind string, at, length float64, turned bool) {
		if turned {
			at = length - at
		}
		fmt.Fprintf(&b, "notch %q {\n on = %s\n at = %g\n kind = %q\n}\n", name, on, at, kind)
	}
	fmt.Fprint(&b, "garment \"trial\" { unit = \"mm\" }\nlevel \"bust\" { y = 300 }\nlayer \"shell\" {\nside = \"outer\"\n")
	// A body piece is a box: its armhole one side, shoulder above, side seam below.
	body := func(name string, length float64, turned bool) {
		fmt.Fprintf(&b, "piece %q {\n", name)
		top, low := "[100, 0]", fmt.Sprintf("[100, %g]", length)
		edges := []string{
			line("shoulder", false, "[0, 0]", top, 100), line("armhole", false, top, low, length),
			line("side", false, low, "[100, 600]", 600-length), line("hem", false, "[100, 600]", "[0, 600]", 100), line("centre", false, "[0, 600]", "[0, 0]", 600),
		}
		if turned { // the whole outline the other way round
			edges = []string{
				line("centre", false, "[0, 0]", "[0, 600]", 600), line("hem", false, "[0, 600]", "[100, 600]", 100),
				line("side", false, "[100, 600]", low, 600-length), line("armhole", false, low, top, length), line("shoulder", false, top, "[0, 0]", 100),
			}
		}
		fmt.Fprint(&b, strings.Join(edges, ""))
	}
	body("front", frontArmhole, s.front)
	if s.notches {
		notch("front", "armhole", "single", frontArmhole-s.frontAt, frontArmhole, s.front)
	}
	fmt.Fprint(&b, "}\n")
	body("back", backArmhole, s.back)
	if s.notches {
		notch("back", "armhole", "double", backArmhole-95, backArmhole, s.back)
	}
	fmt.Fprint(&b, "}\n")
	// The cap runs from the front underarm to the back one.
	tube := func(name string, length float64, turned bool) {
		fmt.Fprintf(&b, "piece %q {\nlevels = {}\n", name)
		right, down := length, 400.0
		if s.mirrored {
			down = -400
		}
		a, z := "[0, 0]", fmt.Sprintf("[%g, 0]", right)
		low, lowZ := fmt.Sprintf("[0, %g]", down), fmt.Sprintf("[%g, %g]", right, down)
		edges := []string{line("cap", false, a, z, length), line("rear", false, z, lowZ, 400), line("hem", false, lowZ, low, length), line("fore", false, low, a, 400)}
		if turned {
			edges = []string{line("fore", false, a, low, 400), line("hem", false, low, lowZ, length), line("rear", false, lowZ, z, 400), line("cap", false, z, a, length)}
		}
		fmt.Fprint(&b, strings.Join(edges, ""))
	}
	seams := ""
	if s.twoPiece {
		// The top sleeve runs from 60 to 380 of the cap, the under sleeve over the rest.
		tube("top", 320, s.cap)
		if s.notches {
			notch("front", "cap", "single", 90-60, 320, s.cap)
			notch("back", "cap", "double", capLength-95-60, 320, s.cap)
		}
		notch("crown", "cap", "single", 228-60, 320, s.cap)
		fmt.Fprint(&b, "}\n")
		tube("under", capLength-320, s.under)
		notch("side", "cap", "single", capLength-380, capLength-320, s.under)
		fmt.Fprint(&b, "}\n")
		seams = "seam \"rear\" { join = [shell.top.rear, shell.under.fore] }\nseam \"fore\" { join = [shell.top.fore, shell.under.rear] }\n"
	} else {
		tube("sleeve", capLength, s.cap)
		if s.notches {
			notch("front", "cap", "single", 90, capLength, s.cap)
			notch("back", "cap", "double", capLength-95, capLength, s.cap)
		}
		notch("crown", "cap", "single", 222, capLength, s.cap)
		fmt.Fprint(&b, "}\n")
		seams = "seam \"underarm\" { join = [shell.sleeve.fore, shell.sleeve.rear] }\n"
	}
	armhole, cap := "[shell.front.armhole, shell.back.armhole]", "shell.sleeve.cap"
	if s.backFirst {
		armhole = "[shell.back.armhole, shell.front.armhole]"
	}
	if s.twoPiece {
		cap = "[shell.top.cap, shell.under.cap]"
		if s.backFirst != s.front {
			cap = "[shell.under.cap, shell.top.cap]"
		}
	}
	if s.capFirst {
		armhole, cap = cap, armhole
	}
	fmt.Fprintf(&b, "}\nseam \"shoulder\" { join = [shell.front.shoulder, shell.back.shoulder] }\nseam \"side\" { join = [shell.front.side, shell.back.side] }\n%s", seams)
	fmt.Fprintf(&b, "seam \"armhole\" {\njoin = [%s, %s]\nEASE\n}\n", armhole, cap)
	return b.String()
}

// every way in which the same sleeve can be written down.
func everySleeve(t *testing.T, do func(t *testing.T, s sleeve)) {
	for i := range 1 << 9 {
		bit := func(n int) bool { return i>>n&1 == 1 }
		do(t, sleeve{front: bit(0), back: bit(1), cap: bit(2), under: bit(3), backFirst: bit(4), capFirst: bit(5), mirrored: bit(6), twoPiece: bit(7), paper: bit(8)})
	}
}

// offs are how far each notch of the body is from its partner.
func offs(t *testing.T, s sleeve) (map[string]string, float64, error) {
	g := modeltest.Build(t, strings.Replace(s.spec(), "EASE", "ease = [-30, 30]", 1))
	j := g.JoinOf(g.Seams[len(g.Seams)-1])
	a, b, err := sewing.Walks(g, j)
	if err != nil {
		return nil, 0, err
	}
	pairs, onlyA, onlyB := sewing.PairNotches(a, b)
	out := map[string]string{}
	for _, p := range pairs {
		off := sewing.Misplaced(p.Off(), a.Length-b.Length)
		out[p.A.Notch.Name] = fmt.Sprintf("%s %.1f", p.B.Notch.Name, max(off, -off))
	}
	alone := ""
	for _, n := range append(onlyA, onlyB...) {
		alone += " " + n.Notch.Name
	}
	out["alone"] = alone
	return out, max(a.Length-b.Length, b.Length-a.Length), nil
}

// A ring has no first edge and no direction: however the lines are drawn and in
// whichever order they are listed, the sleeve is laid into the armhole the same.
func TestASetInSleeveIsLaidTheSameHoweverItIsWritten(t *testing.T) {
	everySleeve(t, func(t *testing.T, s sleeve) {
		s.notches = true
		for _, at := range []float64{90, 60, 120} {
			s.frontAt = at
			got, longer, err := offs(t, s)
			var either *sewing.EitherWay
			if at != 90 && s.paper && errors.As(err, &either) {
				continue // without heights an armhole may be as like itself upside down
			}
			require.NoError(t, err, "%+v", s)
			require.InDelta(t, capLength-frontArmhole-backArmhole, longer, 1e-9)
			sound := got["front"] == "front 0.0" && got["back"] == "back 0.0"
			require.Equal(t, at == 90, sound, "%+v: %v", s, got)
		}
	})
}

// With the crown's notch alone a sleeve may go in either way round.
func TestASleeveWithoutFrontAndBackNotchesAsksForThem(t *testing.T) {
	everySleeve(t, func(t *testing.T, s sleeve) {
		if s.twoPiece {
			return
		}
		_, _, err := offs(t, s)
		var either *sewing.EitherWay
		require.True(t, errors.As(err, &either), "%+v", s)
	})
}
