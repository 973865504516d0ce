package house

import (
	"fmt"
	"slices"

	"github.com/agext/levenshtein"
	"github.com/hashicorp/hcl/v2"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// levelName is a level that an expression names, as in piece.width.waist, and where.
// A house does not know the levels of its garments, so whether it is one is seen at
// each garment.
type levelName struct {
	level, written string
	at             hcl.Range
}

// misnamed gives an error for each level that a rule names and the garment has under
// a name that is nearly the same: the house's is a slip of the pen, and the rule would
// look at nothing. A garment that has no such level at all, a skirt without a bust, is
// none of its business; there the figure is merely not to be had.
func (r *rule) misnamed(g *model.Garment) []model.Diagnostic {
	var known []string
	for _, l := range g.Levels {
		known = append(known, l.Name)
	}
	var out []model.Diagnostic
	for _, n := range r.levels {
		near := rules.Nearest(n.level, known)
		if slices.Contains(known, n.level) || near == "" || !slip(n.level, near) {
			continue
		}
		out = append(out, model.Diagnostic{
			Severity: "error", Summary: fmt.Sprintf("%s is asked for, and %s has no level %s", n.written, g.Name, n.level),
			Detail: suggested(n.level, known), Place: spec.PlaceOf(n.at),
		})
	}
	return out
}

// slip reports whether a name is another one with a letter or two of it wrong: waits
// is waist, but bust is not waist, nor hem hip (by judgement, no source).
func slip(word, meant string) bool {
	return levenshtein.Distance(word, meant, nil) <= min(2, min(len(word), len(meant))/2)
}
