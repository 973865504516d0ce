package seams

import (
	"fmt"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
	"understitch/rules/guess"
)

// misjoined reports a seam that names a wrong edge. What other rules find because of
// it is a consequence, which shows when the edges that are meant are named.
func misjoined(p *rules.Pass, s *model.Seam, wrong *guess.Misjoin) {
	var named, meant []string
	say := rules.Say{Place: wrong.Swaps[0].Named.Place}
	mend := &rules.Mend{}
	for _, w := range wrong.Swaps {
		named, meant = append(named, w.Named.Edge.Address()), append(meant, w.Meant.Address())
		say.Related = append(say.Related, rules.Related{Message: "nothing else takes " + w.Meant.Address(), Place: w.Meant.Place})
		mend.Edits = append(mend.Edits, rules.Edit{Place: w.Named.Place, Text: w.Meant.Address()})
	}
	mend.Title = fmt.Sprintf("write %s for %s", sewing.Listed(meant), sewing.Listed(named))
	say.Mend = mend
	say.Cures = []rules.Cure{{Title: mend.Title, Edits: mend.Edits, Make: naming(s.Address(), wrong)}}
	say.Message = func() string {
		are := "is"
		if len(meant) > 1 {
			are = "are"
		}
		return fmt.Sprintf("%s names %s, and %s, which nothing else takes and which would fit, %s likely meant. Name %s there.", s.Address(), sewing.Listed(named), sewing.Listed(meant), are, sewing.Listed(meant))
	}
	p.Fault(say)
}

// naming names the edges that are meant in the seam of a garment built anew.
func naming(seam string, wrong *guess.Misjoin) func(*model.Garment) {
	return func(g *model.Garment) {
		edges := map[string]*model.Edge{}
		for _, e := range g.Edges() {
			edges[e.Address()] = e
		}
		for _, s := range g.Seams {
			if s.Address() != seam {
				continue
			}
			for i := range s.Sides {
				s.Sides[i] = slices.Clone(s.Sides[i])
				for k, st := range s.Sides[i] {
					for _, w := range wrong.Swaps {
						if w.Named.Edge.Address() == st.Edge.Address() && w.Named.Place == st.Place {
							s.Sides[i][k].Edge = edges[w.Meant.Address()]
						}
					}
				}
			}
		}
	}
}
