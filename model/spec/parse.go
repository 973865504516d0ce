package spec

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// parse guards and parses a file and checks its words. The tree is nil when
// the file could not be parsed.
func parse(name string, src []byte, root *shape, f *faults) *block {
	if bad := guard(name, src, root == houseShape); bad != nil {
		f.fault(bad.at, bad.detail, "%s", bad.summary)
		return nil
	}
	body, diags := syntax(name, src)
	for _, d := range diags {
		if d.Severity == hcl.DiagError { // later ones mostly follow from the first
			reword(d, name, src, f)
			return nil
		}
	}
	b := &block{header: hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}}
	g := grower{faults: f, root: root}
	g.grow(body, root, b)
	return b
}

// syntax runs the parser. A panic inside it would be a fault of the parser's
// and must not end the checking of other garments.
func syntax(name string, src []byte) (body *hclsyntax.Body, diags hcl.Diagnostics) {
	defer func() {
		if r := recover(); r != nil {
			at := hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
			diags = hcl.Diagnostics{{Severity: hcl.DiagError, Summary: "the file could not be parsed", Subject: &at,
				Detail: fmt.Sprint(r)}}
		}
	}()
	file, diags := hclsyntax.ParseConfig(src, name, hcl.InitialPos)
	body, _ = file.Body.(*hclsyntax.Body)
	return body, diags
}

// plainWords are the parser's messages as a pattern cutter would put them.
var plainWords = map[string][2]string{
	"Argument or block definition required": {"an attribute or a block is meant here", "Write NAME = VALUE, or WORD \"name\" { … }."},
	"Invalid argument name":                 {"the name before an equals sign has no quotes", ""},
	"Argument definition required": {
		"a block on one line holds one attribute", "Put each on a line of its own.",
	},
	"Invalid single-argument block definition": {
		"a block on one line holds one attribute", "Put each on a line of its own.",
	},
	"Missing newline after argument":         {"something is left over at the end of this line", "Each attribute has a line of its own."},
	"Unexpected comma after argument":        {"no comma is needed here", "Each attribute has a line of its own."},
	"Missing newline after block definition": {"something is left over behind the closing brace", "Begin a new line after }."},
	"Invalid block definition":               {"this block has no opening brace", "Write WORD \"name\" {, all on one line."},
	"Missing expression":                     {"the value is missing", ""},
	"Invalid expression":                     {"a value is missing or cannot be read here", ""},
	"Missing item separator":                 {"a comma is missing in the list", ""},
	"Missing attribute separator":            {"a comma is missing between { and }", ""},
	"Missing attribute value":                {"a name without a value", "Write NAME = VALUE."},
	"Missing key/value separator":            {"a name without a value", "Write NAME = VALUE."},
	"Missing argument separator":             {"a comma is missing between the brackets", ""},
	"Unbalanced parentheses":                 {"a bracket ) is missing", ""},
	"Invalid number literal":                 {"this is not a number", ""},
	"Invalid character":                      {"this character cannot stand here", ""},
	"Invalid escape sequence":                {"a backslash in text must be written twice", ""},
	"Missing false expression in conditional": {
		"the question mark needs a colon", "Write CONDITION ? VALUE : OTHER VALUE.",
	},
	"Unsupported operator": {"this sign is not known", "Known are + - * / % and comparisons."},
}

func reword(d *hcl.Diagnostic, name string, src []byte, f *faults) {
	at := hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	if d.Subject != nil {
		at = *d.Subject
	}
	at.Filename = name
	if at.End.Byte > len(src) || at.Start.Byte > at.End.Byte {
		at.End = at.Start
	}
	summary, detail := d.Summary, d.Detail
	token := string(src[min(at.Start.Byte, len(src)):min(at.End.Byte, len(src))])
	switch {
	case d.Summary == "Attribute redefined":
		summary, detail = token+" is there twice", firstOf(src, token, at.Start.Byte)
	case token == "}" && d.Summary == "Argument or block definition required":
		summary, detail = "this closing brace has no opening brace", ""
	case strings.HasPrefix(d.Summary, "Invalid 'for'"):
		summary, detail = "for is not used in specs", "Specs have no loops; name each value."
	case d.Summary == "Invalid character" && strings.ContainsAny(token, "'‘’“”„«»"):
		summary, detail = "text stands in straight double quotes: \"…\"", ""
	case d.Summary == "Invalid block definition" && token == "=":
		summary, detail = "a block has no equals sign", "Write WORD \"name\" {."
	default:
		if w, known := plainWords[d.Summary]; known {
			summary, detail = w[0], w[1]
		}
	}
	f.fault(at, detail, "%s", summary)
}

// firstOf tells the line on which an attribute given twice stands first. It
// looks backward for the nearest line that begins with the name.
func firstOf(src []byte, name string, before int) string {
	for at := lineStart(src, before); at > 0; {
		end := at - 1
		at = lineStart(src, end)
		line := bytes.TrimSpace(src[at:end])
		if rest, ok := bytes.CutPrefix(line, []byte(name)); ok && bytes.HasPrefix(bytes.TrimSpace(rest), []byte("=")) {
			return fmt.Sprintf("The first stands on line %d.", lineAt(src, at))
		}
	}
	return ""
}
