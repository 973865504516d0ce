package allowances_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
	"understitch/rules/allowances"
	"understitch/rules/ruletest"
)

// A cloth's allowance is the standard of its edges; a hem keeps the house's.
func TestTheStandardOfAFabric(t *testing.T) {
	engine, err := rules.New([]*rules.Rule{&allowances.Standard})
	require.NoError(t, err)
	found := ruletest.Found(t, engine, "house \"h\" { unit = \"cm\" }\nallowance \"default\" { width = 1 }\nallowance \"hem\" { width = 4 }\n", `garment "g" { unit = "cm" }
fabric "velvet" { allowance = 1.5 }
layer "shell" {
  side   = "outer"
  fabric = fabric.velvet
  piece "front" {
    edge "a" { line = [[0, 0], [20, 0], [20, 30]] }
    edge "b" {
      line      = [[20, 30], [10, 40]]
      allowance = 1
    }
    edge "hem" {
      line      = [[10, 40], [0, 40], [0, 0]]
      finish    = "hem"
    }
  }
}
`)
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "shell.front.b carries an allowance of 1 cm, and fabric.velvet's for other edges is 1.5 cm")
}
