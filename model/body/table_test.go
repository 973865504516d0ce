package body

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
)

// Each figure of a table has a place, counted in characters, also after empty
// lines, names over two lines, and letters of several bytes.
func TestPlaces(t *testing.T) {
	table, diags := Read("bodies.csv", strings.NewReader(
		"\ufeff\nwearer,waist_girth,hip_girth\n\nÄnne Müller,70,96\n\"rosa,\nthe elder\",71,\nlotte,\"7\",90\n"), model.Centimetre)
	require.Empty(t, diags)
	require.Equal(t, []string{"waist_girth", "hip_girth"}, table.Measures())
	require.Equal(t, "bodies.csv:2:8", table.Heading("waist_girth").String())
	require.Equal(t, "bodies.csv:2:1", table.Heading("bust_girth").String(), "none of them: the whole heading")
	for _, c := range []struct {
		n       int
		measure string
		want    string
	}{
		{0, "waist_girth", "bodies.csv:4:13"},
		{0, "hip_girth", "bodies.csv:4:16"},
		{1, "waist_girth", "bodies.csv:6:12"},
		{1, "hip_girth", "bodies.csv:6:15"}, // left blank
		{2, "waist_girth", "bodies.csv:7:7"},
	} {
		at, ok := table.Cell(c.n, c.measure)
		require.True(t, ok)
		require.Equal(t, c.want, at.String(), "%d %s", c.n, c.measure)
	}
	at, ok := table.Row(1)
	require.True(t, ok)
	require.Equal(t, 5, at.Start.Line)
	_, ok = table.Cell(0, "bust_girth")
	require.False(t, ok, "there is no such column")
	_, ok = table.Cell(0, "")
	require.False(t, ok, "the wearers' names are no measure")
	_, ok = (&Table{Wearers: table.Wearers}).Cell(0, "waist_girth")
	require.False(t, ok, "not read from a file")
}

// Closed form.
func TestMiddle(t *testing.T) {
	table, diags := Read("bodies.csv", strings.NewReader("waist_girth,hip_girth\n70,90\n7,\n71,95\n90,\n"), model.Centimetre)
	require.Empty(t, diags)
	mm, of := table.Middle("waist_girth")
	require.InDelta(t, 705, mm, 1e-9)
	require.Equal(t, 4, of)
	mm, of = table.Middle("hip_girth")
	require.InDelta(t, 925, mm, 1e-9)
	require.Equal(t, 2, of)
	_, of = table.Middle("bust_girth")
	require.Zero(t, of)
}
