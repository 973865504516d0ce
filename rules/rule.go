package rules

import (
	"understitch/model"
	"understitch/model/reckoned"
)

// Rule is one check of the trade.
type Rule struct {
	Name     string   // "seam-walk"
	Family   string   // the group it is listed under: "seams"
	Severity Severity // of its findings, and the highest of a rule with two limits
	Settled  bool     // its figure is stated, not drawn: neither a fitting nor another size changes it
	Under    []string // the rules whose findings may make one of its own redundant
	Doc      Doc
	Limits   []Limit
	Each     Each   // what it looks at in every size, and how it judges one of them
	Across   Across // instead of Each: what it looks at over all sizes together

	// Misnamed gives errors for what the rule names and a garment has only under a
	// name that is nearly the same; nil for a rule that names nothing of a garment.
	Misnamed func(g *model.Garment) []model.Diagnostic

	Firm  string      // why its findings cannot be accepted; "" where they can
	Place model.Place // the line of the house file that states it; zero for a rule that is built in
}

// Doc is a rule's documentation. It feeds explain, the reference pages, the
// metadata of machine reports and the editor.
type Doc struct {
	Title   string // what must hold, one line
	Why     string // what goes wrong at the machine or on the body otherwise
	How     string // how it is computed
	Nothing string // when there is nothing to judge on a thing it looks at; "" where there always is
	Fix     string // what the cutter does about a finding
	Bad     string // a spec in which it finds something, with fault comments
	Good    string // the same spec put right
	House   string // the house.hcl that holds for both examples; "" for none
	Since   string
}

// Unit is the unit of a figure or a limit.
type Unit = reckoned.Unit

// The units of figures.
const (
	Millimetres = reckoned.Millimetres
	Degrees     = reckoned.Degrees
	Ratio       = reckoned.Ratio
	Percent     = reckoned.Percent
)

// Limit is a named figure a rule judges by. A house can change it.
type Limit struct {
	Name   string // "warn", "error", or what it limits: "shape"
	Value  float64
	Unit   Unit
	Text   string // what it limits, in words
	Source string // where the figure comes from
}

// Steps are the two limits of a rule whose findings are a warning past the
// first and an error past the second.
func Steps(warn, err float64, unit Unit, text, source string) []Limit {
	return []Limit{
		{"warn", warn, unit, text + ": a warning past this", source},
		{"error", err, unit, text + ": an error past this", source},
	}
}

// NoteSteps are the two limits of a rule whose findings are a note past the
// first and a warning past the second.
func NoteSteps(note, warn float64, unit Unit, text, source string) []Limit {
	return []Limit{
		{"note", note, unit, text + ": a note past this", source},
		{"warn", warn, unit, text + ": a warning past this", source},
	}
}

// Each walks over the things of a garment that a rule looks at.
type Each func(g *model.Garment, look func(thing model.Thing, run func(*Pass)))

// Across walks over what a rule judges over all sizes of a garment at once. The
// things are those of the first size; what a finding is about is said by
// Say.Size.
type Across func(sizes []*model.Garment, look func(thing model.Thing, run func(*Pass)))

// over makes an Each of a list of things and a function that judges one.
func over[T model.Thing](list func(*model.Garment) []T, run func(*Pass, T)) Each {
	return func(g *model.Garment, look func(model.Thing, func(*Pass))) {
		for _, thing := range list(g) {
			look(thing, func(p *Pass) { run(p, thing) })
		}
	}
}

// Seams looks at every seam.
func Seams(run func(*Pass, *model.Seam)) Each {
	return over(func(g *model.Garment) []*model.Seam { return g.Seams }, run)
}

// Shares looks at every group of edges that layers share.
func Shares(run func(*Pass, *model.Share)) Each {
	return over(func(g *model.Garment) []*model.Share { return g.Shares }, run)
}

// Insides looks at every inner piece that lies in an outer one.
func Insides(run func(*Pass, *model.Inside)) Each {
	return over(func(g *model.Garment) []*model.Inside { return g.Insides }, run)
}

// Closures looks at every closure.
func Closures(run func(*Pass, *model.Closure)) Each {
	return over(func(g *model.Garment) []*model.Closure { return g.Closures }, run)
}

// Measures looks at every run over the pattern.
func Measures(run func(*Pass, *model.Measure)) Each {
	return over(func(g *model.Garment) []*model.Measure { return g.Measures }, run)
}

// Levels looks at every level.
func Levels(run func(*Pass, *model.Level)) Each {
	return over(func(g *model.Garment) []*model.Level { return g.Levels }, run)
}

// Layers looks at every layer.
func Layers(run func(*Pass, *model.Layer)) Each {
	return over(func(g *model.Garment) []*model.Layer { return g.Layers }, run)
}

// Pieces looks at every piece of every layer.
func Pieces(run func(*Pass, *model.Piece)) Each {
	return over((*model.Garment).Pieces, run)
}

// Edges looks at every edge of every piece.
func Edges(run func(*Pass, *model.Edge)) Each {
	return over((*model.Garment).Edges, run)
}

// Notches looks at every notch.
func Notches(run func(*Pass, *model.Notch)) Each {
	return over((*model.Garment).Notches, run)
}

// Darts looks at every dart.
func Darts(run func(*Pass, *model.Dart)) Each {
	return over((*model.Garment).Darts, run)
}

// Pleats looks at every pleat and tuck.
func Pleats(run func(*Pass, *model.Dart)) Each {
	return over((*model.Garment).Pleats, run)
}

// Elastics looks at every elastic.
func Elastics(run func(*Pass, *model.Elastic)) Each {
	return over(func(g *model.Garment) []*model.Elastic { return g.Elastics }, run)
}

// Bones looks at every bone.
func Bones(run func(*Pass, *model.Bone)) Each {
	return over(func(g *model.Garment) []*model.Bone { return g.Bones }, run)
}

// Whole looks at the garment as one thing, for what belongs to no part of it.
func Whole(run func(*Pass, *model.Garment)) Each {
	return over(func(g *model.Garment) []*model.Garment { return []*model.Garment{g} }, run)
}

// Joins looks at every pair of sides that are brought together: the seams, and
// the closures, whose edges meet when they are done up.
func Joins(run func(*Pass, *model.Join)) Each {
	return over((*model.Garment).Joins, run)
}

// Alterations looks at every alteration, in the order they were made.
func Alterations(run func(*Pass, *model.Alteration)) Each {
	return over(func(g *model.Garment) []*model.Alteration { return g.Alterations }, run)
}
