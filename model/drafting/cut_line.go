package drafting

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// lineTolerance is how closely a line at an allowance's distance follows the
// true one, in millimetres.
const lineTolerance = 1e-3

// Net finds the stitch line of every piece that was drawn with its allowances, in
// a garment whose lines are all drawn.
func Net(g *model.Garment) []model.Diagnostic {
	for _, p := range g.Pieces() {
		if p.DrawnOn != model.CutLine {
			continue
		}
		if fault := setIn(p); fault != "" {
			return []model.Diagnostic{*faultAt(p.Place, "", "%s", fault)}
		}
	}
	return nil
}

// setIn finds the stitch line of a piece that was drawn with its allowances: each
// edge's line set in by its allowance, neighbours trimmed or run on to meet. From
// here on everything is measured on the stitch line; the line as it was drawn is
// kept as the cut line. An edge that is traced from another piece is a stitch line
// already.
func setIn(p *model.Piece) string {
	lines, fault := beside(p, 1)
	if fault != "" {
		return fault
	}
	stitch, open := curve.CloseCorners(lines, cornerRun)
	if open >= 0 {
		e := p.Edges[open]
		return "set in by their allowances, " + e.Address() + " and " + e.Neighbour(true).Address() + " do not meet"
	}
	for i, e := range p.Edges {
		if e.Cut = e.Path; isStitchLine(e) {
			e.Cut = nil
			carryEdge(e, e.Path, move{}, stitch[i])
		}
		e.Path, e.Store = stitch[i], model.Store{}
	}
	p.Store = model.Store{}
	return ""
}

// isStitchLine reports whether an edge is a stitch line whatever the rest of its
// piece is drawn along.
func isStitchLine(e *model.Edge) bool { return e.Traced != nil && e.Traced.Of.Piece != e.Piece }

// beside is each edge's line at its allowance's distance: inside the piece for
// 1, outside for -1.
func beside(p *model.Piece, inside float64) ([]*curve.Path, string) {
	region, err := p.Region()
	if err != nil {
		return nil, err.Error()
	}
	setIn := inside > 0
	if !region.Clockwise() {
		inside = -inside // the cloth lies on the left of the way round
	}
	out := make([]*curve.Path, len(p.Edges))
	for i, e := range p.Edges {
		if setIn && isStitchLine(e) {
			out[i] = e.Path
			continue
		}
		if !model.Known(e.Allowance.Width) {
			return nil, e.Address() + " states no allowance, so its other line cannot be drawn"
		}
		out[i] = e.Path.Parallel(inside*e.Allowance.Width, lineTolerance)
	}
	return out, ""
}

// cutLines are the lines along which a piece is cut, once they are drawn.
type cutLines struct{ model.Once[[]*curve.Path] }

// CutLine is the line along which the piece is cut, edge by edge: as drawn
// where the drawing has it, else the stitch line set out by the allowances.
// Corners are mitred; where a hem is turned up, the edges beside it are folded
// back, so that the hem lies flat on the cloth above it.
func CutLine(p *model.Piece) ([]*curve.Path, error) {
	return model.In[cutLines](&p.Store).Get(func() ([]*curve.Path, error) {
		drawn := p.DrawnOn == model.CutLine && !altered(p)
		if drawn && !slices.ContainsFunc(p.Edges, func(e *model.Edge) bool { return e.Cut == nil }) {
			out := make([]*curve.Path, len(p.Edges))
			for i, e := range p.Edges {
				out[i] = e.Cut
			}
			return out, nil
		}
		lines, fault := beside(p, -1)
		if fault != "" {
			return nil, model.Missingf("%s", fault)
		}
		for i, e := range p.Edges {
			switch {
			case e.CutDrawn != nil && e.Drafted == nil:
				lines[i] = cutAlong(e)
			case drawn && e.Cut != nil:
				lines[i] = e.Cut
			}
		}
		for i, e := range p.Edges {
			if e.Finish == "hem" {
				foldBack(p, lines, i, true)
				foldBack(p, lines, i, false)
			}
		}
		cut, open := curve.CloseCorners(lines, cornerRun)
		if open >= 0 {
			e := p.Edges[open]
			return nil, model.Missingf("with their allowances, %s and %s do not meet", e.Address(), e.Neighbour(true).Address())
		}
		return cut, nil
	})
}

func altered(p *model.Piece) bool {
	return slices.ContainsFunc(p.Edges, func(e *model.Edge) bool { return e.Drafted != nil })
}

// foldBack runs the cut line beside a hem on as the mirror image, in the line
// on which the hem is turned, of what lies above it.
func foldBack(p *model.Piece, lines []*curve.Path, hem int, atEnd bool) {
	e := p.Edges[hem]
	beside := e.Neighbour(atEnd)
	if beside == e || beside.Finish == "hem" || p.Fold == beside {
		return
	}
	at, along := e.End(atEnd)
	line := lines[beside.Index]
	if !atEnd {
		line = line.Reverse()
	}
	// The line now starts at the hem; what lies above the turn is mirrored.
	start, _, ok := curve.Meet(line.Reverse(), curve.Polyline(at, at.Add(along)), cornerRun)
	if !ok {
		return
	}
	turn := line.Length() - start
	above := line.Cut(turn, math.Min(line.Length(), turn+1.5*e.Allowance.Width))
	folded := above.Move(curve.Mirror(at, at.Add(along))).Reverse()
	whole := curve.Join(folded, line.Cut(turn, line.Length()))
	if !atEnd {
		whole = whole.Reverse()
	}
	lines[beside.Index] = whole
}
