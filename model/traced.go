package model

import (
	"slices"

	"understitch/model/curve"
)

// Trace says how an edge is drawn by another edge, as a cutter draws one piece
// by laying another on it.
type Trace struct {
	Of       *Edge
	Drafted  bool // as the line was before its alterations
	From, To Mark // the stretch of it; NoMark where it begins or ends
	Mirror   bool // turned over

	// Reversible lets the line run against the way it was drawn, where its ends
	// then meet the edges beside it.
	Reversible bool

	Inward []LevelValue // then moved towards the cloth, at levels
	Evenly float64      // or by one amount along its whole length

	// A template keeps its heights and is moved across to fit another piece.
	Across  bool
	At      *Level       // the level at which it meets the piece's own line; nil: it starts where the edge before ends
	Own     *curve.Path  // that line, where the edge states it
	OwnEdge *Edge        // or the edge that the line would have been traced from
	Through []LevelValue // where it must lie at levels, from the drafting origin

	Place Place

	Line *curve.Path // the line of the other edge that it was last traced from
}

// TracedFrom is the edge that this one was traced from, nil when it was drawn
// by itself.
func (e *Edge) TracedFrom() *Edge {
	if e.Traced == nil {
		return nil
	}
	return e.Traced.Of
}

// Moved reports whether the traced line lies elsewhere than the line that it
// was traced from, so that its neighbours must be trimmed or run on to meet it.
func (t *Trace) Moved() bool { return t.Across || t.Evenly != 0 || len(t.Inward) > 0 }

// Ends cuts a traced piece off straight across at a level; what lies below is
// gone.
type Ends struct {
	Edge  *Edge // along the level
	Level *Level
	Place Place
}

// Moves reports whether the alteration itself moves the edge: it names it, and
// does not already move the line that the edge is traced from.
func (a *Alteration) Moves(e *Edge) bool { return a.names(e) && a.By(e) == nil }

// Alters reports whether the alteration moves the edge, itself or by moving the
// line that the edge is traced from.
func (a *Alteration) Alters(e *Edge) bool { return a.names(e) || a.By(e) != nil }

func (a *Alteration) names(e *Edge) bool { return slices.Contains(a.Edges, e) }

// By is the edge by which the alteration reaches one that is traced from it; nil
// where it reaches none.
func (a *Alteration) By(e *Edge) *Edge {
	for t := e.Traced; t != nil && !t.Drafted; t = t.Of.Traced {
		if a.names(t.Of) {
			return t.Of
		}
	}
	return nil
}

// Traces reports whether the edge is traced from another, be it over several
// others.
func (e *Edge) Traces(other *Edge) bool {
	for x := e.TracedFrom(); x != nil; x = x.TracedFrom() {
		if x == other {
			return true
		}
	}
	return false
}
