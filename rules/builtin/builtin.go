// Package builtin lists the rules that come with understitch, written out one
// by one: what is checked can be read here, and a rule that is not listed does
// not exist.
package builtin

import (
	"understitch/rules"
	"understitch/rules/allowances"
	"understitch/rules/closures"
	"understitch/rules/draft"
	"understitch/rules/fit"
	"understitch/rules/layers"
	"understitch/rules/notches"
	"understitch/rules/seams"
	"understitch/rules/waivers"
)

// Rules are all rules that are built in, in the order in which a garment is
// judged.
func Rules() []*rules.Rule {
	return []*rules.Rule{
		layers.SharedEdge,
		layers.InnerWithinOuter,
		layers.DartAnswer,
		layers.Girth,
		layers.TurnOfCloth,
		layers.Suppression,
		layers.HemDrop,
		layers.Stretch,
		layers.ShrinkMatch,

		&seams.Walk,
		&seams.True,
		&seams.EaseSide,
		&seams.DartLegs,
		&seams.PleatFold,
		&seams.FoldStraight,
		&seams.EdgeUnused,

		&notches.Match,
		&notches.OnLine,
		&notches.Depth,
		&notches.Spacing,
		&notches.Unique,

		&allowances.Match,
		&allowances.Standard,
		&allowances.Closure,
		&allowances.Fold,
		&allowances.Drawn,
		&allowances.Room,

		closures.TapeCut,
		closures.Edges,
		closures.TapePair,
		closures.ZipLength,
		closures.ButtonSpacing,
		closures.LacingGap,

		fit.TapeMeasure,
		fit.BodyEase,
		fit.BodyPlausible,
		fit.ElasticRatio,
		fit.BoneLength,

		&draft.OutlineClosed,
		&draft.OutlineCrossing,
		&draft.AlterationPartner,
		&draft.TemplatePoints,
		&draft.MirrorPair,
		&draft.GrainMatch,
		&draft.SizeStep,
		&draft.UnitSlip,

		&waivers.Current,
	}
}
