package draft

import (
	"fmt"
	"maps"
	"slices"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/reckoned"
	"understitch/rules"
	"understitch/rules/guess"
)

// whole is what is in another unit altogether.
type whole uint8

const (
	nothing whole = iota
	theBody       // the wearer's measures
	theFile       // all figures of the file, or all that is drafted
)

// wholeUnits looks for a unit in which all girths are what girths can be, where none
// is as it stands.
func wholeUnits(p *rules.Pass, g *model.Garment) whole {
	if body := trunk(g); len(body) > 0 {
		if scale, unit, ok := converted(p, g, body); ok {
			drafted, also := drafted(p, g, nil)
			if own := g.BodyAt[trunkNames(g)[0]].File == g.File; also && own && drafted.unit == unit {
				wholeFile(p, g, drafted, "every figure of the file looks", nil)
				return theFile
			}
			wholeBody(p, g, scale, guess.UnitName(unit))
			return theBody
		}
		if slices.ContainsFunc(body, func(v float64) bool { return girths(p).Beyond(v) != 0 }) {
			return nothing // one measure alone is wrong, and is reported
		}
	}
	if found, ok := drafted(p, g, known(g)); ok {
		wholeFile(p, g, found, "all that is drafted looks", g)
		return theFile
	}
	return nothing
}

// known is the body, or nil where no level is held against it.
func known(g *model.Garment) map[string]float64 {
	if slices.ContainsFunc(g.Levels, func(l *model.Level) bool { return model.Known(l.Body) }) {
		return g.Body
	}
	return nil
}

func trunkNames(g *model.Garment) []string {
	return slices.DeleteFunc(guess.TorsoGirths(), func(name string) bool { _, ok := g.Body[name]; return !ok })
}

// trunk are the girths round the trunk that the wearer's body states.
func trunk(g *model.Garment) []float64 {
	var out []float64
	for _, name := range trunkNames(g) {
		out = append(out, g.Body[name])
	}
	return out
}

// converted is by how much all girths of a body are too small, and the unit in which
// they were most likely measured; there is none where one of them can be right as it
// stands.
func converted(p *rules.Pass, g *model.Garment, body []float64) (scale float64, unit model.Unit, ok bool) {
	sound := girths(p)
	if len(body) > 1 {
		sound.High = p.Limit("usual-girth")
	}
	if slices.ContainsFunc(body, func(v float64) bool { return sound.Beyond(v) == 0 }) {
		return 1, unit, false
	}
	sound.High = p.Limit("usual-girth")
	for _, stated := range []model.Unit{g.Unit, model.Centimetre, model.Millimetre, model.Inch} { // a house has a unit of its own
		for _, u := range model.Units() {
			scale := u.Millimetre / stated.Millimetre
			if u != stated && !slices.ContainsFunc(body, func(v float64) bool { return sound.Beyond(v*scale) != 0 }) {
				return scale, u, true
			}
		}
	}
	return 1, unit, false
}

// draftedIn is a unit in which the girths of a garment's layers are what they can be.
type draftedIn struct {
	unit      model.Unit
	was, will girthAt // the first girth as it stands, and in that unit
	girths    int     // how many there are
}

// girthAt is what a layer measures round at a level.
type girthAt struct {
	layer, level string
	round        float64
}

// drafted finds the unit in which all girths of the layers suit the body, where none
// does as it stands. Without a body they must be what garments can measure.
func drafted(p *rules.Pass, g *model.Garment, body map[string]float64) (draftedIn, bool) {
	if g.As == nil {
		return draftedIn{}, false
	}
	was := rounds(g)
	if len(was) == 0 || body != nil && levels(was) < 2 || slices.ContainsFunc(was, func(r girthAt) bool { return suits(p, g, r, body, p.Limit("least-share")) }) {
		return draftedIn{}, false
	}
	for _, u := range model.Units() {
		if u == g.Unit {
			continue
		}
		other := g.As(u, false)
		if other == nil {
			continue
		}
		will := rounds(other)
		if len(will) == len(was) && !slices.ContainsFunc(will, func(r girthAt) bool { return !suits(p, g, r, body, p.Limit("drafted-share")) }) {
			return draftedIn{u, was[0], will[0], len(was)}, true
		}
	}
	return draftedIn{}, false
}

