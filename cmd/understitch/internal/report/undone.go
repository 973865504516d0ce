package report

import (
	"regexp"
	"slices"
	"strings"
)

// undone are the checks that were not possible for one reason.
type undone struct {
	reason   string   // without the address where one alone stands in it
	subjects []string // what it was said of; none when the reason stands as it is
	rules    []string
}

// noDrawing is the reason that a drawing would remove.
const noDrawing = "no drawing"

var address = regexp.MustCompile(`[a-z][a-z0-9_-]*(?:\.[a-z0-9_-]+)+`)

// byReason groups what was not possible, so that a piece known by tape alone
// takes a line and not a page. Reasons that differ only in the one thing they
// name are one reason.
func byReason(list []NotPossible) []undone {
	var out []undone
	for _, n := range list {
		reason, subject := splitReason(n.Reason)
		i := slices.IndexFunc(out, func(u undone) bool { return u.reason == reason })
		if i < 0 {
			i = len(out)
			out = append(out, undone{reason: reason})
		}
		out[i].subjects = addTo(out[i].subjects, subject)
		out[i].rules = addTo(out[i].rules, n.Rule)
	}
	return out
}

// splitReason takes the address off the start or the end of a reason.
func splitReason(reason string) (rest, subject string) {
	found := address.FindAllStringIndex(reason, -1)
	if len(found) != 1 {
		return reason, ""
	}
	from, to := found[0][0], found[0][1]
	switch {
	case from == 0:
		rest = strings.TrimPrefix(strings.TrimSpace(reason[to:]), "has ")
	case to == len(reason):
		rest = strings.TrimSpace(reason[:from])
	default:
		return reason, ""
	}
	return rest, reason[from:to]
}

func addTo(list []string, item string) []string {
	if item == "" || slices.Contains(list, item) {
		return list
	}
	return append(list, item)
}

// drawable are the rules that could be followed further if there were drawings.
func drawable(groups []undone) []string {
	var out []string
	for _, u := range groups {
		if strings.Contains(u.reason, noDrawing) {
			for _, r := range u.rules {
				out = addTo(out, r)
			}
		}
	}
	return out
}
