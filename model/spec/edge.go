package spec

import (
	"errors"
	"math"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
	"understitch/model/curve"
)

// geometries are the ways to state an edge, of which each edge has one.
var geometries = []string{"line", "smooth", "curve", "path", "length"}

// edge builds an edge. It is entered in the piece even when its drawing is at
// fault, so that what refers to it does not fail too. Same is its namesake in the
// piece that this one is traced from.
func (b *drafter) edge(c *block, d *pieceDraft, same *model.Edge) {
	p := d.piece
	e := &model.Edge{Name: c.name, Piece: p, Index: len(p.Edges), PaperLength: math.NaN(), Allowance: d.unstated,
		Place: place(c.header)}
	p.Edges = append(p.Edges, e)
	b.finishing(c, e)
	given := ""
	for _, g := range geometries {
		switch {
		case c.attr(g) == nil:
		case given != "":
			b.fault(c.attrs[g].SrcRange, "An edge is drawn in one way.", "edge %s has both %s and %s", e.Name, given, g)
			return
		default:
			given = g
		}
	}
	traced := b.trace(c, d, e, same, given)
	switch x := c.attr(given); given {
	case "":
		if !traced {
			b.fault(c.header, "State one of "+strings.Join(geometries, ", ")+", or trace.", "edge %s has no drawing and no length", e.Name)
		}
	case "length":
		e.PaperLength = b.length(x, above0)
	case "path":
		e.Path = b.pathData(x)
	default:
		e.Path = b.through(given, x)
	}
	if x := c.attr("cut_line"); x != nil {
		b.cutLine(x, e)
	}
}

// finishing reads what is done with the raw edge.
func (b *drafter) finishing(c *block, e *model.Edge) {
	if x := c.attr("allowance"); x != nil {
		e.Allowance = model.Allowance{Width: b.length(x, atLeast0), Own: true, Place: place(x.Range())}
	}
	if x := c.attr("finish"); x != nil {
		e.Finish = b.text(x)
	}
	if x := c.attr("role"); x != nil {
		e.Role = b.text(x)
	}
}

// through draws an edge from its list of points. It gives nil after a fault.
func (b *drafter) through(how string, e hclsyntax.Expression) *curve.Path {
	list, ok := e.(*hclsyntax.TupleConsExpr)
	if !ok {
		b.fault(e.Range(), "Write "+how+" = [a, b, …], each a point's name or [x, y].", "a list of points is meant here")
		return nil
	}
	pts := make([]curve.Point, 0, len(list.Exprs))
	for _, x := range list.Exprs {
		if b.full() {
			return nil
		}
		p, good := b.point(x)
		ok = ok && good
		pts = append(pts, p)
	}
	switch {
	case !ok:
		return nil
	case how == "curve" && (len(pts) < 4 || len(pts)%3 != 1):
		b.fault(e.Range(), "A start, then two controls and an end for each stretch.",
			"a curve has 4, 7, 10 … points, not %d", len(pts))
		return nil
	case len(pts) < 2:
		b.fault(e.Range(), "", "an edge needs at least two points")
		return nil
	case allOne(pts):
		b.fault(e.Range(), "", "all points of the edge are one")
		return nil
	}
	switch how {
	case "line":
		return curve.Polyline(pts...)
	case "smooth":
		return curve.Smooth(pts...)
	}
	segs := make([]curve.Segment, 0, len(pts)/3)
	for i := 0; i+3 < len(pts); i += 3 {
		segs = append(segs, curve.Cubic(pts[i], pts[i+1], pts[i+2], pts[i+3]))
	}
	return curve.New(segs...)
}

func allOne(pts []curve.Point) bool {
	for _, p := range pts[1:] {
		if p != pts[0] {
			return false
		}
	}
	return true
}

