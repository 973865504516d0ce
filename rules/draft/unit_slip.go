package draft

import (
	_ "embed"
	"fmt"
	"maps"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/rules"
	"understitch/rules/guess"
)

//go:embed testdata/unit-slip.bad.garment.hcl
var unitSlipBad string

//go:embed testdata/unit-slip.good.garment.hcl
var unitSlipGood string

// UnitSlip looks for figures that were written in another unit than the file's, or
// with the point in the wrong place.
var UnitSlip = rules.Rule{
	Name:     "unit-slip",
	Family:   "draft",
	Severity: rules.Error,
	Under:    []string{"notch-depth"},
	Doc: rules.Doc{
		Title: "No figure looks as if it were in the wrong unit",
		Why: "An inch in a file of centimetres, or a lost decimal point, is two and a half or ten times out. Where both sides of a seam are drawn " +
			"from it they agree, and the garment is cut for a doll or a horse.",
		How: "First, all girths of the body and of the layers are taken together: if none is what it can be as it stands, and all are when " +
			"they are read in one other unit, the file or the body is in that unit, and must not be cut. A girth is what it can be if it is a trunk's, " +
			"or a share of the body's at its level. Then figures are held against what a body and a garment can measure. Looked at are: girths round the trunk; the girth of a layer at a " +
			"level against the body's, where no ease is stated for it; allowances, once where they are stated; buttons, laps, fastener tapes, the " +
			"thickness of cloths and the depth of notches; a level that lies far above or below all pieces. So is a point so far from all others of its piece that the piece would be several times smaller without it, unless " +
			"its edges agree with what they are sewn to.",
		Nothing: "No figure is stated there of which it is known how large it can be.",
		Fix:     "Look at the figure and at the unit it was measured in. Write inch(34) or mm(12) where it is not the file's.",
		Bad:     unitSlipBad, Good: unitSlipGood, Since: "0.1",
	},
	Limits: append([]rules.Limit{
		{Name: "least-girth", Value: 400, Unit: rules.Millimetres, Text: "the least girth round a trunk, a small child's", Source: "from memory"},
		{Name: "greatest-girth", Value: 2000, Unit: rules.Millimetres, Text: "the greatest girth round a trunk; the largest of 1,986 women measured 1341 mm", Source: "common practice, no source; the women: ANSUR II, 2012"},
		{Name: "usual-girth", Value: 1500, Unit: rules.Millimetres, Text: "the greatest girth that all girths of a trunk together exceed only in a wrong unit", Source: "from memory; the largest of 1,986 women measured 1341 mm (ANSUR II, 2012)"},
		{Name: "drafted-share", Value: 0.7, Unit: rules.Ratio, Text: "the least share of the body's girth that a layer has if the file is read in another unit", Source: "common practice, no source"},
		{Name: "least-share", Value: 0.45, Unit: rules.Ratio, Text: "the least share of the body's girth that a layer can have; one drawn in inches as centimetres has 0.39", Source: "common practice, no source"},
		{Name: "greatest-share", Value: 8, Unit: rules.Ratio, Text: "the greatest share of the body's girth that a layer can have, as a very full skirt", Source: "common practice, no source"},
		{Name: "least-allowance", Value: 2, Unit: rules.Millimetres, Text: "the narrowest allowance there is, but for none", Source: "common practice, no source; 1/8 in at bound vents: The rules on seam allowances, fashion-incubator.com"},
		{Name: "greatest-allowance", Value: 100, Unit: rules.Millimetres, Text: "the widest allowance there is, a deep hem", Source: "common practice, no source"},
		{Name: "level", Value: 2, Unit: rules.Ratio, Text: "how many times the height of all pieces a level may lie away from them", Source: "common practice, no source"},
		{Name: "point", Value: 3, Unit: rules.Ratio, Text: "how many times larger a piece may be with one point than without it", Source: "common practice, no source"},
		{Name: "agree", Value: 3.2, Unit: rules.Millimetres, Text: "sides of a seam that differ by no more than this confirm each other", Source: "as in seam-walk"},
	}, smallLimits()...),
	Each: unitSlip,
}

