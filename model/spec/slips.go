package spec

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// slip is something that cutters are known to write and that the language does
// not have. It is looked for at one token of the line at which the parser
// stopped, and says how many tokens it takes up (0: it is not there), what is
// wrong and what to write instead.
//
// The parser tells what it would have liked to see; a slip tells what was meant.
type slip func(l *faultLine, i int) (n int, summary, detail string)

// slips are tried in this order. It is a table and is never written to.
var slips = []slip{
	remark, listMark, sides, oddFigure, oddSign, leftOut, hardSpace, bentQuotes, wordForSign, arrow, // figures and signs
	leftOver, oddLabel, colon, twoEquals, oddName, lateValue, lateBrace, goesOn, noEquals, noBrace, breaksOff, alone, // lines
	roundList, braceList, indexed, callWithout, lastComma, bareList, twoValues, twoCommas, bareText, noComma, // values
}

// meant looks for a slip where the parser stopped.
func (l *faultLine) meant() (at hcl.Range, summary, detail string, found bool) {
	for _, s := range slips {
		for i := range l.toks {
			n, summary, detail := s(l, i)
			if n == 0 {
				continue
			}
			at := hcl.RangeBetween(l.toks[i].at, l.toks[min(i+n, len(l.toks))-1].at)
			if at.Start.Byte <= l.stop && l.stop <= at.End.Byte+1 {
				return at, summary, detail, true
			}
		}
	}
	return at, "", "", false
}

// fractions are the figures that have a sign of their own.
var fractions = map[string]string{
	"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
}

// unitWords are what may be meant by a word or sign behind a figure.
var unitWords = map[string]string{
	"mm": "mm", "cm": "cm", "in": "inch", "ins": "inch", "inch": "inch", "inches": "inch", "″": "inch", "”": "inch", "“": "inch",
}

// oddFigure is 4 7/8, 19,5, 18.2cm, 9½ or 2..6.
func oddFigure(l *faultLine, i int) (n int, summary, detail string) {
	from, value, odd := i, "", false
	switch {
	case l.like(i, "num"):
		value = l.toks[i].text
		i++
	case i < len(l.toks) && fractions[l.toks[i].text] != "":
	default:
		return 0, "", ""
	}
	if low, high, ok := strings.Cut(value, ".."); ok {
		return 1, value + " cannot be read as a figure", fmt.Sprintf("Write a range [%s, %s].", low, high)
	}
	if parts := strings.Split(value, "."); len(parts) == 3 && len(parts[2]) == 4 {
		return 1, "a date stands in quotes", fmt.Sprintf("Write year, month and day: \"%s-%02s-%02s\".", parts[2], parts[1], parts[0])
	}
	if l.like(i, "txt") && l.tight(i-1) { // 5", 5" in one line make quoted text between them
		return 1, value + "\" cannot be read as a figure", fmt.Sprintf("Write inch(%s).", value)
	}
	if l.like(i, "'") && l.tight(i-1) && !l.like(i+1, "num") {
		return 2, value + "' cannot be read as a figure", fmt.Sprintf("Write inch(12 * %s).", value)
	}
	comma := l.like(i, ", num") && l.tight(i-1) && l.tight(i)
	if more := l.like(i+2, ", num") && l.tight(i+1); comma && !more {
		value, odd = value+"."+l.toks[i+1].text, true
		i += 2
	}
	sum := false
	switch {
	case l.like(i, "num / num"):
		value, sum, odd = value+" + "+l.text(i, i+2), true, true
		i += 3
	case l.like(i, "- num / num") && l.tight(i-1) && l.tight(i): // 4-7/8, where a unit follows
		value, sum = value+" + "+l.text(i+1, i+3), true
		i += 4
	case l.like(i, "/ num"):
		value = value + l.text(i, i+1)
		i += 2
	case i < len(l.toks) && fractions[l.toks[i].text] != "":
		if value != "" {
			value, sum = value+" + ", true
		}
		value, odd = value+fractions[l.toks[i].text], true
		i++
	}
	if i < len(l.toks) {
		if u := unitWords[strings.ToLower(l.toks[i].text)]; u != "" && !l.like(i+1, "(") {
			value, sum, odd = u+"("+value+")", false, true
			i++
		}
	}
	switch {
	case !odd:
		return 0, "", ""
	case sum && from > 0 && strings.Contains("*/-%", l.toks[from-1].text):
		value = "(" + value + ")"
	}
	return i - from, fmt.Sprintf("%s cannot be read as a figure", l.text(from, i-1)), fmt.Sprintf("Write %s.", value)
}

// plainSigns are what is written for a sign that is not on every keyboard.
var plainSigns = map[string]string{
	"×": "*", "·": "*", "•": "*", "÷": "/", "⁄": "/", "∕": "/", "–": "-", "—": "-", "−": "-", "‐": "-", "‑": "-",
	"≤": "<=", "≥": ">=", "≠": "!=",
}

