package report

import (
	"fmt"
	"slices"
	"strings"
)

// entry is a finding as people are told it, with those of which the very same
// is to be said.
type entry struct {
	Finding
	likewise []Finding
}

// fold joins findings that say the same of several things, so that a spec that
// is still being written does not bury its one real fault. The order is that of
// the first of each.
func fold(findings []Finding) []entry {
	var out []entry
	for _, f := range findings {
		i := slices.IndexFunc(out, func(e entry) bool { return says(e.Finding, f) })
		if i < 0 {
			out = append(out, entry{Finding: f})
			continue
		}
		out[i].likewise = append(out[i].likewise, f)
	}
	return out
}

// says reports whether two findings differ in nothing but the thing they are
// about.
func says(a, b Finding) bool {
	return a.Rule == b.Rule && a.Severity == b.Severity && slices.Equal(a.Sizes, b.Sizes) &&
		a.Mend == nil && b.Mend == nil && len(a.Related)+len(b.Related) == 0 &&
		strings.ReplaceAll(a.Message, a.Subject, "\x00") == strings.ReplaceAll(b.Message, b.Subject, "\x00")
}

func (s *sheet) likewise(e entry) {
	var places []word
	for i, f := range e.likewise {
		end := "),"
		if i == len(e.likewise)-1 {
			end = ")"
		}
		line := fmt.Sprintf("line %d", f.Range.Start.Line)
		if f.Range.File == e.Range.File {
			places = append(places, words(f.Subject+" ("+line+end)...)
			continue
		}
		places = append(places, words(f.Subject)...)
		places = append(places, unbroken("("+f.Range.File))
		places = append(places, words(line+end)...)
	}
	if len(places) > 0 {
		s.entryOf("likewise", places)
	}
}
