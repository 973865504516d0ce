package spec

import (
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// words reports whether a word is that of a block, and whether it is one that
// takes a value, somewhere in this kind of file.
func (s *shape) words(word string) (block, value bool) {
	for _, n := range s.names() {
		value = value || n == word
	}
	for k, inner := range s.blocks {
		if inner.later {
			continue
		}
		b, v := inner.words(word)
		block, value = block || b || k == word, value || v
	}
	return block, value
}

// remark is a line of prose, or one that begins as comments do elsewhere.
func remark(l *faultLine, i int) (n int, summary, detail string) {
	if i > 0 {
		return 0, "", ""
	}
	prose := 0
	for j := range l.toks {
		if l.like(j, "id id") && l.toks[j].at.End.Byte < l.toks[j+1].at.Start.Byte {
			prose++
		}
	}
	switch {
	case l.find(0, "=") >= 0 || l.find(0, "{") >= 0:
		return 0, "", ""
	case l.like(0, "id id id"), strings.Contains("-*;/'", l.toks[0].text) && prose > 0, l.like(0, "- -"), l.like(0, "; "):
		return len(l.toks), "this line is neither a block nor a value", "If it is a remark, begin it with #."
	}
	return 0, "", ""
}

// leftOver is what stands behind a closing brace.
func leftOver(l *faultLine, i int) (n int, summary, detail string) {
	if l.said != "Missing newline after block definition" || l.toks[i].at.Start.Byte < l.stop {
		return 0, "", ""
	}
	return len(l.toks) - i, fmt.Sprintf("%s is left over behind the closing brace", l.text(i, len(l.toks)-1)), "Take it out, or begin a new line after }."
}

// listMark is a dash or a number before a line, as in a list of things to do.
func listMark(l *faultLine, i int) (n int, summary, detail string) {
	if i > 0 {
		return 0, "", ""
	}
	for _, mark := range []string{"-", "*", "num .", "num )"} {
		n := len(strings.Fields(mark))
		if !l.like(0, mark+" id") || n >= len(l.toks) {
			continue
		}
		if block, value := l.root.words(l.toks[n].text); block || value {
			return n + 1, "a line begins with its word", fmt.Sprintf("Take out what stands before %s.", l.toks[n].text)
		}
	}
	return 0, "", ""
}

// oddLabel is a block whose name is a bare figure, or is set apart by a sign,
// or whose word is missing.
func oddLabel(l *faultLine, i int) (n int, summary, detail string) {
	if i > 0 {
		return 0, "", ""
	}
	switch {
	case l.like(0, "id num {"):
		return 3, "the name of a block stands in quotes", fmt.Sprintf("Write %s \"%s\" {.", l.toks[0].text, l.toks[1].text)
	case l.like(0, "id : txt {"), l.like(0, "id = txt {"):
		return 4, "nothing stands between the word of a block and its name", fmt.Sprintf("Write %s %s {.", l.toks[0].text, l.toks[2].text)
	case l.like(0, "id ( txt ) {"):
		return 5, "the name of a block has no brackets", fmt.Sprintf("Write %s %s {.", l.toks[0].text, l.toks[2].text)
	case l.like(0, "txt {"):
		return 2, "the word of this block is missing", fmt.Sprintf("For example: edge %s {.", l.toks[0].text)
	}
	return 0, "", ""
}

// colon is NAME: VALUE.
func colon(l *faultLine, i int) (n int, summary, detail string) {
	if i > 0 || !l.like(0, "id :") || len(l.toks) < 3 {
		return 0, "", ""
	}
	return len(l.toks), "a word and its value have an equals sign between them", fmt.Sprintf("Write %s = %s.", l.toks[0].text, l.text(2, len(l.toks)-1))
}

// twoEquals is NAME == VALUE.
func twoEquals(l *faultLine, i int) (n int, summary, detail string) {
	if i > 0 || !l.like(0, "id ==") || len(l.toks) < 3 {
		return 0, "", ""
	}
	return len(l.toks), "a value has one equals sign", fmt.Sprintf("Write %s = %s.", l.toks[0].text, l.text(2, len(l.toks)-1))
}

// oddName is a name that is two words, or holds a dot, or begins with a figure.
func oddName(l *faultLine, i int) (n int, summary, detail string) {
	if !l.toks[i].first {
		return 0, "", ""
	}
	switch {
	case l.like(i, "num ="), l.like(i, "num id ="):
		return 1, "a name begins with a letter", fmt.Sprintf("For example: p%s = …", l.toks[i].text)
	case l.like(i, "id id =") && !l.like(i+3, "{"):
		return 3, "a name is one word", fmt.Sprintf("Write %s_%s = …", l.toks[i].text, l.toks[i+1].text)
	case l.like(i, "id . id ="):
		return 3, "a name that is given a value has no dots", fmt.Sprintf("Write %s = … or %s_%s = …", l.toks[i+2].text, l.toks[i].text, l.toks[i+2].text)
	case l.like(i, "txt ="):
		return 1, "the word before an equals sign has no quotes", fmt.Sprintf("Write %s = …", strings.Trim(l.toks[i].text, `"`))
	}
	return 0, "", ""
}

// lateValue is a value, or an equals sign, that stands a line below its word.
func lateValue(l *faultLine, i int) (n int, summary, detail string) {
	below := len(l.next) > 0 && l.next[0].text == "="
	if l.like(i, "id = end") || l.like(i, "id end") && l.toks[i].first && below {
		w := l.toks[i].text
		return len(l.toks) - i, fmt.Sprintf("%s has no value on its line", w),
			fmt.Sprintf("A value begins on the line of its word: %s = …", w)
	}
	return 0, "", ""
}

// lateBrace is a block whose brace stands a line below, or is left out.
func lateBrace(l *faultLine, i int) (n int, summary, detail string) {
	if i > 0 || !l.like(0, "id") || l.find(0, "{") >= 0 || l.find(0, "=") >= 0 {
		return 0, "", ""
	}
	for _, t := range l.toks[1:] {
		if t.kind != hclsyntax.TokenQuotedLit && t.kind != hclsyntax.TokenIdent {
			return 0, "", ""
		}
	}
	head := l.text(0, len(l.toks)-1)
	block, value := l.root.words(l.toks[0].text)
	switch {
	case len(l.next) > 0 && l.next[0].text == "{":
		return len(l.toks), "the opening brace stands on the line of its block", fmt.Sprintf("Write %s { on one line.", head)
	case block && (!value || len(l.toks) > 1):
		return len(l.toks), fmt.Sprintf("the block %s has no opening brace", head), fmt.Sprintf("Write %s { on one line.", head)
	}
	return 0, "", ""
}

// goesOn is a line that goes on with the value of the line above.
func goesOn(l *faultLine, i int) (n int, summary, detail string) {
	if i > 0 || !strings.Contains("+-*/%?:", l.toks[0].text) || len(l.toks) < 2 {
		return 0, "", ""
	}
	return len(l.toks), "this line seems to go on with the value above", "Put a value of several lines in brackets ( )."
}

// noEquals is NAME VALUE.
func noEquals(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "id") || i+1 >= len(l.toks) || i > 0 && !l.like(i-1, "{") || l.toks[i+1].text == "=" || l.toks[i+1].text == "{" {
		return 0, "", ""
	}
	block, value := l.root.words(l.toks[i].text)
	if block && l.like(i+1, "txt") || !value && !l.like(i, "id num end") && !l.like(i, "id [") {
		return 0, "", ""
	}
	end := len(l.toks)
	if i > 0 && l.toks[end-1].text == "}" {
		end--
	}
	return end - i, fmt.Sprintf("%s has no equals sign", l.toks[i].text), fmt.Sprintf("Write %s = %s.", l.toks[i].text, l.text(i+1, end-1))
}