// oddSign is a sign that stands for another, or for nothing.
func oddSign(l *faultLine, i int) (n int, summary, detail string) {
	t := l.toks[i].text
	known := fmt.Sprintf("the sign %s is not known", t)
	switch sign := plainSigns[t]; {
	case sign == "-":
		return 1, known, "Write a plain minus sign - with a space on either side."
	case sign != "":
		return 1, known, fmt.Sprintf("Write %s for it.", sign)
	case t == "%" && i > 0 && l.like(i-1, "num") && (l.like(i+1, "end") || strings.Contains(",]})", l.toks[i+1].text)):
		return 1, "a figure has no percent sign", fmt.Sprintf("Write %s; where a percentage is meant, it is taken as one.", l.toks[i-1].text)
	case t == "°":
		return 1, "a figure has no sign for degrees", "Leave it out; angles are in degrees."
	case t == "±" && l.like(i+1, "num"):
		return 2, known, fmt.Sprintf("Where a range is meant, write [-%[1]s, %[1]s].", l.toks[i+1].text)
	case t == "^" || t == "**" || t == "²" || t == "³":
		return 1, "there is no sign for a power", "Write the figure times itself: a * a."
	case t == ";":
		return 1, "no semicolon is needed here", "A line ends by itself; in a list write a comma."
	case t == "..." || t == "…":
		return 1, "nothing can be left out here", "Write all of it."
	case t == "&" || t == "|":
		return 1, known, fmt.Sprintf("Write %s%s between two comparisons.", t, t)
	case t == "'" && i > 0 && l.like(i-1, "num ' num") && l.tight(i-1) && l.tight(i):
		return 2, "a figure is written without marks between thousands", fmt.Sprintf("Write %s%s.", l.toks[i-1].text, l.toks[i+1].text)
	}
	return 0, "", ""
}

// hardSpaces look like a space or like nothing, and come from word processors
// and web pages.
var hardSpaces = []string{"\u00a0", "\u202f", "\u2007", "\u2009", "\u3000", "\u200b", "\u200c", "\u200d", "\u2060", "\ufeff", "\u00ad"}

func hardSpace(l *faultLine, i int) (n int, summary, detail string) {
	if !slices.Contains(hardSpaces, l.toks[i].text) {
		return 0, "", ""
	}
	all := 0
	for _, h := range hardSpaces {
		all += bytes.Count(l.src, []byte(h))
	}
	detail = "Put an ordinary space in its place."
	if all > 1 {
		detail = fmt.Sprintf("The file holds %d of them; put an ordinary space in the place of each.", all)
	}
	return 1, "this is not an ordinary space, though it looks like one or like nothing", detail
}

const quoteSigns = "'‘’‚‛“”„‟«»‹›`´"

// bentQuotes are quotes of another kind than the straight double ones.
func bentQuotes(l *faultLine, i int) (n int, summary, detail string) {
	isQuote := func(i int) bool { return strings.Contains(quoteSigns, l.toks[i].text) && l.toks[i].text != "" }
	if !isQuote(i) {
		return 0, "", ""
	}
	for end := i + 1; end < len(l.toks); end++ {
		if isQuote(end) {
			inside := strings.TrimSpace(string(l.src[l.toks[i].at.End.Byte:l.toks[end].at.Start.Byte]))
			return end - i + 1, "text stands in straight double quotes", fmt.Sprintf("Write \"%s\".", inside)
		}
	}
	if l.tight(i-1) && l.like(i-1, "id") && (l.find(i, "=") == i+1 || l.find(0, "=") < i) {
		return 1, fmt.Sprintf("a name cannot hold %s", l.toks[i].text), "A name is letters, digits, - and _."
	}
	return 1, "text stands in straight double quotes", "Write \"…\"."
}

// signWords are words that are written as signs here.
var signWords = map[string]string{
	"x": "*", "X": "*", "times": "*", "plus": "+", "minus": "-", "and": "&&", "or": "||", "und": "&&", "oder": "||",
}

// wordForSign is 4 x 3, a > b and c > d, 2 to 6, or if … then.
func wordForSign(l *faultLine, i int) (n int, summary, detail string) {
	if l.toks[i].kind != hclsyntax.TokenIdent || l.find(0, "=") < 0 || i < l.find(0, "=") {
		return 0, "", ""
	}
	t := l.toks[i].text
	switch sign := signWords[strings.ToLower(t)]; {
	case (t == "if" || t == "then" || t == "else") && !l.like(i+1, "end"):
		return 2, "a choice is not written with if, then and else", "Write COMPARISON ? VALUE : OTHER VALUE."
	case (t == "to" || t == "bis") && i > 0 && l.like(i-1, "num "+t+" num"):
		return 2, fmt.Sprintf("%s is not known between figures", t), fmt.Sprintf("Write a range [%s, %s].", l.toks[i-1].text, l.toks[i+1].text)
	case sign != "" && i > 0 && !l.like(i+1, "end") && !strings.Contains("=.,([{?:+-*/", l.toks[i-1].text) && !strings.Contains(".,)]}", l.toks[i+1].text):
		return 2, fmt.Sprintf("%s is not known between figures", t), fmt.Sprintf("Write %s for it.", sign)
	}
	return 0, "", ""
}

// arrow is a comparison with its signs the wrong way round, or with one equals
// sign.
func arrow(l *faultLine, i int) (n int, summary, detail string) {
	switch {
	case l.like(i, "=>"):
		return 1, "the sign => is not known", "Write >= for at least."
	case l.like(i, "= <") && !l.like(i+2, "<"):
		return 1, "the sign =< is not known", "Write <= for at most."
	case l.like(i, "=") && l.find(0, "=") < i && l.find(i, "?") > i:
		return 1, "two figures are compared with two equals signs", "Write ==."
	}
	return 0, "", ""
}
