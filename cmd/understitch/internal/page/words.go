package page

import (
	"encoding/json"
	"regexp"
	"strings"
	"unicode"
)

// Label is how a severity is named on its tag.
func (f Finding) Label() string { return strings.ToUpper(f.Severity[:1]) + f.Severity[1:] }

// InSizes are the sizes it shows in, as the script reads them; "" for all.
func (f Finding) InSizes() string {
	if len(f.Sizes) == 0 {
		return ""
	}
	text, err := json.Marshal(f.Sizes)
	if err != nil {
		return "" // text can always be written
	}
	return string(text)
}

// Class is the ruling as a class.
func (v Verdict) Class() string { return strings.ReplaceAll(v.Ruling, " ", "-") }

// order is what an agent of a CI system would take for an order, were the page
// printed to the log of a job.
var order = regexp.MustCompile(`##([A-Za-z]*\[)`)

// harmless takes out of a finished page what may show nothing but steer: control
// characters, those that turn the direction of writing, and orders to CI agents,
// which read the same afterwards. A spec is shown in the page as it stands, and
// anything may stand in it.
func harmless(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)):
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
	return order.ReplaceAllString(text, "#&#35;$1")
}
