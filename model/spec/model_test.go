package spec

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/curve"
)

// The figures of the dress, worked out by hand from its text: size 40 measures
// 92 round the bust and stands one size up from the base.
func TestDressFigures(t *testing.T) {
	g := dress(t, "40")
	require.Equal(t, "rink-dress", g.Name)
	require.Equal(t, "Rink dress with a built-in brief", g.Title)
	require.Equal(t, []string{"36", "38", "40"}, g.Sizes)
	require.Equal(t, 740.0, g.Body["waist_girth"])

	require.Equal(t, []string{"bust", "waist", "tummy", "hip"}, namesOf(g.Levels, levelName))
	waist, hip := g.Levels[1], g.Levels[3]
	require.Equal(t, 175.0, waist.Y)
	require.Equal(t, 740.0, waist.Body)
	require.Equal(t, "waist_girth", waist.Measure)
	require.Equal(t, 370.0, hip.Y, "the house's level")
	require.Equal(t, 1000.0, hip.Body)
	require.True(t, math.IsNaN(g.Levels[0].Body))

	shell, brief := g.Layers[0], g.Layers[1]
	require.Equal(t, 0, shell.Order)
	require.Equal(t, 1, brief.Order)
	require.InDelta(t, 1.1, shell.Fabric.Thickness, 1e-12)
	require.Equal(t, 60.0, shell.Fabric.StretchAcross)
	require.Equal(t, "power-net", brief.Fabric.Name, "the house's fabric")
	require.Equal(t, model.Range{Low: -40, High: 0}, shell.Ease[0].Range)

	front, back := shell.Pieces[0], shell.Pieces[1]
	require.False(t, front.Mirrored)
	require.True(t, back.Mirrored)
	require.Equal(t, "centre", front.Fold.Name)
	top, side := front.Edges[0], front.Edges[1]
	require.Equal(t, curve.Point{X: 0, Y: -82}, top.Path.Start(), "graded: 8 + 0.2")
	require.Equal(t, curve.Point{X: 220, Y: 0}, top.Path.End(), "92 / 4 - 1")
	require.Equal(t, curve.Point{X: 210, Y: 280}, side.Path.End())
	require.Equal(t, []curve.Point{{X: 60, Y: 50}, {X: 60, Y: 400}}, front.Grain)

	bust, inside := front.Darts[0], front.Darts[1]
	require.Equal(t, side, bust.On)
	require.Equal(t, [2]float64{60, 24}, [2]float64{bust.At, bust.Intake})
	require.Equal(t, curve.Point{X: 90, Y: 30}, bust.Tip)
	require.Nil(t, inside.On)
	require.Equal(t, [2]float64{120, 100}, [2]float64{inside.Up, inside.Down})

	byLevel, byPlace, byPoint := front.Notches[0], front.Notches[1], front.Notches[2]
	require.Equal(t, waist, byLevel.Level)
	require.Equal(t, "double", byLevel.Kind)
	require.Equal(t, 4.0, byLevel.Depth)
	require.Equal(t, 30.0, byPlace.At)
	require.Equal(t, "single", byPlace.Kind)
	require.True(t, byPoint.ByPoint)
	require.Equal(t, curve.Point{X: 60, Y: -95}, byPoint.Point)

	paper := brief.Pieces[0]
	require.Nil(t, paper.Edges[0].Path)
	require.Equal(t, 190.0, paper.Edges[0].PaperLength)
	require.Equal(t, 170.0, paper.Widths[0].Value)
	require.True(t, brief.Pieces[1].OwnLevels)
	require.Equal(t, 20.0, brief.Pieces[1].LevelsAt[0].Value)
}

