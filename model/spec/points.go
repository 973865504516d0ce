package spec

import (
	"math"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
	"understitch/model/curve"
)

// point reads [x, y] or the name of a point.
func (s *scope) point(e hclsyntax.Expression) (curve.Point, bool) {
	switch e := e.(type) {
	case *hclsyntax.TupleConsExpr:
		if len(e.Exprs) == 2 {
			x, y := s.length(e.Exprs[0], signed), s.length(e.Exprs[1], signed)
			return curve.Point{X: x, Y: y}, model.Known(x) && model.Known(y)
		}
	case *hclsyntax.ScopeTraversalExpr:
		words, n := steps(e)
		if n != 1 {
			break
		}
		p := s.points[words[0]]
		if p == nil {
			s.unknownPoint(e, words[0])
			return curve.Point{}, false
		}
		return s.pointAt(p)
	}
	detail := "Write [x, y], or a point's name."
	if list, ok := e.(*hclsyntax.TupleConsExpr); ok {
		detail = "A point is [x, y]."
		if meant := decimalComma(list.Exprs); meant != "" {
			detail = meant
		}
	}
	s.fault(e.Range(), detail, "a point is meant here")
	return curve.Point{}, false
}

func (s *scope) unknownPoint(e hclsyntax.Expression, name string) {
	if !s.tell(s.piece + " " + name) {
		return
	}
	detail := ""
	if near := nearest(name, sortedKeys(s.points)); near != "" {
		detail = "The nearest known point is " + near + "."
	} else if len(s.points) == 0 {
		detail = "This piece has no points block."
	}
	s.fault(e.Range(), detail, "there is no point %s", name)
}

// pointAt reckons a named point, in millimetres.
func (s *scope) pointAt(p *pointValue) (curve.Point, bool) {
	x, okX := s.reckon(&p.x)
	y, okY := s.reckon(&p.y)
	if !okX || !okY {
		return curve.Point{}, false
	}
	x, y = x*s.unit.Millimetre, y*s.unit.Millimetre
	if d := max(math.Abs(x), math.Abs(y)); d > farthest {
		if s.tell(s.piece + " " + p.attr.Name + " is far") {
			s.fault(p.attr.SrcRange, "Nothing in a garment is longer than 20 m; is the unit right?",
				"point %s lies %s off", p.attr.Name, s.metres(d))
		}
		return curve.Point{}, false
	}
	return curve.Point{X: x, Y: y}, true
}

// takePoints takes down a piece's points and reckons each, in any order. A traced
// piece has those of the piece that it is traced from as well.
func (b *drafter) takePoints(d *pieceDraft) {
	c := d.block.first("points")
	d.points = b.takenPoints(d)
	if b.at(d); c == nil {
		return
	}
	list := make([]pointValue, len(c.inOrder))
	n := 0
	for _, a := range c.inOrder {
		if b.full() {
			return
		}
		pair, ok := a.Expr.(*hclsyntax.TupleConsExpr)
		switch {
		case a.Name == "draft" || a.Name == "body" || a.Name == piName:
			b.fault(a.NameRange, "The word means something else in expressions.", "a point cannot be called %s", a.Name)
			continue
		case !ok || len(pair.Exprs) != 2:
			detail := "Write " + a.Name + " = [x, y]."
			if ok && decimalComma(pair.Exprs) != "" {
				detail = decimalComma(pair.Exprs)
			}
			b.fault(a.Expr.Range(), detail, "a point is meant here")
			b.tell(b.scope.piece + " " + a.Name) // those who use it need not say so again
			continue
		}
		p := &list[n]
		n++
		*p = pointValue{attr: a,
			x: value{name: a.Name + ".x", expr: pair.Exprs[0], at: a.SrcRange},
			y: value{name: a.Name + ".y", expr: pair.Exprs[1], at: a.SrcRange}}
		b.points[a.Name] = p
	}
	for i := range list[:n] {
		if b.full() {
			return
		}
		b.pointAt(&list[i])
	}
}
