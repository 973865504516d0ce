package sewing_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/modeltest"
	"understitch/model/sewing"
)

func TestSideText(t *testing.T) {
	g := modeltest.Build(t, bodice)
	front, back := modeltest.Edge(t, g, "shell.front.hem"), modeltest.Edge(t, g, "shell.back.hem")
	for _, c := range []struct {
		want string
		side []model.Stretch
	}{
		{"", nil},
		{"shell.front.hem", []model.Stretch{{Edge: front}}},
		{"shell.front.hem", []model.Stretch{{Edge: front}, {Edge: front}}},
		{"shell.front.hem and shell.back.hem", []model.Stretch{{Edge: front}, {Edge: back}}},
		{"shell.front.hem, shell.back.hem and shell.front.hem", []model.Stretch{{Edge: front}, {Edge: back}, {Edge: front}}},
	} {
		require.Equal(t, c.want, sewing.SideText(c.side))
	}
}

func TestSegmentsAndCorners(t *testing.T) {
	g := modeltest.Build(t, bodice)
	a, b, err := sewing.Walks(g, g.Joins()[0])
	require.NoError(t, err)
	segments := sewing.Segments(a, b)
	require.Len(t, segments, 2)
	// The front's notch lies 15 cm from the top of its side, so does the back's.
	require.InDelta(t, 150, segments[0].A, 1e-9)
	require.InDelta(t, 0, segments[0].Longer(), 1e-9)
	require.Nil(t, segments[0].First)
	require.Equal(t, "waist", segments[0].Last.A.Notch.Name)
	require.InDelta(t, a.Length-150, segments[1].A, 1e-9)
	require.Nil(t, segments[1].Last)
	require.Equal(t, "shell.front.arm", a.Corner(false).Address())
	require.Equal(t, "shell.front.hem", a.Corner(true).Address())

	half, err := sewing.LayOut(g, []model.Stretch{{Edge: modeltest.Edge(t, g, "shell.front.side"), To: model.Mark{Kind: model.AtNotch, Notch: "waist"}}})
	require.NoError(t, err)
	require.Nil(t, half.Corner(true))
}