// noBrace is a block on one line without its opening brace, or a block with
// an equals sign before it.
func noBrace(l *faultLine, i int) (n int, summary, detail string) {
	block := false
	if i == 0 {
		block, _ = l.root.words(l.toks[0].text)
	}
	switch {
	case block && (l.like(0, "id txt id") || l.like(0, "id id =") && !l.like(3, "{")) && l.find(0, "{") != 2:
		return len(l.toks), fmt.Sprintf("the block %s has no opening brace", l.text(0, 1)),
			fmt.Sprintf("Write %s { %s.", l.text(0, 1), l.text(2, len(l.toks)-1))
	case l.like(i, "= {") && l.said == "Invalid block definition":
		return 2, "a block has no equals sign", fmt.Sprintf("Write %s {.", l.text(0, i-1))
	}
	return 0, "", ""
}

// breaksOff is a value whose line ends in the middle of it.
func breaksOff(l *faultLine, i int) (n int, summary, detail string) {
	if l.like(i+1, "end") && len(l.toks) > 2 && strings.Contains("+-*/%?:.", l.toks[i].text) {
		return 1, "the value breaks off here", "Go on with it on this line, or put the whole of it in brackets ( )."
	}
	return 0, "", ""
}

// alone is one word that stands by itself.
func alone(l *faultLine, i int) (n int, summary, detail string) {
	if !l.like(i, "id end") || i > 0 && !l.like(i-1, "{") && !l.like(i-1, "}") {
		return 0, "", ""
	}
	return 1, fmt.Sprintf("%s stands here alone", l.toks[i].text), fmt.Sprintf("Take it out, or give it a value: %s = …", l.toks[i].text)
}
