package spec

import (
	"fmt"
	"slices"
	"strings"

	"understitch/model"
)

// once makes one diagnostic of those that say the same of several places: a
// piece that was given another name is missed wherever the old one stands, and
// that is one fault. The list is in the order of the file; the first place is
// kept and the lines of the others are named. Only what is not there is told
// in this way; whatever else is wrong in two places has to be mended in each.
func once(list []model.Diagnostic) []model.Diagnostic {
	var out []model.Diagnostic
	at := map[string]int{} // where it stands in out
	others := map[int][]int{}
	for _, d := range list {
		if !strings.HasPrefix(d.Summary, thereIsNo) {
			out = append(out, d)
			continue
		}
		i, known := at[d.Summary]
		if !known {
			at[d.Summary] = len(out)
			out = append(out, d)
			continue
		}
		if line := d.Place.Start.Line; line != out[i].Place.Start.Line && !slices.Contains(others[i], line) {
			others[i] = append(others[i], line)
		}
	}
	for i := range out {
		if lines := others[i]; len(lines) > 0 {
			out[i].Detail = join(out[i].Detail, "It is named on "+lineList(lines)+" too.")
		}
	}
	return out
}

// thereIsNo begins what is said of a name that nothing has.
const thereIsNo = "there is no "

// lineList is "line 3", "lines 3 and 5", "lines 3, 5, 8 and 4 more".
func lineList(lines []int) string {
	const most = 5
	words := make([]string, 0, most+1)
	for _, l := range lines[:min(len(lines), most)] {
		words = append(words, fmt.Sprint(l))
	}
	if more := len(lines) - most; more > 0 {
		words = append(words, fmt.Sprintf("%d more", more))
	}
	if len(words) == 1 {
		return "line " + words[0]
	}
	last := len(words) - 1
	return "lines " + strings.Join(words[:last], ", ") + " and " + words[last]
}
