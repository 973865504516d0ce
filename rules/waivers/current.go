package waivers

import (
	_ "embed"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/waiver-current.bad.garment.hcl
var currentBad string

//go:embed testdata/waiver-current.good.garment.hcl
var currentGood string

// Current checks that every waiver still covers a finding and has not run out.
var Current = rules.Rule{
	Name:     rules.WaiverRule,
	Family:   "waivers",
	Severity: rules.Warning,
	Doc: rules.Doc{
		Title: "A waiver covers a fault that is there, and has not run out",
		Why: "A fault was looked at and accepted, and the reason was written down. Once the fault is mended the waiver would hide the next one at " +
			"the same place without anybody having looked at it. And what was accepted for one fitting is not accepted for good.",
		How: "After all sizes are checked each waiver is held against the faults that were found: its rule and the thing it names must be those of " +
			"a fault, and not of a rule that cannot be waived. Its last day is compared with today's date. Where only some sizes are checked, a " +
			"waiver without a fault is left alone, for it may belong to another size.",
		Fix: "Take out a waiver that covers nothing. Where one has run out, mend what it covered, or look at it again and give it a new date and " +
			"reason.",
		Bad: currentBad, Good: currentGood, Since: "0.1",
	},
	Firm: "what is wrong with a waiver is put right in that waiver",
	Each: func(*model.Garment, func(model.Thing, func(*rules.Pass))) {}, // the engine judges waivers after all else
}