func unitSlip(g *model.Garment, look func(model.Thing, func(*rules.Pass))) {
	found := nothing
	look(g, func(p *rules.Pass) {
		p.NothingHere()
		if found = wholeUnits(p, g); found == nothing {
			bodyUnits(p, g)
		}
	})
	if found == theFile {
		return // what follows is in that unit too
	}
	for _, l := range g.Levels {
		look(l, func(p *rules.Pass) { levelUnits(p, l, found == theBody) })
	}
	seen := map[model.Place]bool{} // blocks and attributes of a house serve many
	for _, c := range g.Closures {
		look(c, func(p *rules.Pass) { closureUnits(p, c, seen) })
	}
	for _, l := range g.Layers {
		if f := l.Fabric; f != nil && !seen[f.Place] {
			seen[f.Place] = true
			look(l, func(p *rules.Pass) { clothUnits(p, l) })
		}
	}
	depths := map[float64]bool{} // notches are all cut with one tool: one slip
	for _, n := range g.Notches() {
		if model.Known(n.Depth) && !depths[n.Depth] {
			depths[n.Depth] = true
			look(n, func(p *rules.Pass) { notchUnits(p, n) })
		}
	}
	for _, piece := range g.Pieces() {
		look(piece, func(p *rules.Pass) { pieceUnits(p, piece) })
		for _, e := range piece.Edges {
			if place := e.Allowance.Place; e.Allowance.Width > 0 && !seen[place] {
				seen[place] = true
				look(e, func(p *rules.Pass) { allowanceUnits(p, e) })
			}
		}
	}
}

func girths(p *rules.Pass) model.Range {
	return model.Range{Low: p.Limit("least-girth"), High: p.Limit("greatest-girth")}
}

// within judges whether a figure is in the range of what can be. How much room there
// is to the ends says nothing, so a figure that is sound is passed without it.
func within(p *rules.Pass, v float64, r model.Range, say rules.Say) {
	if say.Account == nil {
		say.Account = figureAccount(p, v, r, "the figure stated, "+strings.ReplaceAll(say.Key, "_", " "))
	}
	suspect(p, r.Beyond(v) != 0, say, func(say rules.Say) { p.Within(v, r, "", say) })
}

func suspect(p *rules.Pass, odd bool, say rules.Say, judge func(rules.Say)) {
	if odd {
		say.Mild = true // one figure alone is worth a look; a whole file of them forbids cutting
		judge(say)
		return
	}
	p.Good(say)
}

// read says what a figure would be in another unit.
func read(p *rules.Pass, mm float64, meant model.Range) string {
	name, v := guess.OtherUnit(mm, p.Garment.Unit, meant)
	if name == "" {
		return "Look at the figure and at its unit."
	}
	return fmt.Sprintf("Read as %s it would be %s.", name, p.Show(v))
}

func bodyUnits(p *rules.Pass, g *model.Garment) {
	for _, name := range guess.TorsoGirths() {
		v, ok := g.Body[name]
		if !ok {
			continue
		}
		within(p, v, girths(p), rules.Say{Key: name, Cures: measured(p, name, v), Message: func() string {
			return fmt.Sprintf("body.%s is %s; a trunk measures %s to %s. %s",
				name, p.Show(v), p.Show(p.Limit("least-girth")), p.Show(p.Limit("greatest-girth")), read(p, v, girths(p)))
		}})
	}
}

// measured gives a body measure the length that it has in the unit in which it was
// most likely meant, wherever a level is held against it.
func measured(p *rules.Pass, name string, mm float64) []rules.Cure {
	unit, meant := guess.OtherUnit(mm, p.Garment.Unit, girths(p))
	if unit == "" {
		return nil
	}
	return []rules.Cure{{Title: fmt.Sprintf("read body.%s as %s: %s", name, unit, p.Show(meant)), Make: func(g *model.Garment) {
		g.Body = maps.Clone(g.Body) // one body serves garments looked at side by side
		g.Body[name] = meant
		for _, l := range g.Levels {
			if l.Measure == name {
				l.Body = meant
			}
		}
	}}}
}

