package model_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/modeltest"
)

func TestUnusedAndUsedTwice(t *testing.T) {
	const paper = `
garment "skirt" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "back" {
    cut = 2
    edge "centre" { length = 60 }
    notch "hip" {
      on = centre
      at = 20
    }
    notch "vent" {
      on = centre
      at = 45
    }
  }
}
`
	const zip = `
closure "zip" {
  kind  = "zip"
  edges = [shell.back.centre, shell.back.centre]
  to    = hip
}
`
	// Notches are named as levels in marks, so both must be levels on paper.
	const levels = `
level "hip" { y = 20 }
level "vent" { y = 45 }
`
	for _, c := range []struct {
		name, rest string
		unused     []model.Part
		twice      []model.Part
	}{
		{"nothing", "", []model.Part{{From: 0, To: 600}}, nil},
		{"a zip to the hip", zip, []model.Part{{From: 200, To: 600}}, nil},
		{"a zip and the seam below it", zip + `seam "back" { join = [part(shell.back.centre, hip, end), part(shell.back.centre, hip, end)] }`, nil, nil},
		{"a seam between the two", zip + `seam "back" { join = [part(shell.back.centre, hip, vent), part(shell.back.centre, hip, vent)] }`, []model.Part{{From: 450, To: 600}}, nil},
		{"a zip and the whole seam", zip + `seam "back" { join = [shell.back.centre, shell.back.centre] }`, nil, []model.Part{{From: 0, To: 200}, {From: 0, To: 200}, {From: 0, To: 200}, {From: 0, To: 200}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := modeltest.Build(t, paper+levels+c.rest)
			e := modeltest.Edge(t, g, "shell.back.centre")
			unused, err := g.Unused(e)
			require.NoError(t, err)
			require.Equal(t, c.unused, unused)
			overlaps, err := g.UsedTwice(e)
			require.NoError(t, err)
			var twice []model.Part
			for _, o := range overlaps {
				twice = append(twice, o.Part)
			}
			require.Equal(t, c.twice, twice)
		})
	}
}