// levels counts the levels of girths: at a single one the body's figure may as well be
// wrong.
func levels(list []girthAt) int {
	names := map[string]bool{}
	for _, r := range list {
		names[r.level] = true
	}
	return len(names)
}

// rounds are the girths of all layers at all levels at which they close.
func rounds(g *model.Garment) []girthAt {
	var out []girthAt
	for _, layer := range g.Layers {
		for _, l := range g.Levels {
			if round, err := measuring.Girth(g, layer, l); err == nil {
				out = append(out, girthAt{layer.Address(), l.Name, round})
			}
		}
	}
	return out
}

// suits reports whether a girth can be right: a share of the body's at its level, or,
// where no body is known there, what garments measure.
func suits(p *rules.Pass, g *model.Garment, r girthAt, body map[string]float64, least float64) bool {
	for _, l := range g.Levels {
		if l.Name == r.level && body != nil && model.Known(l.Body) {
			return model.Range{Low: l.Body * least, High: l.Body * p.Limit("greatest-share")}.Beyond(r.round) == 0
		}
	}
	return model.Range{Low: p.Limit("least-girth"), High: 4 * p.Limit("greatest-girth")}.Beyond(r.round) == 0
}

// wholeBody reports a body whose measures are all in another unit.
func wholeBody(p *rules.Pass, g *model.Garment, scale float64, unit string) {
	name := trunkNames(g)[0]
	p.Fault(rules.Say{Key: name, Place: g.BodyAt[name], Account: measuresAccount(g, scale, unit),
		Cures: []rules.Cure{{Title: "read the body as " + unit, Make: func(g *model.Garment) { scaleBody(g, scale) }}},
		Message: func() string {
			return fmt.Sprintf("the body looks as if it were in %s: body.%s is %s, and a trunk measures %s to %s. Read as %s it would be %s%s. Look at its unit.",
				unit, name, p.Show(g.Body[name]), p.Show(p.Limit("least-girth")), p.Show(p.Limit("greatest-girth")), unit, p.Show(g.Body[name]*scale), andOthers(len(trunk(g))))
		}})
}

// scaleBody gives every measure of the body the length that it has in another unit.
func scaleBody(g *model.Garment, scale float64) {
	g.Body = maps.Clone(g.Body) // one body serves garments that are checked side by side
	for name := range g.Body {
		g.Body[name] *= scale
	}
	for _, l := range g.Levels {
		if l.Measure != "" {
			l.Body *= scale
		}
	}
}

// wholeFile reports figures that are all in another unit; keep has the body that is
// not, or is nil.
func wholeFile(p *rules.Pass, g *model.Garment, found draftedIn, what string, keep *model.Garment) {
	unit := guess.UnitName(found.unit)
	p.Fault(rules.Say{Key: "file", Place: g.Place, Account: roundsAccount(found, unit),
		Cures: []rules.Cure{{Title: "read the file as " + unit, Make: func(into *model.Garment) {
			other := g.As(found.unit, true)
			if other == nil {
				return
			}
			*into = *other
			if keep == nil {
				return
			}
			into.Body = keep.Body
			for i, l := range into.Levels {
				if l.Measure != "" && i < len(keep.Levels) {
					l.Body = keep.Levels[i].Body
				}
			}
		}}},
		Message: func() string {
			return fmt.Sprintf("%s as if it were in %s: %s measures %s round at the %s level. Read as %s it would be %s%s. Look at unit = %q.",
				what, unit, found.was.layer, p.Show(found.was.round), found.was.level, unit, p.Show(found.will.round), andOthers(found.girths), g.Unit.Name)
		}})
}

// andOthers says of several girths that the rest fit as well.
func andOthers(girths int) string {
	if girths < 2 {
		return ""
	}
	return ", and every other girth would fit too"
}

func measuresAccount(g *model.Garment, scale float64, unit string) rules.Account {
	return func(l *reckoned.Lines) {
		for _, name := range trunkNames(g) {
			l.Beside(0, g.Body[name], "is body.%s as it stands", name)
			l.Beside(0, g.Body[name]*scale, "is body.%s in %s", name, unit)
		}
	}
}

func roundsAccount(found draftedIn, unit string) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(0, found.was.round, "is what %s measures round at the %s level as it stands", found.was.layer, found.was.level)
		l.Beside(0, found.will.round, "is what it measures there in %s", unit)
	}
}
