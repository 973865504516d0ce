package spec

import (
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// endsValue and beginsValue tell where one value can stop and the next begin.
func endsValue(t token) bool {
	switch t.kind {
	case hclsyntax.TokenIdent, hclsyntax.TokenNumberLit, hclsyntax.TokenQuotedLit, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenCBrace:
		return true
	}
	return false
}

func beginsValue(t token) bool {
	switch t.kind {
	case hclsyntax.TokenIdent, hclsyntax.TokenNumberLit, hclsyntax.TokenQuotedLit, hclsyntax.TokenOBrack, hclsyntax.TokenOBrace, hclsyntax.TokenOParen:
		return true
	}
	return false
}

// inside gives the innermost bracket that is open at a token, on this line, or
// -1, and the bracket that closes it, or -1.
func (l *faultLine) inside(at int) (from, to int) {
	from, to = -1, -1
	depth := 0
	for i := at - 1; i >= 0 && from < 0; i-- {
		switch l.toks[i].text {
		case ")", "]", "}":
			depth++
		case "(", "[", "{":
			if depth == 0 {
				from = i
			}
			depth--
		}
	}
	depth = 0
	for i := at; i < len(l.toks); i++ {
		switch l.toks[i].text {
		case "(", "[", "{":
			depth++
		case ")", "]", "}":
			if depth == 0 {
				return from, i
			}
			depth--
		}
	}
	return from, -1
}

// roundList is (a, b) where a list is meant.
func roundList(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "(") || l.like(i-1, "id") {
		return 0, "", ""
	}
	_, end := l.inside(i + 1)
	if end < 0 || l.find(i, ",") < 0 || l.find(i, ",") > end {
		return 0, "", ""
	}
	return end - i + 1, "a list or a point stands in square brackets", fmt.Sprintf("Write [%s].", l.text(i+1, end-1))
}

// braceList is {a, b} where a list is meant.
func braceList(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "{") || !l.like(i-1, "=") || !strings.HasPrefix(l.said, "Missing") {
		return 0, "", ""
	}
	_, end := l.inside(i + 1)
	if eq := l.find(i, "="); end < 0 || eq >= 0 && eq < end {
		return 0, "", ""
	}
	return end - i + 1, "a list or a point stands in square brackets", fmt.Sprintf("Write [%s].", l.text(i+1, end-1))
}

// indexed is [a][b], which lacks a comma, or part[…], which has the wrong
// brackets.
func indexed(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "[") || i == 0 || !strings.Contains(l.said, "index") {
		return 0, "", ""
	}
	_, end := l.inside(i + 1)
	if end < 0 {
		return 0, "", ""
	}
	if before := l.toks[i-1]; before.kind == hclsyntax.TokenIdent && l.tight(i-1) {
		return end - i + 1, fmt.Sprintf("%s has round brackets", before.text), fmt.Sprintf("Write %s(%s).", before.text, l.text(i+1, end-1))
	} else if endsValue(before) {
		return end - i + 1, fmt.Sprintf("a comma is missing before %s", l.text(i, end)), ""
	}
	return 0, "", ""
}

// callWithout is mm 3.
func callWithout(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "id num") || i == 0 || l.like(i-1, ".") {
		return 0, "", ""
	}
	if _, known := functions[l.toks[i].text]; !known {
		return 0, "", ""
	}
	return 2, fmt.Sprintf("%s has brackets", l.toks[i].text), fmt.Sprintf("Write %s(%s).", l.toks[i].text, l.toks[i+1].text)
}

// lastComma is one behind the last value of a line.
func lastComma(l *faultLine, i int) (n int, summary, detail string) {
	if eq := l.find(0, "="); l.like(i, ", end") && eq >= 0 && eq < i {
		return 1, "no comma is needed at the end of a line", "Take it out."
	}
	return 0, "", ""
}

// bareList is NAME = A, B.
func bareList(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "id =") || !l.toks[i].first && !l.like(i-1, "{") {
		return 0, "", ""
	}
	end := len(l.toks)
	if i > 0 {
		if _, end = l.inside(i); end < 0 {
			return 0, "", ""
		}
	}
	depth, comma := 0, -1
	for j := i + 2; j < end; j++ {
		switch t := l.toks[j].text; {
		case t == "(" || t == "[" || t == "{":
			depth++
		case t == ")" || t == "]" || t == "}":
			depth--
		case t == "=":
			return 0, "", ""
		case t == "," && depth == 0 && comma < 0:
			comma = j
		}
	}
	if comma < 0 {
		return 0, "", ""
	}
	return end - i, "several values stand in square brackets", fmt.Sprintf("Write %s = [%s].", l.toks[i].text, l.text(i+2, end-1))
}

