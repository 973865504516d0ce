package house

import (
	"strings"

	"github.com/hashicorp/hcl/v2"
)

// plainWords are what the parser's own nodes say when they are reckoned, in
// words for those who write rules about garments.
var plainWords = map[string][2]string{
	"Unsupported attribute":                    {"there is no figure of this name here", "A list has no figures; go over its members with for, or name one of them."},
	"Invalid index":                            {"there is no member of this name or number here", ""},
	"Iteration over non-iterable value":        {"for goes over a list, and this is none", ""},
	"Iteration over null value":                {"the list that for goes over is not known", ""},
	"Invalid template interpolation value":     {"what stands in ${ } is to be a figure or text", "Name one figure of it."},
	"Inconsistent conditional result types":    {"both answers of a choice are of one kind: two figures, two texts, or two lists", ""},
	"Incorrect condition type":                 {"something that is true or false stands before the question mark", ""},
	"Null condition":                           {"what stands before the question mark is not known", ""},
	"Condition is null":                        {"what stands behind if is not known", ""},
	"Invalid 'for' condition":                  {"something that is true or false stands behind if", ""},
	"Attempt to index null value":              {"what a member is looked up in is not known", ""},
	"Attempt to get attribute from null value": {"the thing whose figure is meant is not known", ""},
	"Missing map element":                      {"there is no member of this name here", ""},
	"Null value as key":                        {"the name that members are told by is not known", ""},
	"Invalid object key":                       {"the name that members are told by is to be text", ""},
	"Incorrect key type":                       {"the name that members are told by is to be text", ""},
	"Duplicate object key":                     {"two members would have one name", ""},
	"Operation failed":                         {"this cannot be reckoned", ""},
	"Invalid operand":                          {"a figure of another kind is meant here", ""},
}

// plainly puts a diagnostic of the parser's nodes into plain words. Those of
// our own nodes are so already.
func plainly(d *hcl.Diagnostic) (summary, detail string) {
	if w, known := plainWords[d.Summary]; known {
		return w[0], w[1]
	}
	return strings.TrimSuffix(lowered(d.Summary), "."), d.Detail
}
