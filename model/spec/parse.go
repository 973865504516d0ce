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
	if bad := guard(name, src, root); bad != nil {
		f.fault(bad.at, bad.detail, "%s", bad.summary)
		return nil
	}
	body, diags := syntax(name, src)
	if d := first(diags); d != nil {
		reword(d, name, src, root, f)
		return nil
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

// first is the error that stands first in the file, or nil. Later ones mostly
// follow from it.
func first(diags hcl.Diagnostics) (d *hcl.Diagnostic) {
	odd := func(d *hcl.Diagnostic) bool { return strings.HasPrefix(d.Summary, "Invalid character") }
	for _, x := range diags {
		switch {
		case x.Severity != hcl.DiagError:
		case d == nil:
			d = x
		case x.Subject == nil || d.Subject == nil:
		// A sign that cannot be spoils its whole line.
		case x.Subject.Start.Line == d.Subject.Start.Line && odd(x) != odd(d):
			if odd(x) {
				d = x
			}
		case x.Subject.Start.Byte < d.Subject.Start.Byte:
			d = x
		}
	}
	return d
}

// plainWords are the parser's messages as a pattern cutter would put them, for
// faults that are none of the known slips. What is not here is not reached in a
// file that the guard passed, or is a loop or a template of a house's.
var plainWords = map[string][2]string{
	"Argument or block definition required":           {"neither a block nor a value begins like this", "Write NAME = VALUE, or WORD \"name\" { … }."},
	"Invalid argument name":                           {"the word before an equals sign has no quotes", ""},
	"Argument definition required":                    {"a block on one line holds one value", "Put each on a line of its own, and the closing brace too."},
	"Invalid single-argument block definition":        {"a block on one line holds one value", "Put each on a line of its own, and the closing brace too."},
	"Missing newline after argument":                  {"something is left over at the end of this line", "Each value has a line of its own."},
	"Unexpected comma after argument":                 {"no comma is needed at the end of a line", ""},
	"Missing newline after block definition":          {"something is left over behind the closing brace", "Begin a new line after }."},
	"Invalid block definition":                        {"this block has no opening brace", "Write WORD \"name\" {, all on one line."},
	"Missing expression":                              {"the value is missing", ""},
	"Invalid expression":                              {"a value is missing or cannot be read here", ""},
	"Missing item separator":                          {"a comma is missing in the list", ""},
	"Missing attribute separator":                     {"a comma is missing between { and }", ""},
	"Missing attribute value":                         {"a word without a value", "Write NAME = VALUE."},
	"Missing key/value separator":                     {"a word without a value", "Write NAME = VALUE."},
	"Missing argument separator":                      {"a comma is missing between the brackets", ""},
	"Missing close bracket on index":                  {"a comma is missing before this bracket, or a ] behind it", ""},
	"Missing close bracket on splat index":            {"a * cannot stand in square brackets", ""},
	"Invalid legacy index syntax":                     {"a name has words between its dots, not figures", ""},
	"Nested splat expression not allowed":             {"a * cannot stand behind a dot", ""},
	"Invalid attribute name":                          {"a name is missing behind this point", "For example: draft.quarter."},
	"Attribute name required":                         {"a name is missing behind this point", "For example: draft.quarter."},
	"Missing function name":                           {"two colons are not used", ""},
	"Missing open parenthesis":                        {"a bracket ( is missing", ""},
	"Missing closing parenthesis":                     {"a bracket ) is missing", ""},
	"Unbalanced parentheses":                          {"a bracket ) is missing", ""},
	"Invalid number literal":                          {"this is not a number", ""},
	"Invalid character":                               {"this character cannot stand here", ""},
	"Invalid string literal":                          {"a name in quotes cannot hold this", ""},
	"Invalid multi-line string":                       {"quoted text ends on its line", ""},
	"Unclosed template interpolation sequence":        {"the brace after $ is not closed", "Write ${ NAME }, or $${ for the signs themselves."},
	"Extra characters after interpolation expression": {"something is left over before the brace } that belongs to ${", "Write ${ NAME }, or $${ for the signs themselves."},
	"Unterminated template string":                    {"the text that begins here is not closed", ""},
	"Invalid escape sequence":                         {"a backslash in text must be written twice", ""},
	"Missing false expression in conditional":         {"the question mark needs a colon", "Write COMPARISON ? VALUE : OTHER VALUE."},
	"Unsupported operator":                            {"this sign is not known", "Known are + - * / % and comparisons."},
}

// reword puts the parser's complaint into words for cutters: what was meant,
// where that is known, else what the parser says, in plain words.
func reword(d *hcl.Diagnostic, name string, src []byte, root *shape, f *faults) {
	at := hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	if d.Subject != nil {
		at = *d.Subject
	}
	at.Filename = name
	if at.End.Byte > len(src) || at.Start.Byte > at.End.Byte {
		at.End = at.Start
	}
	token := string(src[min(at.Start.Byte, len(src)):min(at.End.Byte, len(src))])
	if !speclike.Match(src) {
		bad := noSpec(name)
		f.fault(bad.at, bad.detail, "%s", bad.summary)
		return
	}
	switch {
	case d.Summary == "Attribute redefined":
		f.fault(at, firstOf(src, token, at.Start.Byte), "%s is there twice", token)
		return
	case token == "}" && d.Summary == "Argument or block definition required":
		if bad := unpaired(name, src, root, false); bad != nil {
			f.fault(bad.at, bad.detail, "%s", bad.summary)
			return
		}
		f.fault(at, "Take it out.", "this closing brace has no opening brace")
		return
	case strings.HasPrefix(d.Summary, "Invalid 'for'") && root == garmentShape:
		f.fault(at, "Specs have no loops; name each value.", "for is not used in specs")
		return
	}
	l := lineOfFault(name, src, root, at, d.Summary)
	if where, summary, detail, found := l.meant(); found {
		f.fault(where, detail, "%s", summary)
		return
	}
	summary, detail := d.Summary, d.Detail
	if w, known := plainWords[d.Summary]; known {
		summary, detail = w[0], w[1]
	}
	if d.Summary == "Invalid character" && token != "" {
		summary = fmt.Sprintf("the character %s cannot stand here", token)
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