func TestDressJoins(t *testing.T) {
	g := dress(t, "38")
	require.Equal(t, model.Range{Low: 0, High: 3}, g.Seams[0].Ease)
	require.Equal(t, model.Exactly(0), g.Seams[1].Ease)
	lower := g.Seams[1].Sides[0][0]
	require.Equal(t, "part(shell.front.side, waist, end)", lower.String())
	require.Equal(t, model.AtLevel, lower.From.Kind)
	require.Equal(t, model.AtEnd, lower.To.Kind)
	pair := g.Seams[2]
	require.Same(t, pair.Sides[0][0].Edge, pair.Sides[1][0].Edge)
	require.Equal(t, model.Eased, g.Shares[0].Match)
	require.Len(t, g.Shares[0].Inner, 2)

	inside := g.Insides[0]
	require.Same(t, g.Shares[0], inside.Align)
	require.Equal(t, model.Exactly(0), inside.Clearance[1].Range)
	require.Equal(t, model.Range{Low: math.Inf(-1), High: 30}, inside.Clearance[2].Range)

	gusset, zip := g.Closures[0], g.Closures[1]
	require.InDelta(t, 19, gusset.Tape.Pitch, 1e-12)
	require.Equal(t, 1, gusset.Row)
	require.True(t, math.IsNaN(gusset.Needs))
	require.Equal(t, []float64{350, 400, 450}, zip.Stock)
	require.Equal(t, model.AtStart, zip.From.Kind)
	require.Equal(t, "hip", zip.To.Level.Name)
	require.Equal(t, 15.0, zip.Needs)

	require.Equal(t, model.Range{Low: 0.80, High: 0.95}, g.Elastics[0].Ratio)
	require.Equal(t, 250.0, g.Bones[0].Length)
	run := g.Measures[0]
	require.Len(t, run.Along, 3)
	require.Same(t, gusset, run.Along[1].Closure)
	require.Equal(t, 675.0, run.Against)
	require.Equal(t, "total_crotch_length", run.Body)

	require.Equal(t, "inside.front", g.Waivers[0].At)
	require.InDelta(t, 4, g.Waivers[0].UpTo.Length, 1e-12)
	require.Equal(t, "2027-06-30", g.Waivers[0].Until)
	require.Equal(t, "shell.front.notch.waist", g.Waivers[1].At)
}

// An edge's allowance is its own, the piece's, none on the fold, or what the
// house says for its role.
func TestDressAllowances(t *testing.T) {
	g := dress(t, "38")
	front, back := g.Layers[0].Pieces[0], g.Layers[0].Pieces[1]
	for _, c := range []struct {
		edge  *model.Edge
		width float64
		own   bool
		file  string
	}{
		{front.Edges[0], 10, false, "testdata/rink-dress.garment.hcl"},
		{front.Edges[1], 15, true, "testdata/rink-dress.garment.hcl"},
		{front.Edges[3], 0, false, "testdata/rink-dress.garment.hcl"},
		{back.Edges[0], 7, false, "testdata/house.hcl"},
		{back.Edges[1], 10, false, "testdata/house.hcl"},
		{back.Edges[3], 25, false, "testdata/house.hcl"},
	} {
		t.Run(c.edge.Address(), func(t *testing.T) {
			require.InDelta(t, c.width, c.edge.Allowance.Width, 1e-12)
			require.Equal(t, c.own, c.edge.Allowance.Own)
			require.Equal(t, c.file, c.edge.Allowance.Place.File)
		})
	}
}

// Without a house, and with nothing stated, an allowance is unknown.
func TestAllowanceUnknown(t *testing.T) {
	d, _ := Read("x", []byte(sound), nil)
	g, diags := d.Garment("")
	require.Empty(t, diags)
	require.False(t, model.Known(g.Layers[0].Pieces[0].Edges[0].Allowance.Width))
}

