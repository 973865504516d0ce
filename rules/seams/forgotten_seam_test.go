package seams_test

import (
	"testing"

	"understitch/rules/ruletest"
	"understitch/rules/seams"
)

// A side or underarm seam that was forgotten forbids cutting; a hem without a finish is
// worth a look.
func TestAForgottenSeam(t *testing.T) {
	const bodice = `garment "coat" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "armhole" { length = 45 }
    edge "rest" {
      length = 80
      finish = "bound"
    }
  }
  piece "sleeve" {
    levels = {}
    edge "cap"   { line = [[0, 14], [17, 0], [34, 14]] }
`
	const cap = `  }
}
seam "cap" {
  join = [shell.front.armhole, shell.sleeve.cap]
  ease = [null, null]
}
`
	for _, c := range []struct{ name, edges string }{
		{"an underarm seam by its lengths", `    edge "front" { line = [[34, 14], [32, 55]] } # fault edge-unused error 410mm
    edge "hem"   { line = [[32, 55], [2, 55]] } # fault edge-unused warning 300mm
    edge "back"  { line = [[2, 55], [0, 14]] } # fault edge-unused error 410mm
`},
		{"by its name, on paper", `    edge "underarm-front" { length = 41 } # fault edge-unused error 410mm
    edge "hem"   { length = 30 } # fault edge-unused warning 300mm
    edge "underarm-back"  { length = 38 } # fault edge-unused error 380mm
`},
		{"ends of a cuff, too short to tell", `    edge "front" { line = [[34, 14], [34, 20]] } # fault edge-unused warning 60mm
    edge "hem"   { line = [[34, 20], [0, 20]] } # fault edge-unused warning 340mm
    edge "back"  { line = [[0, 20], [0, 14]] } # fault edge-unused warning 60mm
`},
	} {
		t.Run(c.name, func(t *testing.T) { ruletest.Spec(t, &seams.EdgeUnused, bodice+c.edges+cap) })
	}
}

func TestADartWiderThanItsPlace(t *testing.T) {
	for _, c := range []struct{ name, piece string }{
		{"on paper", `edge "waist" { length = 40 }
    edge "rest" { length = 100 }
    dart "waist" { # fault dart-legs error 0.75
      on     = waist
      at     = 20
      intake = 30
    }`},
		{"on a long edge of paper", `edge "waist" { length = 90 }
    edge "rest" { length = 100 }
    dart "waist" { # fault dart-legs error 300mm
      on     = waist
      at     = 20
      intake = 30
    }`},
		{"inside a piece", `edge "a" { line = [[0, 0], [20, 0], [20, 40]] }
    edge "b" { line = [[20, 40], [0, 40], [0, 0]] }
    dart "waist" { # fault dart-legs error 0.6
      centre = [10, 20]
      intake = 12
      up     = 8
      down   = 8
    }`},
		{"as darts are", `edge "a" { line = [[0, 0], [20, 0], [20, 40]] }
    edge "b" { line = [[20, 40], [0, 40], [0, 0]] }
    dart "waist" {
      centre = [10, 20]
      intake = 3
      up     = 8
      down   = 8
    }`},
	} {
		t.Run(c.name, func(t *testing.T) {
			ruletest.Spec(t, &seams.DartLegs, "garment \"skirt\" { unit = \"cm\" }\nlayer \"shell\" {\n  side = \"outer\"\n  piece \"front\" {\n    "+c.piece+"\n  }\n}\n")
		})
	}
}
