package house

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// wardrobe is a garment of every kind of thing; its figures are closed forms.
const wardrobe = `garment "g" {
  unit  = "mm"
  title = "Trial"
}
body { waist_girth = 300 }
fabric "net" {
  thickness = 1
  stretch   = { across = 20, along = 10 }
}
level "bust"  { y = 0 }
level "waist" {
  y    = 100
  body = body.waist_girth
}
layer "shell" {
  side   = "outer"
  fabric = fabric.net
  piece "front" {
    cut   = 2
    grain = [[50, 10], [50, 90]]
    edge "top" { line = [[0, 0], [100, 0]] }
    edge "side" {
      line      = [[100, 0], [100, 100]]
      allowance = 12
    }
    edge "hem" {
      line      = [[100, 100], [0, 100]]
      finish    = "hem"
      allowance = 30
    }
    edge "centre" {
      line      = [[0, 100], [0, 0]]
      allowance = 15
    }
    dart "waist" {
      on     = hem
      at     = 50
      intake = 10
      tip    = [50, 60]
    }
    notch "mark" {
      on    = side
      at    = 40
      kind  = "double"
      depth = 4
    }
  }
  piece "back" {
    cut = 2
    edge "side" { length = 103 }
    edge "hem" {
      length = 90
      finish = "hem"
    }
  }
}
layer "lining" {
  side = "inner"
  piece "front" {
    cut = 2
    edge "top"  { line = [[0, 0], [90, 0]] }
    edge "side" { line = [[90, 0], [90, 100]] }
    edge "hem"  { line = [[90, 100], [0, 100]] }
    edge "in"   { line = [[0, 100], [0, 0]] }
  }
}
seam "side" {
  join = [shell.front.side, shell.back.side]
  ease = [-5, 0]
}
share "in" {
  outer = shell.front.centre
  inner = lining.front.in
}
inside "front" {
  outer = shell.front
  inner = lining.front
}
closure "front" {
  kind  = "lacing"
  edges = [lining.front.in, lining.front.in]
}
elastic "hem" {
  edges  = [shell.front.hem]
  length = 70
}
bone "side" {
  along  = shell.front.side
  length = 90
}
measure "side" {
  along   = [shell.front.side]
  against = body.waist_girth
}
`

func theGarment(t testing.TB, h *spec.House) *model.Garment {
	t.Helper()
	doc, diags := spec.Read("g.garment.hcl", []byte(wardrobe), h)
	require.Empty(t, diags)
	g, diags := doc.Garment("")
	require.Empty(t, diags)
	return g
}

// houseOf is a house in centimetres with one rule whose name is "trial".
func houseOf(t testing.TB, body string) *spec.House {
	t.Helper()
	h, diags := spec.ReadHouse("house.hcl", []byte("house \"h\" { unit = \"cm\" }\nrequire \"trial\" {\n"+body+"\n}\n"))
	require.Empty(t, diags)
	return h
}

// outcomes runs a rule over the garment and writes down what came of it, one
// line for each look: "subject: passed|finding message|cannot reason".
func outcomes(t testing.TB, body string) []string {
	t.Helper()
	var lines []string
	for _, o := range looks(t, body) {
		line := o.Subject
		if o.Key != "" {
			line += " (" + o.Key + ")"
		}
		switch o.Status {
		case rules.Passed:
			line += ": passed"
		case rules.Found:
			line += ": " + o.Message
		default:
			line += ": cannot, " + o.Reason
		}
		lines = append(lines, line)
	}
	return lines
}

func looks(t testing.TB, body string) []rules.Outcome {
	t.Helper()
	h := houseOf(t, body)
	own, diags := Compile(h, nil)
	require.Empty(t, diags)
	engine, err := rules.New(own)
	require.NoError(t, err)
	settings, diags := engine.Settings(h.Model())
	require.Empty(t, diags)
	return engine.Check(theGarment(t, h), settings)
}
