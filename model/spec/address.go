package spec

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// between is the range from one expression to the end of another.
func between(a, b hclsyntax.Expression) hcl.Range {
	return hcl.RangeBetween(a.Range(), b.Range())
}

// address takes bare words like shell.front.side apart. After a fault n is 0.
func (s *scope) address(e hclsyntax.Expression, example string) (words [5]string, n int) {
	switch t := e.(type) {
	case *hclsyntax.ScopeTraversalExpr:
		words, n = steps(t)
	case *hclsyntax.TemplateExpr:
		if text, ok := quoted(t); ok {
			s.fault(e.Range(), "Names stand without quotes: "+example+".", "%q is in quotes", text)
			return words, 0
		}
	}
	if n == 0 {
		detail := "For example: " + example + "."
		if stroke, ok := e.(*hclsyntax.BinaryOpExpr); ok && stroke.Op == hclsyntax.OpDivide {
			detail = "The words of an address have dots between them: " + example + "."
		}
		s.fault(e.Range(), detail, "a name is meant here")
	}
	return words, n
}

// nothing reports a reference to what is not there, with the nearest that is.
// The prefix is what stands before the name in an address.
func (s *scope) nothing(e hclsyntax.Expression, what, prefix, name string, known []string) {
	detail := ""
	switch near := nearest(name, known); {
	case near != "":
		detail = "The nearest is " + prefix + near + "."
	case len(known) == 0:
		detail = "No " + what + " is stated."
	case len(known) == 1:
		detail = "Known is only " + prefix + known[0] + "."
	case len(known) <= 16:
		detail = "Known are " + strings.Join(known, ", ") + "."
	}
	s.fault(e.Range(), detail, "there is no %s %s", what, strings.TrimPrefix(prefix+name, what+"."))
}

func (b *drafter) layerAt(e hclsyntax.Expression, name string) *model.Layer {
	nameOf := func(l *model.Layer) string { return l.Name }
	l := find(b.g.Layers, name, nameOf)
	if l == nil {
		b.nothing(e, "layer", "", name, namesOf(b.g.Layers, nameOf))
	}
	return l
}

func (b *drafter) pieceIn(e hclsyntax.Expression, l *model.Layer, name string) *model.Piece {
	nameOf := func(p *model.Piece) string { return p.Name }
	p := find(l.Pieces, name, nameOf)
	if p == nil {
		b.nothing(e, "piece", l.Name+".", name, namesOf(l.Pieces, nameOf))
	}
	return p
}

func (b *drafter) edgeIn(e hclsyntax.Expression, p *model.Piece, name, prefix string) *model.Edge {
	nameOf := func(e *model.Edge) string { return e.Name }
	x := find(p.Edges, name, nameOf)
	if x == nil {
		b.nothing(e, "edge", prefix, name, namesOf(p.Edges, nameOf))
	}
	return x
}

// edgeAt finds the edge at layer.piece.edge.
func (b *drafter) edgeAt(e hclsyntax.Expression) *model.Edge {
	words, n := b.address(e, "shell.front.side")
	if n == 0 {
		return nil
	}
	if n != 3 {
		b.fault(e.Range(), "An edge is LAYER.PIECE.EDGE, for example shell.front.side.", "%s is not an edge", asWritten(words[:n]))
		return nil
	}
	l := b.layerAt(e, words[0])
	if l == nil {
		return nil
	}
	p := b.pieceIn(e, l, words[1])
	if p == nil {
		return nil
	}
	return b.edgeIn(e, p, words[2], p.Address()+".")
}

// edgeOf finds an edge of the piece at hand by its name alone. Its full
// address will do as well.
func (b *drafter) edgeOf(e hclsyntax.Expression, p *model.Piece) *model.Edge {
	words, n := b.address(e, "side")
	switch {
	case n == 0:
		return nil
	case n == 1:
		return b.edgeIn(e, p, words[0], "")
	case n == 3 && words[0] == p.Layer.Name && words[1] == p.Name:
		return b.edgeIn(e, p, words[2], p.Address()+".")
	}
	b.fault(e.Range(), "Write the edge's name alone.", "%s is not an edge of this piece", asWritten(words[:n]))
	return nil
}

// pieceAt finds the piece at layer.piece.
func (b *drafter) pieceAt(e hclsyntax.Expression) *model.Piece {
	words, n := b.address(e, "shell.front")
	if n == 0 {
		return nil
	}
	if n != 2 {
		b.fault(e.Range(), "A piece is LAYER.PIECE, for example shell.front.", "%s is not a piece", asWritten(words[:n]))
		return nil
	}
	l := b.layerAt(e, words[0])
	if l == nil {
		return nil
	}
	return b.pieceIn(e, l, words[1])
}

