package spec

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// tracing are the attributes that say how an edge is traced.
var tracing = []string{"state", "from", "to", "inward", "mirror", "at", "through", "notches"}

// edges drafts the edges of a piece. Where it is traced as a whole, its own edges
// replace their namesakes; once it names one that the traced piece does not have,
// it lists them all.
func (b *drafter) edges(d *pieceDraft) {
	p, blocks := d.piece, d.block.all("edge")
	listed := d.from == nil || slices.ContainsFunc(blocks, func(x *block) bool { return namesake(d, x.name) == nil })
	if listed {
		for _, x := range blocks {
			b.edge(x, d, namesake(d, x.name))
			if d.from != nil && namesake(d, x.name) == nil {
				d.fresh = append(d.fresh, p.Edges[len(p.Edges)-1])
			}
		}
	} else {
		for _, s := range d.from.piece.Edges {
			if x := d.block.named("edge", s.Name); x != nil {
				b.edge(x, d, s)
			} else if !d.leaves("edge", s.Name, s.Name) {
				b.follow(s, d)
			}
		}
	}
	if d.from != nil && d.from.piece.Fold != nil {
		p.Fold = edgeNamed(p, d.from.piece.Fold.Name)
	}
	b.ends(d)
	if len(p.Edges) == 0 {
		b.fault(d.block.header, "Write edge \"side\" { … } inside it.", "piece %s has no edges", p.Name)
	}
}

func edgeNamed(p *model.Piece, name string) *model.Edge {
	return find(p.Edges, name, func(e *model.Edge) string { return e.Name })
}

// namesake is the edge of that name in the piece that another is traced from.
func namesake(d *pieceDraft, name string) *model.Edge {
	if d.from == nil {
		return nil
	}
	return edgeNamed(d.from.piece, name)
}

// follow traces an edge of the piece that is traced as a whole.
func (b *drafter) follow(s *model.Edge, d *pieceDraft) {
	at := place(d.block.attrs["trace"].SrcRange)
	e := &model.Edge{Name: s.Name, Piece: d.piece, Index: len(d.piece.Edges), PaperLength: model.Unknown(), Allowance: d.unstated,
		Finish: s.Finish, Role: s.Role, Place: at}
	e.Traced = &model.Trace{Of: s, Mirror: d.mirror, Place: at}
	d.piece.Edges = append(d.piece.Edges, e)
	d.traces = append(d.traces, &edgeTrace{edge: e, notches: true})
}

// edgeTrace is a traced edge while it is drafted.
type edgeTrace struct {
	edge    *model.Edge
	block   *block // nil where the whole piece is traced
	notches bool   // whether notches and darts come along
	settled state
}

// trace takes down how an edge is traced: from the edge that it names or, in a
// traced piece, from its namesake. It reports whether that is how it is drawn.
func (b *drafter) trace(c *block, d *pieceDraft, e, same *model.Edge, drawn string) bool {
	if same != nil {
		if c.attr("finish") == nil {
			e.Finish = same.Finish
		}
		if c.attr("role") == nil {
			e.Role = same.Role
		}
	}
	stated := c.attr("trace") != nil
	if !stated && (same == nil || drawn != "") {
		for _, name := range tracing {
			if a := c.attrs[name]; a != nil {
				b.fault(a.SrcRange, "Write trace = LAYER.PIECE.EDGE beside it.", "%s says how an edge is traced, and edge %s is not", name, e.Name)
				return true
			}
		}
		return false
	}
	t := &model.Trace{Of: same, Mirror: d.mirror && !stated, Place: place(c.header)}
	if stated {
		t.Of, t.Place = nil, place(c.attrs["trace"].SrcRange)
		t.Reversible = c.attr("from") == nil && c.attr("to") == nil
	}
	if drawn != "" && c.attr("at") == nil {
		b.fault(c.attrs[drawn].SrcRange, "An edge is drawn in one way. With at = LEVEL a template meets the line that is drawn beside it.",
			"edge %s has both %s and trace", e.Name, drawn)
	}
	if a := c.attr("state"); a != nil {
		t.Drafted = b.choice(a, "altered", "drafted") == "drafted"
	}
	if a := c.attr("mirror"); a != nil {
		t.Mirror = b.flag(a)
	}
	x := &edgeTrace{edge: e, block: c, notches: true}
	if a := c.attr("notches"); a != nil {
		x.notches = b.flag(a)
	}
	e.Traced = t
	d.traces = append(d.traces, x)
	return true
}

// sources finds the edges that others are traced from, when the outlines of all
// pieces are known.
func (b *drafter) sources() {
	for _, d := range b.pieces {
		b.at(d)
		for _, x := range d.traces {
			if x.block != nil {
				b.source(d, x)
			}
		}
	}
	for _, d := range b.pieces {
		for _, x := range d.traces {
			b.inCircle(x.edge)
		}
	}
}

// source finds the edge that one is traced from, and how the line is moved.
func (b *drafter) source(d *pieceDraft, x *edgeTrace) {
	c, e, t := x.block, x.edge, x.edge.Traced
	same := t.Of
	if a := c.attr("trace"); a != nil {
		same = namesake(d, e.Name)
		if t.Of = b.edgeAt(a); t.Of == nil {
			e.Traced, x.settled = nil, bad
			return
		}
	}
	t.Across = b.elsewhere(d, t.Of.Piece)
	if a := c.attr("inward"); a != nil {
		if _, byLevel := a.(*hclsyntax.ObjectConsExpr); byLevel {
			t.Inward = b.levelValues(a, signed)
		} else {
			t.Evenly = b.length(a, signed)
		}
	}
	if a := c.attr("at"); a != nil {
		t.Across, t.At = true, b.levelAt(a)
		t.Own, e.Path = e.Path, nil
		if t.OwnEdge = same; t.OwnEdge == t.Of {
			t.OwnEdge = nil
		}
	}
	if a := c.attr("through"); a != nil {
		t.Across, t.Through = true, b.levelValues(a, signed)
	}
}

// elsewhere reports whether a line of another piece is laid on this one as a
// template. A line of the piece that this one is traced from, or of the piece of
// the same name on another layer, lies where it was drawn.
func (b *drafter) elsewhere(d *pieceDraft, of *model.Piece) bool {
	for s := d.from; s != nil; s = s.from {
		if s.piece == of {
			return false
		}
	}
	return of.Layer == d.piece.Layer || of.Name != d.piece.Name
}

// inCircle reports edges that are each traced from the next.
func (b *drafter) inCircle(e *model.Edge) {
	var way []*model.Edge
	for x := e; x != nil; x = x.TracedFrom() {
		i := slices.Index(way, x)
		if way = append(way, x); i < 0 {
			continue
		}
		if i == 0 {
			var names []string
			for _, w := range way {
				names = append(names, w.Address())
			}
			t := e.Traced
			for _, w := range way {
				w.Traced = nil
			}
			b.failed = true
			b.keep(model.Diagnostic{Severity: "error", Summary: "these edges are each traced from the next, in a circle: " + strings.Join(names, " → "),
				Detail: "Draw one of them by itself.", Place: t.Place})
		}
		return
	}
}
