package guess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
)

// seamNames are what edges are called that are always sewn (common practice, no source).
var seamNames = []string{"side", "underarm", "inseam", "outseam", "inside_leg", "outside_leg", "shoulder", "princess"}

// Unsewn tells why an edge with which nothing is done is a seam that was forgotten: it is
// called so, as another edge of its layer is, the edge of its name on another layer is sewn, or its piece has another
// as long, within agree, with which nothing is done either; "" where it may be
// something else. An edge shorter than shortest is too short to be known by its length
// alone: all in millimetres.
func Unsewn(g *model.Garment, e *model.Edge, agree, shortest float64) string {
	if len(g.Uses(e)) > 0 {
		return ""
	}
	if sewn := sewnElsewhere(g, e); sewn != nil {
		return fmt.Sprintf("%s is sewn", sewn.Address())
	}
	if with := unsewnPartner(g, e, agree, shortest); with != nil {
		return fmt.Sprintf("nothing is done with %s either, which is as long", with.Address())
	}
	if word := seamWord(e); word != "" && slices.ContainsFunc(e.Piece.Layer.Pieces, func(p *model.Piece) bool {
		return slices.ContainsFunc(p.Edges, func(o *model.Edge) bool { return o != e && seamWord(o) == word })
	}) {
		return "its name says so"
	}
	return ""
}

// seamWord is the word in an edge's name by which it is a seam; "" where there is none.
func seamWord(e *model.Edge) string {
	for _, name := range seamNames {
		if e.Name == name || slices.Contains(strings.FieldsFunc(e.Name, func(r rune) bool { return r == '-' || r == '_' }), name) {
			return name
		}
	}
	return ""
}

// sewnElsewhere is the edge of that name, in the piece of that name of another layer,
// that is sewn; or nil.
func sewnElsewhere(g *model.Garment, e *model.Edge) *model.Edge {
	for _, p := range g.Pieces() {
		if p.Layer == e.Piece.Layer || p.Name != e.Piece.Name {
			continue
		}
		for _, o := range p.Edges {
			if o.Name == e.Name && slices.ContainsFunc(g.Uses(o), func(u model.Use) bool { return u.Kind == model.Sewn }) {
				return o
			}
		}
	}
	return nil
}

// unsewnPartner is another edge of the same piece with which nothing is done, as long,
// and across a sewn edge from this one, as the two edges of an underarm seam; or nil.
func unsewnPartner(g *model.Garment, e *model.Edge, agree, shortest float64) *model.Edge {
	if e.SewnLength() < shortest {
		return nil
	}
	for _, o := range e.Piece.Edges {
		if o == e || o == e.Neighbour(false) || o == e.Neighbour(true) || len(g.Uses(o)) > 0 {
			continue
		}
		if math.Abs(o.SewnLength()-e.SewnLength()) <= agree && sewnBetween(g, e, o) {
			return o
		}
	}
	return nil
}

// sewnBetween reports whether an edge that lies between two of a piece is sewn, as a
// sleeve's cap is.
func sewnBetween(g *model.Garment, a, b *model.Edge) bool {
	for _, atEnd := range []bool{false, true} {
		between := a.Neighbour(atEnd)
		touches := between.Neighbour(atEnd) == b
		if touches && slices.ContainsFunc(g.Uses(between), func(u model.Use) bool { return u.Kind == model.Sewn }) {
			return true
		}
	}
	return false
}
