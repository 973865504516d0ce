package spec

import (
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// leaving is something that a traced piece does not take over.
type leaving struct {
	kind, name, edge string // edge: "" for any
	expr             hclsyntax.Expression
	met              bool
}

// leavings reads what a traced piece is without: dart.waist, notch.hip, or
// side.notch.hip for the notch on one edge only.
func (b *drafter) leavings(e hclsyntax.Expression) []*leaving {
	var out []*leaving
	for _, x := range items(e) {
		words, n := b.address(x, "dart.waist")
		switch {
		case n == 0:
		case n == 1:
			out = append(out, &leaving{kind: "edge", name: words[0], expr: x})
		case n == 2 && (words[0] == "dart" || words[0] == "pleat" || words[0] == "notch" || words[0] == "edge"):
			out = append(out, &leaving{kind: words[0], name: words[1], expr: x})
		case n == 3 && (words[1] == "dart" || words[1] == "pleat" || words[1] == "notch"):
			out = append(out, &leaving{kind: words[1], name: words[2], edge: words[0], expr: x})
		default:
			b.fault(x.Range(), "For example: without = [dart.waist, notch.hip].", "%s is not a thing that a traced piece can be without", asWritten(words[:n]))
		}
	}
	return out
}

// leaves reports whether a piece does not take a thing over.
func (d *pieceDraft) leaves(kind, name, edge string) bool {
	found := false
	for _, l := range d.left {
		if l.kind == kind && l.name == name && (l.edge == "" || l.edge == edge) {
			l.met, found = true, true
		}
	}
	return found
}

// comeAlong takes over the notches and darts that lie on the edges a piece is
// traced from, and for a piece that is traced as a whole the darts inside it.
func (b *drafter) comeAlong(d *pieceDraft) {
	if d.taken != fresh {
		return
	}
	d.taken = good
	for _, x := range d.traces {
		if x.edge.Traced != nil && x.edge.Traced.Of.Piece != d.piece {
			b.comeAlong(b.draftOf(x.edge.Traced.Of.Piece))
		}
	}
	b.at(d)
	for _, x := range d.traces {
		b.takeMarks(d, x)
	}
	if d.from != nil {
		b.takeDarts(d)
	}
	if e := d.block.attr("without"); e != nil && d.block.attr("trace") == nil && len(d.traces) == 0 {
		b.fault(e.Range(), "Write trace = LAYER.PIECE beside it.", "without leaves out what is traced, and nothing of piece %s is", d.piece.Name)
		return
	}
	for _, l := range d.left {
		if !l.met {
			b.notLeft(d, l)
		}
	}
}

// takeMarks takes over what lies on one traced edge.
func (b *drafter) takeMarks(d *pieceDraft, x *edgeTrace) {
	e, t := x.edge, x.edge.Traced
	if t == nil || x.settled != fresh {
		return
	}
	x.settled = good
	for _, other := range d.traces { // of an edge of this very piece, traced too
		if other.edge == t.Of {
			b.takeMarks(d, other)
		}
	}
	if d.block.attr("allowance") == nil && d.layer.attr("allowance") == nil && t.Of.Allowance.Own &&
		(x.block == nil || x.block.attr("allowance") == nil) && d.piece.Fold != e {
		e.Allowance = t.Of.Allowance
	}
	if x.block != nil {
		if a := x.block.attr("from"); a != nil {
			t.From = b.mark(a, t.Of)
		}
		if a := x.block.attr("to"); a != nil {
			t.To = b.mark(a, t.Of)
		}
		if from, to := t.From, t.To; from.Kind != model.NoMark && from.Kind == to.Kind && from.Text == to.Text {
			b.fault(x.block.attrs["to"].SrcRange, "", "from and to are the same place")
		}
	}
	p := d.piece
	for _, n := range t.Of.Piece.Notches {
		own := slices.ContainsFunc(p.Notches, func(o *model.Notch) bool { return o.Name == n.Name && o.On == e && o.Traced == nil })
		if n.On != t.Of || d.leaves("notch", n.Name, e.Name) || !x.notches || own {
			continue
		}
		c := *n
		c.Piece, c.On, c.Traced, c.Place, c.Given, c.Deep = p, e, n, t.Place, t.Place, t.Place
		p.Notches = append(p.Notches, &c)
	}
	for _, dart := range t.Of.Piece.Darts {
		if dart.On != t.Of || d.leaves(dart.Word(), dart.Name, e.Name) || !x.notches || ownDart(p, dart) {
			continue
		}
		c := *dart
		if c.Pleat != nil {
			folded := *c.Pleat
			if t.Mirror {
				folded.TurnOver()
			}
			c.Pleat = &folded
		}
		c.Piece, c.On, c.Traced, c.Place = p, e, dart, t.Place
		p.Darts = append(p.Darts, &c)
	}
}

func ownDart(p *model.Piece, d *model.Dart) bool {
	return slices.ContainsFunc(p.Darts, func(o *model.Dart) bool { return o.Name == d.Name && o.Word() == d.Word() && o.Traced == nil })
}

// takeDarts takes over the darts inside a piece that is traced as a whole.
func (b *drafter) takeDarts(d *pieceDraft) {
	p, at := d.piece, place(d.block.attrs["trace"].SrcRange)
	for _, dart := range d.from.piece.Darts {
		if dart.On != nil || d.leaves("dart", dart.Name, "") || ownDart(p, dart) {
			continue
		}
		c := *dart
		c.Piece, c.Traced, c.Place = p, dart, at
		if d.mirror {
			c.Centre.X = -c.Centre.X
		}
		p.Darts = append(p.Darts, &c)
	}
}

// notLeft reports something left out that would not come along.
func (b *drafter) notLeft(d *pieceDraft, l *leaving) {
	if b.failed && d.outlined != good {
		return
	}
	var known []string
	add := func(name string) {
		if !slices.Contains(known, name) {
			known = append(known, name)
		}
	}
	sources := map[*model.Edge]bool{}
	for _, x := range d.traces {
		if x.edge.Traced != nil {
			sources[x.edge.Traced.Of] = true
		}
	}
	var pieces []*model.Piece
	if d.from != nil {
		pieces = append(pieces, d.from.piece)
	}
	for _, x := range d.traces {
		if t := x.edge.Traced; t != nil && !slices.Contains(pieces, t.Of.Piece) {
			pieces = append(pieces, t.Of.Piece)
		}
	}
	for _, s := range pieces {
		switch l.kind {
		case "notch":
			for _, n := range s.Notches {
				add(n.Name)
			}
		case "dart", "pleat":
			for _, dart := range s.Darts {
				if dart.Word() == l.kind {
					add(dart.Name)
				}
			}
		case "edge":
			for _, e := range s.Edges {
				add(e.Name)
			}
		}
	}
	if slices.Contains(known, l.name) && l.edge == "" {
		return // it lies on an edge that is drawn anew
	}
	prefix := l.kind + "."
	if l.kind == "edge" {
		prefix = ""
	}
	b.nothing(l.expr, l.kind, prefix, l.name, known)
}
