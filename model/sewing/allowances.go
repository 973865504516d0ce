package sewing

import (
	"math"
	"slices"

	"understitch/model"
)

// AllowanceSpan is a part of a join along which one edge of each side lies, so
// that both allowances are what they are all along it. From and To are
// millimetres along the first walk.
type AllowanceSpan struct {
	From, To float64
	A, B     *model.Edge
}

// Apart is how much wider the first side's allowance is than the second's; NaN
// where one of them is not known.
func (s AllowanceSpan) Apart() float64 { return s.A.Allowance.Width - s.B.Allowance.Width }

// Unstated is the edge whose allowance is not known, or nil.
func (s AllowanceSpan) Unstated() *model.Edge {
	for _, e := range []*model.Edge{s.A, s.B} {
		if !model.Known(e.Allowance.Width) {
			return e
		}
	}
	return nil
}

// sameJoin is how far apart, in millimetres, a join between two pieces on one
// side of a seam may lie from one on the other and still be the same place:
// about what a seam is walked to (see the rule seam-walk). Where the sides
// differ in length, joins move by as much again.
const SameJoin = 3.0

// AllowancesAlong cuts the two walks of a join wherever a new edge begins on
// either. The second is laid along the first by share of its length. Slivers
// between two joins that are one place are left out.
func AllowancesAlong(a, b *Walk) []AllowanceSpan {
	scale := 1.0
	if b.Length > 0 {
		scale = a.Length / b.Length
	}
	cuts := append([]float64{0, a.Length}, a.Joins()...)
	for _, s := range b.Joins() {
		cuts = append(cuts, s*scale)
	}
	slices.Sort(cuts)
	sliver := SameJoin + math.Abs(a.Length-b.Length)
	var out []AllowanceSpan
	for i := 1; i < len(cuts); i++ {
		from, to := cuts[i-1], cuts[i]
		if to-from <= sliver && to-from < a.Length {
			continue
		}
		middle := (from + to) / 2
		out = append(out, AllowanceSpan{from, to, a.runAt(middle).Edge, b.runAt(middle / scale).Edge})
	}
	return out
}

// AllowanceStep is a place on one side of a join where it goes on from one edge
// of a piece to another of the same piece with a different allowance. At is in
// millimetres along the walk.
type AllowanceStep struct {
	Before, After *model.Edge
	At            float64
	Notched       bool    // a notch marks the step
	Turn          float64 // by how much the line turns there, in degrees; NaN where it is not drawn
}

// atStep is how near a notch must be to a step in the allowance to mark it.
const atStep = 1.0

// AllowanceSteps are the steps of more than least millimetres in the allowance
// along a walk, within its pieces. Between two pieces a seam crosses, and the
// step is squared off there.
func (w *Walk) AllowanceSteps(least float64) []AllowanceStep {
	var out []AllowanceStep
	for i := 1; i < len(w.Runs); i++ {
		before, after := w.Runs[i-1].Edge, w.Runs[i].Edge
		if before.Piece != after.Piece || !(math.Abs(before.Allowance.Width-after.Allowance.Width) > least) {
			continue
		}
		step := AllowanceStep{Before: before, After: after, At: w.Runs[i].Start, Turn: math.Abs(180 - w.Runs[i-1].CornerAngle(true))}
		for _, n := range w.Notches {
			step.Notched = step.Notched || math.Abs(n.At-step.At) <= atStep
		}
		out = append(out, step)
	}
	return out
}

// RunsOn are the two edges of one finish that run on into each other across the
// end (or the start) of a join, as a hem does across a side seam; ok is false
// where none do, or an allowance is not known.
func RunsOn(a, b *Walk, atEnd bool) (x, y *model.Edge, ok bool) {
	x, y = a.Corner(atEnd), b.Corner(atEnd)
	if x == nil || y == nil || x == y || x.Finish == "" || x.Finish != y.Finish {
		return nil, nil, false
	}
	return x, y, model.Known(x.Allowance.Width) && model.Known(y.Allowance.Width)
}

// AllowanceApart is the largest difference, in millimetres, between the edge's
// allowance and that of any edge it meets in a seam, a closure or a share;
// nothing where it meets none or not all is known.
func AllowanceApart(g *model.Garment, e *model.Edge) float64 {
	return laidAllowances(g).apart[e]
}

// LaidAlong are the edges that an edge lies along in seams, closures and shares,
// each of them once.
func LaidAlong(g *model.Garment, e *model.Edge) []*model.Edge {
	return laidAllowances(g).beside[e]
}

// allowancesMet is what every edge of a garment meets, once it is found.
type allowancesMet struct {
	apart  map[*model.Edge]float64
	beside map[*model.Edge][]*model.Edge
}

func laidAllowances(g *model.Garment) *allowancesMet {
	kept := model.In[allowancesMet](&g.Store)
	if kept.apart != nil {
		return kept
	}
	kept.apart, kept.beside = map[*model.Edge]float64{}, map[*model.Edge][]*model.Edge{}
	for _, j := range g.Joins() {
		if a, b, err := Walks(g, j); err == nil {
			kept.lay(a, b)
		}
	}
	for _, s := range g.Shares {
		if a, b, _, err := ShareWalks(g, s); err == nil {
			kept.lay(a, b)
		}
	}
	return kept
}

func (l *allowancesMet) lay(a, b *Walk) {
	for _, s := range AllowancesAlong(a, b) {
		l.layOn(s.A, s.B)
		l.layOn(s.B, s.A)
		if d := math.Abs(s.Apart()); model.Known(d) {
			l.apart[s.A] = max(l.apart[s.A], d)
			l.apart[s.B] = max(l.apart[s.B], d)
		}
	}
}

func (l *allowancesMet) layOn(e, other *model.Edge) {
	if !slices.Contains(l.beside[e], other) {
		l.beside[e] = append(l.beside[e], other)
	}
}
