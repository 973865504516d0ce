package spec

import (
	"fmt"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// opened is a brace that is open: a block's, or that of figures by name.
type opened struct {
	title  string    // piece "front"
	shape  *shape    // what it may hold; nil where the word is not known
	at     hcl.Range // its header, or the brace itself
	indent int       // how far its line is set in
	inline bool      // whether what it holds begins on its own line
}

// braceWalk goes through a file whose braces do not pair, to find where the
// cutter would look for the fault. The parser and the guard notice it only when
// all is used up, at the end of the file. Two things tell earlier: a block that
// cannot stand where it now stands, and a closing brace that is set in like the
// opening brace of another block. The first of either is taken.
type braceWalk struct {
	toks    []token
	open    []opened
	closed  opened // the block that was closed last, while nothing else was opened
	closing hcl.Range
	short   bool // closing braces are missing, rather than too many
}

// unpaired finds the missing closing brace, or the one too many, or gives nil
// where nothing tells.
func unpaired(name string, src []byte, root *shape, short bool) *fault {
	w := braceWalk{toks: lex(name, src), short: short, open: []opened{{shape: root}}}
	for i := 0; i < len(w.toks); i++ {
		switch t := w.toks[i]; {
		case t.kind == hclsyntax.TokenOBrace:
			w.push(opened{title: loneBrace, at: t.at, indent: t.indent})
		case t.kind == hclsyntax.TokenCBrace:
			if f := w.close(t); f != nil {
				return f
			}
		case t.first && t.kind == hclsyntax.TokenIdent:
			n := header(w.toks[i:])
			if n == 0 {
				continue
			}
			if f := w.block(w.toks[i:i+n], src); f != nil {
				return f
			}
			w.top().inline = i+n < len(w.toks) && !w.toks[i+n].first && w.toks[i+n].text != ""
			i += n - 1
		}
	}
	if last := w.top(); short && len(w.open) > 1 {
		return missing(*last, "the end of the file", 0)
	}
	return nil
}

func (w *braceWalk) top() *opened { return &w.open[len(w.open)-1] }

func (w *braceWalk) push(o opened) {
	w.open, w.closed = append(w.open, o), opened{}
}

// header is how many tokens a block's word, its labels and its opening brace
// are, 0 where no block begins.
func header(toks []token) int {
	for i, t := range toks {
		switch {
		case t.kind == hclsyntax.TokenOBrace && i > 0:
			return i + 1
		case t.kind != hclsyntax.TokenIdent && t.kind != hclsyntax.TokenQuotedLit || i > 0 && t.first:
			return 0
		}
	}
	return 0
}

// block opens one, after it was seen whether it can stand here.
func (w *braceWalk) block(toks []token, src []byte) *fault {
	word, last := toks[0], toks[len(toks)-2]
	at := hcl.RangeBetween(word.at, last.at)
	o := opened{title: string(src[at.Start.Byte:at.End.Byte]), at: at, indent: word.indent}
	top := w.top()
	if top.shape != nil {
		o.shape = top.shape.blocks[word.text]
	}
	if o.shape == nil && (top.shape != nil || w.short) {
		if w.short {
			for i := len(w.open) - 2; i >= 0; i-- {
				if s := w.open[i].shape; s != nil && s.blocks[word.text] != nil {
					return missing(*top, o.title, at.Start.Line)
				}
			}
		} else if s := w.closed.shape; s != nil && s.blocks[word.text] != nil {
			return &fault{at: w.closing,
				summary: fmt.Sprintf("this closing brace ends %s of line %d before its %s on line %d",
					w.closed.title, w.closed.at.Start.Line, o.title, at.Start.Line),
				detail: fmt.Sprintf("Take out one closing brace above line %d.", at.Start.Line)}
		}
	}
	w.push(o)
	return nil
}

// close takes a closing brace.
func (w *braceWalk) close(t token) *fault {
	if len(w.open) == 1 {
		return nil // the parser stops at this one itself
	}
	o := *w.top()
	outer := w.open[:len(w.open)-1]
	if t.first && t.at.Start.Line != o.at.Start.Line && t.indent != o.indent {
		switch {
		case w.short && t.indent < o.indent && setIn(outer[1:], t.indent):
			return missing(o, "the }", t.at.Start.Line)
		case !w.short && w.closed.title != "" && w.closed.indent == t.indent:
			return &fault{at: t.at, summary: "this closing brace is one too many",
				detail: fmt.Sprintf("It would end %s of line %d.", o.title, o.at.Start.Line)}
		}
	}
	w.open, w.closed, w.closing = outer, o, t.at
	return nil
}

// setIn reports whether one of the open braces is set in so far.
func setIn(open []opened, indent int) bool {
	for _, o := range open {
		if o.indent == indent {
			return true
		}
	}
	return false
}

// missing is the fault of a brace that is not closed before something on a
// line, or 0 for the end of the file.
func missing(o opened, before string, line int) *fault {
	what, detail := "the block "+o.title, "Put } on a line of its own where it ends."
	if o.shape == nil && o.title == loneBrace {
		what = o.title
	}
	switch {
	case o.inline:
		detail = fmt.Sprintf("Put } at the end of line %d.", o.at.Start.Line)
	case line > 0:
		detail = fmt.Sprintf("Put } on a line of its own above line %d.", line)
	}
	if line > 0 {
		before = fmt.Sprintf("%s on line %d", before, line)
	}
	return &fault{at: o.at, detail: detail,
		summary: fmt.Sprintf("%s opened on line %d has no closing brace before %s", what, o.at.Start.Line, before)}
}

// loneBrace stands for a brace that is not a block's.
const loneBrace = "the brace {"
