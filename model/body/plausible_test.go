package body

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
)

// The middle of the survey's women: stature 1628.5 and hip 1021.2, crotch length
// 620.8 and trunk 1559.4 mm on average (Gordon et al., NATICK/TR-15/007, 2014,
// from the public table). A least-squares plane passes through its means.
func TestLikelihoodsOfTheMeanBody(t *testing.T) {
	all := Likelihoods(map[string]float64{"stature": 1628.5, "hip_girth": 1021.2, "total_crotch_length": 620.8, "total_vertical_trunk_length": 1559.4})
	require.Len(t, all, 2)
	for _, l := range all {
		require.InDelta(t, l.Stated, l.Expected, 1, l.Measure)
		require.InDelta(t, 0, l.Off(), 0.03, l.Measure)
	}
}

func TestLikelihoods(t *testing.T) {
	for _, c := range []struct {
		name string
		body map[string]float64
		want map[string]float64 // how many standard deviations off
	}{
		{"height for stature", map[string]float64{"height": 1680, "hip_girth": 960, "total_crotch_length": 610.48}, map[string]float64{"total_crotch_length": 0}},
		{"too long by a hand", map[string]float64{"stature": 1680, "hip_girth": 960, "total_crotch_length": 703.48}, map[string]float64{"total_crotch_length": 3}},
		{"trunk by its other name", map[string]float64{"stature": 1680, "hip_girth": 960, "trunk_girth": 1543.26 - 78}, map[string]float64{"trunk_girth": -2}},
		{"no hip", map[string]float64{"stature": 1680, "total_crotch_length": 600}, map[string]float64{}},
		{"no stature", map[string]float64{"hip_girth": 960, "total_crotch_length": 600}, map[string]float64{}},
		{"nothing to judge", map[string]float64{"hip_girth": 960, "stature": 1680}, map[string]float64{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := map[string]float64{}
			for _, l := range Likelihoods(c.body) {
				got[l.Measure] = l.Off()
			}
			require.InDeltaMapValues(t, c.want, got, 0.001)
		})
	}
}

// Of real bodies few are called unlikely: 1.2 in a hundred past 2.5 standard
// deviations if they were spread normally. The relations fit them, so that their
// spread about what is expected is as stated.
func TestLikelihoodsOfTheSurvey(t *testing.T) {
	const survey = "../../../shared/data/ansur2-women-sample.csv"
	f, err := os.Open(survey)
	if err != nil {
		t.Skipf("the survey's table is not beside the project: %v", err)
	}
	defer f.Close()
	table, diags := Read(survey, f, model.Millimetre)
	require.Empty(t, diags)
	off := map[string][]float64{}
	for _, w := range table.Wearers {
		for _, l := range Likelihoods(w.Body) {
			off[l.Measure] = append(off[l.Measure], l.Off())
		}
	}
	require.Len(t, off, 2)
	for measure, list := range off {
		require.Len(t, list, len(table.Wearers))
		unlikely, sum, squares := 0, 0.0, 0.0
		for _, v := range list {
			sum += v
			squares += v * v
			if math.Abs(v) > 2.5 {
				unlikely++
			}
		}
		n := float64(len(list))
		t.Logf("%s: %d of %d past 2.5; mean %.3f, spread %.3f", measure, unlikely, len(list), sum/n, math.Sqrt(squares/n))
		require.LessOrEqual(t, float64(unlikely), 0.03*n, measure)
		require.InDelta(t, 0, sum/n, 0.25, measure)
		require.InDelta(t, 1, math.Sqrt(squares/n), 0.15, measure)
	}
}
