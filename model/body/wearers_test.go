package body

import (
	"errors"
	"os"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"

	"understitch/model"
)

func TestRead(t *testing.T) {
	for _, c := range []struct {
		name, table string
		unit        model.Unit
		want        []Wearer
	}{
		{"as asked for", "wearer,waist_girth,hip_girth\nanna,70,96.5\n", model.Centimetre,
			[]Wearer{{"anna", map[string]float64{"waist_girth": 700, "hip_girth": 965}}}},
		{"no column of names: rows are counted", "waist_girth\n70\n71\n", model.Centimetre,
			[]Wearer{{"1", map[string]float64{"waist_girth": 700}}, {"2", map[string]float64{"waist_girth": 710}}}},
		{"in millimetres", "wearer,waist_girth\nanna,702\n", model.Millimetre,
			[]Wearer{{"anna", map[string]float64{"waist_girth": 702}}}},
		{"in inches", "name,waist_girth\nanna,27.5\n", model.Inch,
			[]Wearer{{"anna", map[string]float64{"waist_girth": 698.5}}}},
		{"a mark at the start, carriage returns, quotes", "\ufeffwearer,waist_girth\r\n\"rosa, the elder\",\"70\"\r\n", model.Centimetre,
			[]Wearer{{"rosa, the elder", map[string]float64{"waist_girth": 700}}}},
		{"semicolons and decimal commas", "wearer;waist_girth\nanna;70,5\n", model.Centimetre,
			[]Wearer{{"anna", map[string]float64{"waist_girth": 705}}}},
		{"a measure that was not taken", "wearer,waist_girth,hip_girth\nanna, ,96\n", model.Centimetre,
			[]Wearer{{"anna", map[string]float64{"hip_girth": 960}}}},
		{"empty lines", "wearer,waist_girth\n\nanna,70\n\n", model.Centimetre,
			[]Wearer{{"anna", map[string]float64{"waist_girth": 700}}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, diags := Read("bodies.csv", strings.NewReader(c.table), c.unit)
			require.Empty(t, diags)
			require.Equal(t, c.want, got.Wearers)
		})
	}
}

func TestReadFaults(t *testing.T) {
	for _, c := range []struct{ name, table, want string }{
		{"empty", "", "bodies.csv:1:1: the table of wearers is empty"},
		{"a heading alone", "wearer,waist_girth\n", "bodies.csv:1:1: the table has a heading and no wearers"},
		{"not a number", "wearer,waist_girth\nanna,wide\n", `bodies.csv:2:6: waist_girth of anna: "wide" is not a number`},
		{"columns count letters", "wearer,waist_girth\nÄnne Müller,wide\n", `bodies.csv:2:13: waist_girth of Änne Müller: "wide" is not a number`},
		{"NaN", "wearer,waist_girth\nanna,NaN\n", `bodies.csv:2:6: waist_girth of anna: "NaN" is not a number`},
		{"without end", "wearer,waist_girth\nanna,1e999\n", "bodies.csv:2:6: waist_girth of anna: 1e999 cm is more than any body measures; is the table in another unit?"},
		{"nothing", "wearer,waist_girth\nanna,0\n", "bodies.csv:2:6: waist_girth of anna: 0 cm is not a length"},
		{"below nothing", "wearer,waist_girth\nanna,-70\n", "bodies.csv:2:6: waist_girth of anna: -70 cm is not a length"},
		{"another unit", "wearer,waist_girth\nanna,702\n", "bodies.csv:2:6: waist_girth of anna: 702 cm is more than any body measures; is the table in another unit?"},
		{"a cell too few", "wearer,waist_girth,hip_girth\nanna,70\n", "bodies.csv:2:1: this row has 2 cells, and the heading has 3"},
		{"a cell too many", "wearer,waist_girth\nanna,70,96\n", "bodies.csv:2:1: this row has 3 cells, and the heading has 2"},
		{"twice the same wearer", "wearer,waist_girth\nanna,70\nrosa,71\nanna,72\n", "bodies.csv:4:1: there is a wearer called anna already, on line 2"},
		{"twice the same measure", "wearer,waist_girth,waist_girth\nanna,70,71\n", "bodies.csv:1:20: there is a column called waist_girth already"},
		{"no name of a measure", "wearer,Waist Girth\nanna,70\n", `bodies.csv:1:8: "Waist Girth" is not a body measure's name, such as waist_girth`},
		{"a wearer without a name", "wearer,waist_girth\n ,70\n", "bodies.csv:2:1: this wearer has no name"},
		{"a quote left open", "wearer,waist_girth\n\"anna,70\n", "bodies.csv:2:10: a quotation mark is missing here, or stands where none belongs"},
		{"not text", "wearer,\xff\n", "bodies.csv:1:1: the table is not plain text in UTF-8"},
	} {
		t.Run(c.name, func(t *testing.T) {
			table, diags := Read("bodies.csv", strings.NewReader(c.table), model.Centimetre)
			require.Nil(t, table)
			require.NotEmpty(t, diags)
			require.Equal(t, c.want, diags[0].Error())
		})
	}
}

func TestReadStopsAtManyFaults(t *testing.T) {
	_, diags := Read("bodies.csv", strings.NewReader("waist_girth\n"+strings.Repeat("x\n", 1000)), model.Centimetre)
	require.Len(t, diags, maxFaults)
}

func TestReadFails(t *testing.T) {
	_, diags := Read("bodies.csv", iotest.ErrReader(errors.New("the disk is gone")), model.Centimetre)
	require.Len(t, diags, 1)
	require.Contains(t, diags[0].Summary, "the disk is gone")
}

// A survey of real bodies, in millimetres, where it lies beside the project.
func TestReadSurvey(t *testing.T) {
	const survey = "../../../shared/data/ansur2-women-sample.csv"
	f, err := os.Open(survey)
	if err != nil {
		t.Skipf("the survey's table is not beside the project: %v", err)
	}
	defer f.Close()
	table, diags := Read(survey, f, model.Millimetre)
	require.Empty(t, diags)
	require.Greater(t, len(table.Wearers), 50)
	for _, w := range table.Wearers {
		require.Greater(t, w.Body["hip_girth"], w.Body["neck_girth"], w.Name)
		require.InDelta(t, 1650, w.Body["stature"], 350, w.Name)
	}
}

func FuzzRead(f *testing.F) {
	f.Add("wearer,waist_girth\nanna,70\n")
	f.Add("\ufeffa;b\n\"1\n\";2,5")
	f.Fuzz(func(t *testing.T, text string) {
		table, diags := Read("bodies.csv", strings.NewReader(text), model.Centimetre)
		require.Equal(t, len(diags) > 0, table == nil)
		for _, d := range diags {
			require.Positive(t, d.Place.Start.Line)
			require.Positive(t, d.Place.Start.Column)
		}
		if table == nil {
			return
		}
		for n, w := range table.Wearers {
			for measure, v := range w.Body {
				require.True(t, v > 0 && v <= maxMeasure)
				at, ok := table.Cell(n, measure)
				require.True(t, ok)
				require.Greater(t, at.Start.Line, table.Heading("").Start.Line)
			}
		}
	})
}
