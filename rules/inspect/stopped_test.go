package inspect

import (
	"context"
	"fmt"
	"sync/atomic"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"understitch/model/body"
)

const ofWaist = `garment "a" { unit = "cm" }
body { waist_girth = 70 }
level "waist" { body = body.waist_girth }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = body.waist_girth }
  }
  piece "back" {
    edge "side" { length = 70 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`

// One garment on many wearers stops soon after the context ends, at any number
// of workers, and says how far it came; what was looked at by then is there.
func TestStoppedAmongWearers(t *testing.T) {
	table := &body.Table{}
	for i := range 5000 {
		table.Wearers = append(table.Wearers, body.Wearer{Name: fmt.Sprint("w", i), Body: map[string]float64{"waist_girth": 720}})
	}
	for _, jobs := range []int{1, 4} {
		t.Run(fmt.Sprint(jobs), func(t *testing.T) {
			in := inspector(t, fstest.MapFS{"a.garment.hcl": file(ofWaist)})
			ctx, stop := context.WithCancel(t.Context())
			defer stop()
			var looked atomic.Int64
			reports, err := in.Files(ctx, []string{"a.garment.hcl"}, Options{Wearers: table, Lean: true, Jobs: jobs, Done: func() {
				if looked.Add(1) == 100 {
					stop()
				}
			}})
			require.ErrorIs(t, err, context.Canceled)
			require.LessOrEqual(t, looked.Load(), int64(100+jobs), "those that were under way, and no more")
			r := reports[0]
			require.False(t, r.Complete())
			// Of the batch under way, what comes after a gap is left out.
			require.Regexp(t, `^(6[4-9]|[7-9]\d|10\d) of its 5000 wearers were looked at$`, r.Stopped)
			require.Equal(t, "the check was stopped: "+r.Stopped, r.Diagnostics[len(r.Diagnostics)-1].Summary)
			require.Len(t, r.Result.Findings, 1)
			require.Equal(t, r.Result.Findings[0].Sizes, r.Sizes)
			require.Equal(t, fmt.Sprintf("%d of its 5000 wearers were looked at", len(r.Result.Findings[0].Sizes)), r.Stopped)
		})
	}
}

// Where only figures are wanted no rule is run and one model is kept.
func TestFiguresAlone(t *testing.T) {
	in := inspector(t, fstest.MapFS{"a.garment.hcl": file(skirt("graded(61, 1)"))})
	r := in.File(t.Context(), "a.garment.hcl", Options{NoRules: true, Figures: true})
	require.True(t, r.Complete())
	require.Empty(t, r.Result.Findings)
	require.Zero(t, r.Result.Passed)
	require.Len(t, r.Models, 1)
	require.Len(t, r.Figures, 2)
	require.Equal(t, "40", r.Figures[1].Size)
	require.InDelta(t, 620, *r.Figures[1].Layers["shell"].Pieces["front"].Edges["side"].Length, 1e-9)
}
