package fit

import (
	_ "embed"
	"fmt"

	"understitch/model"
	"understitch/rules"
)

//go:embed testdata/bone-length.bad.garment.hcl
var boneLengthBad string

//go:embed testdata/bone-length.good.garment.hcl
var boneLengthGood string

// BoneLength checks that bones are shorter than their channels.
var BoneLength = &rules.Rule{
	Name:     "bone-length",
	Family:   "body",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "A bone is shorter than its channel, by a little at each end",
		Why: "A bone that fills its channel pushes through the seam at its end, into the turned edge above or into the wearer below, and the edges " +
			"cannot be stitched past it. When an edge is lowered at a fitting the bone has to follow.",
		How: "The channel is the edge, or the part of it, that the bone lies along, measured on the stitch line, darts closed. Take off the length " +
			"of the bone: what is left must be enough for both ends. A bone that is longer than its channel is an error, one that is too little shorter a warning. A bone that is much too short is not looked for.",
		Fix: "Cut the bone shorter, or move the ends of its channel.",
		Bad: boneLengthBad, Good: boneLengthGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "end", Value: 6, Unit: rules.Millimetres,
		Text:   "how much shorter than its channel a bone is at each end",
		Source: "common practice, no source; half an inch short of the top in one account: Strapless bodice, 1996, tampabay.com",
	}},
	Each: rules.Bones(boneLength),
}

func boneLength(p *rules.Pass, b *model.Bone) {
	say := rules.Say{Account: boneAccount(b), Related: []rules.Related{{Message: "the channel, " + b.Along.String(), Place: b.Along.Edge.Place}}}
	channel, err := b.Along.SewnLength()
	if err != nil {
		p.Cannot(err, say)
		return
	}
	needed := 2 * p.Limit("end")
	spare := channel - b.Length
	say.Message = func() string {
		than := fmt.Sprintf("only %s shorter than", p.Show(spare))
		if spare < 0 {
			than = fmt.Sprintf("%s longer than", p.Show(-spare))
		}
		return fmt.Sprintf("%s is %s long, %s its channel along %s (%s); it is to end %s short of either end. Cut it to %s at most.",
			b.Address(), p.Show(b.Length), than, b.Along, p.Show(channel), p.Show(p.Limit("end")), p.Show(channel-needed))
	}
	say.Mild = spare >= 0
	p.AtLeast(spare, needed, say)
}