// thing finds a named thing by its kind and name: tape.snap-19. The bare name
// will do where only one kind can be meant.
func thing[T any](b *drafter, e hclsyntax.Expression, kind string, all []*T, nameOf func(*T) string) *T {
	words, n := b.address(e, kind+".NAME")
	name := words[0]
	switch {
	case n == 0:
		return nil
	case n == 2 && words[0] == kind:
		name = words[1]
	case n != 1:
		b.fault(e.Range(), fmt.Sprintf("Write %s.NAME.", kind), "%s is not a %s", asWritten(words[:n]), kind)
		return nil
	}
	x := find(all, name, nameOf)
	if x == nil {
		b.nothing(e, kind, kind+".", name, namesOf(all, nameOf))
	}
	return x
}

func (b *drafter) fabricAt(e hclsyntax.Expression) *model.Fabric {
	return thing(b, e, "fabric", b.fabrics, func(f *model.Fabric) string { return f.Name })
}

func (b *drafter) tapeAt(e hclsyntax.Expression) *model.Tape {
	return thing(b, e, "tape", b.tapes, func(t *model.Tape) string { return t.Name })
}

func (b *drafter) closureAt(e hclsyntax.Expression) *model.Closure {
	return thing(b, e, "closure", b.g.Closures, func(c *model.Closure) string { return c.Name })
}

func (b *drafter) levelAt(e hclsyntax.Expression) *model.Level {
	return thing(b, e, "level", b.g.Levels, levelName)
}

func levelName(l *model.Level) string { return l.Name }

// levelNamed finds a level by a name that was read already.
func (b *drafter) levelNamed(e hclsyntax.Expression, name string) *model.Level {
	l := find(b.g.Levels, name, levelName)
	if l == nil {
		b.nothing(e, "level", "", name, namesOf(b.g.Levels, levelName))
	}
	return l
}

// mark reads a place along one of some edges: start, end, a level, or a notch
// on it. A level goes before a notch of the same name.
func (b *drafter) mark(e hclsyntax.Expression, edges ...*model.Edge) model.Mark {
	words, n := b.address(e, "waist")
	m := model.Mark{Text: asWritten(words[:n]), Place: place(e.Range())}
	switch {
	case n == 0:
		return m
	case n == 2 && words[0] == "level":
		words[0] = words[1]
	case n != 1:
		b.fault(e.Range(), "Write start, end, a level's name or a notch's.", "%s is not a place along an edge", m.Text)
		return m
	}
	name := words[0]
	switch {
	case name == "start":
		m.Kind = model.AtStart
		return m
	case name == "end":
		m.Kind = model.AtEnd
		return m
	}
	if m.Level = find(b.g.Levels, name, levelName); m.Level != nil {
		m.Kind = model.AtLevel
		return m
	}
	for _, x := range edges {
		if x == nil {
			return m // what the edge may have is not known
		}
		for _, notch := range x.Piece.Notches {
			if notch.On == x && notch.Name == name {
				m.Kind, m.Notch = model.AtNotch, name
				return m
			}
		}
	}
	known := append([]string{"start", "end"}, namesOf(b.g.Levels, levelName)...)
	for _, x := range edges {
		for _, notch := range x.Piece.Notches {
			if notch.On == x && !slices.Contains(known, notch.Name) {
				known = append(known, notch.Name)
			}
		}
	}
	b.nothing(e, "level or notch", "", name, known)
	return m
}

// stretch reads an edge or part(edge, from, to). After a fault its edge is nil.
func (b *drafter) stretch(e hclsyntax.Expression) model.Stretch {
	st := b.readStretch(e)
	b.stretchesRead = append(b.stretchesRead, st)
	return st
}

func (b *drafter) readStretch(e hclsyntax.Expression) model.Stretch {
	call, ok := e.(*hclsyntax.FunctionCallExpr)
	if !ok {
		return model.Stretch{Edge: b.edgeAt(e), Place: place(e.Range())}
	}
	st := model.Stretch{Place: place(call.Range())}
	const usage = "Write part(shell.front.side, waist, end)."
	switch {
	case call.Name != "part":
		b.fault(call.NameRange, usage, "only part( ) can stand here")
		return st
	case len(call.Args) != 3 || call.ExpandFinal:
		b.fault(call.Range(), usage, "part needs an edge and two places along it")
		return st
	}
	st.Edge = b.edgeAt(call.Args[0])
	st.From, st.To = b.mark(call.Args[1], st.Edge), b.mark(call.Args[2], st.Edge)
	if st.Edge != nil && st.From.Kind == st.To.Kind && st.From.Text == st.To.Text {
		b.fault(call.Range(), "", "part begins and ends at the same place")
	}
	return st
}

// stretches reads one stretch or a list of them, in the order in which they are
// sewn on end to end. Those at fault are left out.
func (b *drafter) stretches(e hclsyntax.Expression) []model.Stretch {
	members := items(e)
	out := make([]model.Stretch, 0, len(members))
	for _, x := range members {
		if b.full() {
			break
		}
		if st := b.stretch(x); st.Edge != nil {
			out = append(out, st)
		}
	}
	if len(members) == 0 {
		b.fault(e.Range(), "", "the list of edges is empty")
	}
	return out
}