// twoValues is a second NAME = VALUE on a line.
func twoValues(l *faultLine, i int) (n int, summary, detail string) {
	if i < 3 || !l.like(i, "id =") || !endsValue(l.toks[i-1]) && !l.like(i-1, ",") || l.like(i-1, "id") && l.find(0, "=") > i {
		return 0, "", ""
	}
	if from, _ := l.inside(i); from > 0 && l.like(from-1, "=") { // figures by name
		return 1, fmt.Sprintf("a comma is missing before %s", l.toks[i].text), ""
	}
	if l.find(0, "{") >= 0 && l.find(0, "{") < i {
		return 2, "a block on one line holds one value", "Put each on a line of its own, and the closing brace too."
	}
	return 2, fmt.Sprintf("%s needs a line of its own", l.toks[i].text), "Each value has a line of its own."
}

// twoCommas is a comma with nothing before it.
func twoCommas(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, ",") || i == 0 || !strings.Contains(",([{", l.toks[i-1].text) {
		return 0, "", ""
	}
	return 1, "there is nothing before this comma", "Take it out, or write what is missing."
}

// bareText is path data without quotes.
func bareText(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "path = id") {
		return 0, "", ""
	}
	end := len(l.toks)
	if l.toks[end-1].text == "}" {
		end--
	}
	return end - i, "path data stands in quotes", fmt.Sprintf("Write path = \"%s\".", l.text(i+2, end-1))
}

// leftOut is .5, 5. or +5.
func leftOut(l *faultLine, i int) (n int, summary, detail string) {
	before := i == 0 || !endsValue(l.toks[i-1])
	switch {
	case before && l.like(i, ". num"):
		return 2, "a figure begins with a numeral", fmt.Sprintf("Write 0.%s.", l.toks[i+1].text)
	case l.like(i, "num .") && l.tight(i):
		return 2, "a figure ends with a numeral", fmt.Sprintf("Write %s.", l.toks[i].text)
	case before && i > 0 && l.like(i, "+ num"):
		return 2, "a figure has no plus sign in front", fmt.Sprintf("Write %s.", l.toks[i+1].text)
	case l.like(i, ". end"), l.like(i, ". ]"), l.like(i, ". ,"), l.like(i, ". }"), l.like(i, ". )"):
		return 1, "a name is missing behind this point", "For example: draft.quarter."
	case i > 0 && l.like(i-1, "= }"), i > 0 && strings.Contains("+-*/%", l.toks[i-1].text) && strings.Contains(")]},", l.toks[i].text):
		return 1, fmt.Sprintf("a value is missing before %s", l.toks[i].text), ""
	}
	return 0, "", ""
}

// noComma is two values in brackets with nothing between them, or a value that
// is left over at the end of a line.
func noComma(l *faultLine, i int) (n int, summary, detail string) {
	if i == 0 || !endsValue(l.toks[i-1]) || !beginsValue(l.toks[i]) || l.find(0, "=") < 0 || l.find(0, "=") > i {
		return 0, "", ""
	}
	from, to := l.inside(i)
	if from >= 0 && (l.like(from, "[") || l.like(from, "(") || l.like(from-1, "=")) {
		if l.like(i-1, "id id id") && l.like(from, "[") && l.addresses() {
			return 2, "the words of an address have dots between them", "For example: shell.front.side."
		}
		return 1, fmt.Sprintf("a comma is missing before %s", l.toks[i].text), ""
	}
	end := len(l.toks)
	if from >= 0 && to > i {
		end = to
	}
	return end - i, fmt.Sprintf("%s is left over at the end of this line", l.text(i, end-1)), "Take it out, or begin a remark with #; each value has a line of its own."
}

// sides is A to B, A and B or A -> B where two edges are meant.
func sides(l *faultLine, i int) (n int, summary, detail string) {
	word := strings.ToLower(l.toks[i].text)
	n = 1
	switch {
	case !l.like(i-1, "id"):
		return 0, "", ""
	case l.like(i, "- >"):
		n = 2
	case word != "to" && word != "and" && word != "with" && word != "=>" && word != "&":
		return 0, "", ""
	}
	if !l.like(i+n, "id .") || !l.addresses() {
		return 0, "", ""
	}
	return n + 1, "the edges of a list have commas between them", "Write [A, B]."
}

// addresses reports whether the line gives edges or pieces by their addresses.
func (l *faultLine) addresses() bool {
	for _, w := range []string{"join", "edges", "outer", "inner", "along"} {
		if at := l.find(0, w); at >= 0 && l.like(at+1, "=") {
			return true
		}
	}
	return false
}
