package page

import "strings"

// Label is how a severity is named on its tag.
func (f Finding) Label() string { return strings.ToUpper(f.Severity[:1]) + f.Severity[1:] }

// InSizes are the sizes it shows in, as the script reads them.
func (f Finding) InSizes() string { return strings.Join(f.Sizes, "\n") }

// Class is the ruling as a class.
func (v Verdict) Class() string { return strings.ReplaceAll(v.Ruling, " ", "-") }