func levelUnits(p *rules.Pass, l *model.Level, bodyWrong bool) {
	p.NothingHere()
	if away, ok := guess.FarLevel(p.Garment, l); ok {
		suspect(p, away > p.Limit("level"), rules.Say{Key: "height", Account: levelAccount(l, away), Message: func() string {
			return fmt.Sprintf("the %s level lies at %s, %s times the height of all pieces away from them. Look at the figure and at its unit.",
				l.Name, p.Show(l.Y), model.Decimal(away, 1))
		}}, func(say rules.Say) { p.AtMost(away, "level", say) })
	}
	if bodyWrong || !model.Known(l.Body) {
		return
	}
	for _, layer := range p.Garment.Layers {
		if girth, err := measuring.Girth(p.Garment, layer, l); err == nil && !statesEase(layer, l) {
			layerUnits(p, layer, l, girth)
		}
	}
}

func statesEase(layer *model.Layer, l *model.Level) bool {
	return slices.ContainsFunc(layer.Ease, func(r model.LevelRange) bool { return r.Level == l })
}

func layerUnits(p *rules.Pass, layer *model.Layer, l *model.Level, girth float64) {
	meant := model.Range{Low: l.Body * p.Limit("least-share"), High: l.Body * p.Limit("greatest-share")}
	within(p, girth, meant, rules.Say{
		Key: layer.Address(), Account: girthAccount(p.Garment, layer, l, meant),
		Under: []rules.Under{{Rule: "unit-slip", Subject: p.Garment.Address(), Key: l.Measure}},
		Message: func() string {
			return fmt.Sprintf("%s is %s round at the %s level, where the body is %s: it looks as if one of the two were in another unit. %s",
				layer.Address(), p.Show(girth), l.Name, p.Show(l.Body), read(p, girth, meant))
		},
		Related: []rules.Related{{Message: "the layer", Place: layer.Place}},
	})
}

func allowanceUnits(p *rules.Pass, e *model.Edge) {
	meant := model.Range{Low: p.Limit("least-allowance"), High: p.Limit("greatest-allowance")}
	within(p, e.Allowance.Width, meant, rules.Say{
		Key: "allowance", Place: e.Allowance.Place, Cures: asTheHouse(p, e, meant),
		Message: func() string {
			return fmt.Sprintf("the allowance of %s is %s; allowances are from %s to %s wide. %s",
				e.Address(), p.Show(e.Allowance.Width), p.Show(meant.Low), p.Show(meant.High), read(p, e.Allowance.Width, meant))
		},
	})
}

// asTheHouse gives the edges that take the figure the house's allowance for what they
// are, or where it has none the width that was most likely meant.
func asTheHouse(p *rules.Pass, e *model.Edge, meant model.Range) []rules.Cure {
	place, width := e.Allowance.Place, 0.0
	if _, v := guess.OtherUnit(e.Allowance.Width, p.Garment.Unit, meant); v > 0 {
		width = v
	}
	return []rules.Cure{{Title: "look at the unit of the allowance of " + e.Address(), Make: func(g *model.Garment) {
		for _, other := range g.Edges() {
			if other.Allowance.Place != place {
				continue
			}
			if s := g.Standard(g.RoleOf(other)); s != nil {
				other.Allowance.Width = s.Width
			} else if width > 0 {
				other.Allowance.Width = width
			}
		}
	}}}
}

func pieceUnits(p *rules.Pass, piece *model.Piece) {
	far, ok := guess.FarPoint(piece)
	if !ok {
		p.NothingHere()
		return
	}
	odd := far.Times > p.Limit("point") && !guess.Confirmed(p.Garment, far, p.Limit("agree"))
	suspect(p, odd, rules.Say{
		Key: "point", Place: far.Edge.Place, Account: pointAccount(p.Garment, piece, far),
		Message: func() string {
			unit := p.Garment.Unit
			return fmt.Sprintf("the point [%s, %s] of %s lies far from all others: without it %s would be %s times smaller. Look for a lost decimal point.",
				unit.Bare(far.At.X), unit.Bare(far.At.Y), far.Edge.Address(), piece.Address(), model.Decimal(far.Times, 1))
		},
	}, func(say rules.Say) { p.AtMost(far.Times, "point", say) })
}
