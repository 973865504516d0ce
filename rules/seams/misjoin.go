package seams

import (
	"fmt"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

// misjoined tells of a seam that names a wrong edge. All other rules look at it as
// it is meant, so that the one mistake is told once.
func misjoined(p *rules.Pass, s *model.Seam, j *model.Join) {
	var named, meant []string
	say := rules.Say{Place: j.Misjoin.Swaps[0].Named.Place}
	mend := &rules.Mend{}
	for _, w := range j.Misjoin.Swaps {
		named, meant = append(named, w.Named.Edge.Address()), append(meant, w.Meant.Address())
		say.Related = append(say.Related, rules.Related{Message: "nothing else takes " + w.Meant.Address(), Place: w.Meant.Place})
		mend.Edits = append(mend.Edits, rules.Edit{Place: w.Named.Place, Text: w.Meant.Address()})
	}
	mend.Title = fmt.Sprintf("write %s for %s", sewing.Listed(meant), sewing.Listed(named))
	say.Mend = mend
	say.Message = func() string {
		are := "is"
		if len(meant) > 1 {
			are = "are"
		}
		return fmt.Sprintf("%s names %s, and %s, which nothing else takes and which would fit, %s likely meant. Name %s there. "+
			"All else was checked as if it said so.", s.Address(), sewing.Listed(named), sewing.Listed(meant), are, sewing.Listed(meant))
	}
	p.Fault(say)
}
