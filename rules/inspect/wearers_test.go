package inspect

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/body"
	"understitch/rules"
	"understitch/rules/draft"
)

// tableOf is a table of wearers as it is read from a file.
func tableOf(t *testing.T, text string) *body.Table {
	t.Helper()
	table, diags := body.Read("wearers.csv", strings.NewReader(text), model.Centimetre)
	require.Empty(t, diags)
	return table
}

// What is wrong with a table is told at the table, once for all whom it
// concerns.
func TestFaultsOfATable(t *testing.T) {
	const onlyCompared = "length = body.waist_girth"
	for _, c := range []struct {
		name, spec, table string
		want              []string
	}{
		{"a column misspelt", ofWaist, "wearer,waist_grith,hip_girth\nanna,70,90\nrosa,71,90\n", []string{
			"wearers.csv:1:8: the table has no column waist_girth; It is needed on line 7 of a.garment.hcl. Is waist_grith meant?"}},
		{"a column missing", ofWaist, "wearer,bust_girth\nanna,90\nrosa,91\n", []string{
			"wearers.csv:1:1: the table has no column waist_girth; It is needed on line 7 of a.garment.hcl."}},
		{"a cell left blank", ofWaist, "wearer,bust_girth,waist_girth\nanna,90,70\nrosa,91,\nlotte,92,70\n", []string{
			"wearers.csv:3:9: waist_girth is lacking for rosa; It is needed on line 7 of a.garment.hcl. Fill it in, or take these rows out of the table."}},
		{"many cells left blank", ofWaist, "wearer,waist_girth,hip_girth\nanna,70,9\nb,,9\nc,,9\nd,,9\ne,,9\nf,,9\n", []string{
			"wearers.csv:3:3: waist_girth is lacking for 5 wearers: b, c, d …; It is needed on line 7 of a.garment.hcl. Fill it in, or take these rows out of the table."}},
		{"a cell left blank of what is only compared", strings.Replace(ofWaist, onlyCompared, "length = 70", 1),
			"wearer,waist_girth,hip_girth\nanna,70,9\nb,,9\n", []string{
				"wearers.csv:3:3: waist_girth is lacking for b; The garment is held against it on line 3 of a.garment.hcl. Fill it in, or take these rows out of the table."}},
		{"a column misspelt of what is only compared", strings.Replace(ofWaist, onlyCompared, "length = 70", 1),
			"wearer,waist-girth\nanna,70\n", []string{
				"wearers.csv:1:8: the table has no column waist_girth; The garment is held against it on line 3 of a.garment.hcl. Is waist-girth meant?"}},
		{"what is only compared was not measured at all", strings.Replace(ofWaist, onlyCompared, "length = 70", 1),
			"wearer,bust_girth\nanna,90\n", nil},
		{"the spec's own slip", strings.Replace(ofWaist, onlyCompared, "length = body.waist_grith", 1),
			"wearer,waist_girth\nanna,70\nrosa,71\n", []string{
				"a.garment.hcl:7:28: body.waist_grith is stated neither here nor in wearers.csv; The nearest measure stated is body.waist_girth."}},
		{"a figure that cannot be drafted from", strings.Replace(ofWaist, onlyCompared, "length = body.waist_girth - 20", 1),
			"wearer,bust_girth,waist_girth\nanna,90,70\nb,91,7\nc,92,71\nd,93,7.1\n", []string{
				"wearers.csv:3:6: on 2 wearers, b, d: this must be more than 0; " +
					"It shows on line 7 of a.garment.hcl. Look at the figures in the table: furthest off is waist_girth of b, 7 cm where the middle of all wearers is 38.55 cm."}},
		{"what holds for everybody is the spec's", strings.Replace(ofWaist, onlyCompared, "length = body.waist_girth - 200", 1),
			"wearer,waist_girth\nanna,70\nrosa,71\n", []string{
				"a.garment.hcl:7:28: this must be more than 0"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := inspector(t, fstest.MapFS{"a.garment.hcl": file(c.spec)})
			r := in.File(t.Context(), "a.garment.hcl", Options{Wearers: tableOf(t, c.table), Lean: true, Jobs: 3})
			var got []string
			for _, d := range r.Diagnostics {
				got = append(got, d.Error())
			}
			require.Equal(t, c.want, got)
			warned := strings.Contains(c.name, "compared")
			require.Equal(t, warned, r.Complete())
		})
	}
}

// A rule that doubts a measure of the body points at the table's cell.
func TestFindingsOfATable(t *testing.T) {
	in := inspector(t, fstest.MapFS{"a.garment.hcl": file(ofWaist)}, &draft.UnitSlip)
	r := in.File(t.Context(), "a.garment.hcl", Options{Wearers: tableOf(t, "wearer,bust_girth,waist_girth\nanna,90,70\nrosa,91,7.1\nlotte,92,70\n"), Lean: true})
	require.Empty(t, r.Diagnostics)
	require.Len(t, r.Result.Findings, 1)
	require.Equal(t, "wearers.csv:3:9", r.Result.Findings[0].Place.String())
	require.Equal(t, rules.Found, r.Result.Findings[0].Status)
}

// Twenty thousand wearers who all lack a measure take time that grows with
// their number, and one line.
func TestManyWearersWhoLackAMeasure(t *testing.T) {
	var text strings.Builder
	text.WriteString("wearer,bust_girth,waist_girth\n")
	for i := range 20000 {
		fmt.Fprintf(&text, "%05d,90,\n", i+1)
	}
	in := inspector(t, fstest.MapFS{"a.garment.hcl": file(ofWaist)})
	began := time.Now()
	r := in.File(t.Context(), "a.garment.hcl", Options{Wearers: tableOf(t, text.String()), Lean: true})
	require.Less(t, time.Since(began), 2*time.Minute, "a fault of the order of growth, not of the machine")
	require.Len(t, r.Diagnostics, 1)
	require.Equal(t, "waist_girth is lacking for 20000 wearers: 00001, 00002, 00003 …", r.Diagnostics[0].Summary)
	require.Equal(t, "wearers.csv:2:10", r.Diagnostics[0].Place.String())
}
