package spec

import (
	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// Require is a rule that a house states as text. Its words have been read; what
// its expressions say about a garment is for package house.
type Require struct {
	Name     string
	Of       string // the kind of thing it looks at
	OfRange  hcl.Range
	Severity string // "" when not stated
	Title    string // "" when not stated, like the next two
	Why      string
	Fix      string
	Message  hclsyntax.Expression // nil when not stated, like the next eight

	Where    hclsyntax.Expression // which of those things
	That     hclsyntax.Expression // what must hold of them
	Figure   hclsyntax.Expression // or, ready-made: a figure that lies between
	Least    hclsyntax.Expression
	Greatest hclsyntax.Expression
	Equals   hclsyntax.Expression // or is equal to another
	Within   hclsyntax.Expression // up to this

	Has   []hclsyntax.Expression // or what must be stated
	Named []Text                 // or how it may be called
	Only  []Only                 // which of the things, without an expression

	Good, Bad []Text // specs, or the paths of specs
	Header    hcl.Range
}

// Text is text that stands in quotes, and where.
type Text struct {
	Text  string
	Range hcl.Range
}

// Only is one line of the choice of things by what they state.
type Only struct {
	Name  string
	Range hcl.Range
	Value hclsyntax.Expression
}

// PlaceOf turns the parser's range into a place of the model.
func PlaceOf(r hcl.Range) model.Place { return place(r) }

func (s *scope) require(b *block) *Require {
	r := &Require{Name: b.name, Header: b.header, OfRange: b.header}
	if e := b.attr("of"); e != nil {
		r.OfRange = e.Range()
		t, ok := e.(*hclsyntax.ScopeTraversalExpr)
		if ok && len(t.Traversal) == 1 {
			r.Of = t.Traversal.RootName()
		} else {
			s.fault(e.Range(), "Write of = edge, without quotes.", "a kind of thing is meant here")
		}
	}
	if e := b.attr("severity"); e != nil {
		r.Severity = s.choice(e, severities...)
	}
	for name, into := range map[string]*string{"title": &r.Title, "why": &r.Why, "fix": &r.Fix} {
		if e := b.attr(name); e != nil {
			*into = s.text(e)
		}
	}
	r.Message, r.Where, r.That = b.attr("message"), b.attr("where"), b.attr("that")
	r.Figure, r.Least, r.Greatest = b.attr("figure"), b.attr("least"), b.attr("greatest")
	r.Equals, r.Within = b.attr("equals"), b.attr("within")
	if e := b.attr("has"); e != nil {
		r.Has = items(e)
	}
	if e := b.attr("only"); e != nil {
		for _, x := range s.entries(e) {
			r.Only = append(r.Only, Only{x.key, x.keyExpr.Range(), x.value})
		}
	}
	r.Named, r.Good, r.Bad = s.texts(b.attr("named")), s.texts(b.attr("good")), s.texts(b.attr("bad"))
	return r
}

// texts reads one text in quotes or a list of them.
func (s *scope) texts(e hclsyntax.Expression) []Text {
	if e == nil {
		return nil
	}
	var out []Text
	for _, x := range items(e) {
		out = append(out, Text{s.text(x), x.Range()})
	}
	return out
}