// pathData draws an edge from SVG path data in the file's unit.
func (b *drafter) pathData(e hclsyntax.Expression) *curve.Path {
	data := b.text(e)
	if data == "" {
		return nil
	}
	path, err := curve.ParsePath(data, b.unit.Millimetre)
	if err != nil {
		at := e.Range()
		var p *curve.PathError
		// The parser tells where in the text it stopped. In text without escapes
		// that is where it stands in the file.
		from := at.Start.Byte + 1
		if errors.As(err, &p) && strings.HasPrefix(string(b.doc.src[min(from, len(b.doc.src)):]), data) {
			at = rangeAt(b.doc.file, b.doc.src, from+min(p.Offset, len(data)), from+min(p.Offset+1, len(data)))
			b.fault(at, "", "path data: %s", p.Message)
			return nil
		}
		b.fault(at, "", "path data: %s", err)
		return nil
	}
	box := path.Bounds()
	far := max(math.Abs(box.Min.X), math.Abs(box.Min.Y), math.Abs(box.Max.X), math.Abs(box.Max.Y))
	switch {
	case !(far <= farthest):
		b.fault(e.Range(), "Nothing in a garment is longer than 20 m; is the unit right?", "the path runs %s off", b.metres(far))
		return nil
	case path.Length() == 0:
		b.fault(e.Range(), "", "the path has no length")
		return nil
	}
	return path
}

// dart builds a dart: on an edge, or inside the piece with two points.
func (b *drafter) dart(c *block, p *model.Piece) {
	d := &model.Dart{Name: c.name, Piece: p, Place: place(c.header), Intake: b.length(c.attr("intake"), atLeast0)}
	p.Darts = append(p.Darts, d)
	inside := c.attr("centre") != nil || c.attr("up") != nil || c.attr("down") != nil
	groups := [2][]string{{"on", "at", "tip"}, {"centre", "up", "down"}}
	needs, other := groups[0], groups[1]
	if inside {
		needs, other = other, needs
	}
	for _, name := range other {
		if x := c.attrs[name]; x != nil {
			b.fault(x.SrcRange, "A dart states on, at and tip; one with two points states centre, up and down.",
				"dart %s mixes two kinds of dart", d.Name)
			return
		}
	}
	for _, name := range needs {
		if c.attr(name) == nil && name != "tip" {
			b.fault(c.header, "A dart states on, at and tip; one with two points states centre, up and down.",
				"dart %s does not state %s", d.Name, name)
			return
		}
	}
	if inside {
		d.Centre, _ = b.point(c.attr("centre"))
		d.Up, d.Down = b.length(c.attr("up"), atLeast0), b.length(c.attr("down"), atLeast0)
		return
	}
	d.On = b.edgeOf(c.attr("on"), p)
	d.At = b.length(c.attr("at"), atLeast0)
	switch x := c.attr("tip"); {
	case x != nil:
		d.Tip, d.HasTip = b.point(x)
	case d.On != nil && drawn(d.On):
		b.fault(c.header, "Only a dart on an edge known by its length may leave it out.", "dart %s does not state tip", d.Name)
	}
}

// drawn reports whether an edge has a drawing, its own or that of the edge that it
// is traced from.
func drawn(e *model.Edge) bool {
	for e.Traced != nil {
		e = e.Traced.Of
	}
	return e.Path != nil
}

// mostNotches is how many notches a piece may have: each is judged against each
// other one on its edge.
const mostNotches = 300

// notch builds a notch.
func (b *drafter) notch(c *block, p *model.Piece) {
	n := &model.Notch{Name: c.name, Piece: p, At: math.NaN(), Kind: "single", Depth: math.NaN(), Place: place(c.header)}
	if len(p.Notches) == mostNotches {
		b.fault(c.header, "A piece has some ten.", "%s has more than %d notches", p.Address(), mostNotches)
	}
	if p.Notches = append(p.Notches, n); len(p.Notches) > mostNotches {
		return
	}
	n.On = b.edgeOf(c.attr("on"), p)
	if x := c.attr("kind"); x != nil {
		n.Kind = b.text(x)
	}
	if x := c.attr("depth"); x != nil {
		n.Depth, n.Deep = b.length(x, atLeast0), place(x.Range())
	}
	const one = "A notch states one of at, level and point."
	given := ""
	for _, how := range []string{"at", "level", "point"} {
		x := c.attr(how)
		switch {
		case x == nil:
			continue
		case given != "":
			b.fault(c.attrs[how].SrcRange, one, "notch %s has both %s and %s", n.Name, given, how)
			return
		}
		given, n.Given = how, place(x.Range())
	}
	switch x := c.attr(given); given {
	case "at":
		n.At = b.length(x, atLeast0)
	case "level":
		n.Level = b.levelAt(x)
	case "point":
		n.Point, n.ByPoint = b.point(x)
	default:
		b.fault(c.header, one, "notch %s does not state where it is", n.Name)
	}
}