// Each place covers what a reader must look at.
func TestPlaces(t *testing.T) {
	d := loadDress(t)
	g, _ := d.Garment("38")
	front := g.Layers[0].Pieces[0]
	for want, at := range map[string]model.Place{
		`garment "rink-dress"`: g.Place,
		`level "waist"`:        g.Levels[1].Place,
		`layer "shell"`:        g.Layers[0].Place,
		`waist = [-4, 0]`:      g.Layers[0].Ease[0].Place,
		`piece "front"`:        front.Place,
		`edge "side"`:          front.Edges[1].Place,
		`1.5`:                  front.Edges[1].Allowance.Place,
		`edge "centre"`:        front.Edges[3].Allowance.Place,
		`dart "bust"`:          front.Darts[0].Place,
		`notch "bust"`:         front.Notches[1].Place,
		`waist`:                front.Notches[0].Given,
		`3`:                    front.Notches[1].Given,
		`[6, -9.5]`:            front.Notches[2].Given,
		`join = [shell.front.side, shell.back.side]`: g.Seams[0].Join,
		`part(shell.front.side, waist, end)`:         g.Seams[1].Sides[0][0].Place,
		`share "top"`:                                g.Shares[0].Place,
		`hip = [null, 3]`:                            g.Insides[0].Clearance[2].Place,
		`closure.gusset`:                             g.Measures[0].Along[1].Place,
		`hip`:                                        g.Closures[1].To.Place,
		`mm(4)`:                                      g.Waivers[0].UpTo.Place,
		`waive "inner-within-outer"`:                 g.Waivers[0].Place,
	} {
		require.Equal(t, want, string(d.Source()[at.Start.Byte:at.End.Byte]))
		require.Equal(t, "testdata/rink-dress.garment.hcl", at.File)
	}
	side := front.Edges[1].Place
	require.Equal(t, model.Pos{Line: 45, Column: 5, Byte: side.Start.Byte}, side.Start)
	require.Equal(t, model.Pos{Line: 45, Column: 16, Byte: side.End.Byte}, side.End)
}

// Every way to state a figure gives the same length in every unit.
func TestFiguresInUnits(t *testing.T) {
	for _, c := range []struct {
		unit, expr string
		want       float64 // mm
	}{
		{"mm", "30", 30}, {"cm", "30", 300}, {"in", "30", 762},
		{"mm", "mm(3)", 3}, {"cm", "mm(3)", 3}, {"in", "mm(3)", 3},
		{"mm", "cm(1.2)", 12}, {"cm", "cm(1.2)", 12}, {"in", "cm(1.2)", 12},
		{"mm", "inch(1 + 3/8)", 34.925}, {"cm", "inch(1 + 3/8)", 34.925}, {"in", "inch(1 + 3/8)", 34.925},
		{"mm", "body.bust_girth / 4", 22}, {"cm", "body.bust_girth / 4 - 1", 210}, {"in", "body.bust_girth / 4 - 1", 533.4},
		{"cm", "draft.half + mm(5)", 55}, {"in", "draft.half + cm(1)", 137},
		{"cm", "2 + 3 * 4 - 10 / 4", 115}, {"cm", "(2 + 3) * 4", 200}, {"cm", "-(2 - 5)", 30}, {"cm", "7 % 4", 30},
		{"cm", "min(4, 3, 5) + max(1, 2)", 50}, {"cm", "abs(-4)", 40}, {"cm", "sqrt(9)", 30},
		{"cm", "10 * sin(30)", 50}, {"cm", "10 * cos(60)", 50}, {"cm", "tan(45)", 10}, {"cm", "atan(1)", 450},
		{"cm", "round(3.4) + round(3.3, 0.5)", 65}, {"cm", "2 * pi", 62.831853071795864},
		{"cm", "body.bust_girth > 80 ? 3 : 2", 30}, {"cm", "!(body.bust_girth > 80) ? 3 : 2", 20},
		{"cm", "1 == 1 && 2 != 2 || 3 <= 3 ? 3 : 1 / 0", 30}, {"cm", "1 >= 2 ? 1 : 2 < 3 ? 4 : 5", 40},
		{"cm", "true ? 1 : 2", 10}, {"cm", "1.5e1", 150},
	} {
		t.Run(c.unit+" "+c.expr, func(t *testing.T) {
			src := fmt.Sprintf("garment \"g\" { unit = %q }\nbody { bust_girth = 88 }\ndraft { half = 5 }\n"+
				"layer \"l\" {\n side = \"outer\"\n piece \"p\" {\n  edge \"e\" { length = %s }\n }\n}\n", c.unit, c.expr)
			d, diags := Read("x", []byte(src), nil)
			require.Empty(t, diags)
			g, diags := d.Garment("")
			require.Empty(t, diags)
			require.InDelta(t, c.want, g.Layers[0].Pieces[0].Edges[0].PaperLength, 1e-9)
		})
	}
}
