package allowances

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/drafting"
	"understitch/rules"
)

//go:embed testdata/allowance-room.bad.garment.hcl
var roomBad string

//go:embed testdata/allowance-room.good.garment.hcl
var roomGood string

// Room checks that the allowance of every edge can be drawn and turned.
var Room = rules.Rule{
	Name:     "allowance-room",
	Family:   "allowances",
	Severity: rules.Warning,
	Under:    []string{"outline-crossing", "unit-slip"},
	Doc: rules.Doc{
		Title: "The allowance can be turned: it does not cross itself at a tight curve, and its corners can be built",
		Why: "On the inside of a curve that is tighter than the allowance is wide there is no cloth to cut the allowance from. The cut line runs " +
			"back on itself, and what is cut does not open out when the seam is pressed. A corner at which the cut lines do not meet cannot be " +
			"cut at all.",
		How: "Find the circle that fits the tightest place of the curve, on the side of the allowance: its radius must be no less than the " +
			"allowance is wide. Corners inside an edge do not count. Then the cut line is drawn round the whole piece, mitred at its corners and " +
			"folded back beside a hem. It must close and may not cross itself. A piece that states no allowance is not checked. Where outline-crossing reports the " +
			"stitch line, that finding stands for this one.",
		Nothing: "No edge of the piece has an allowance, and no allowance is stated.",
		Fix:     "Give that edge a narrower allowance, the same as on the edge it is sewn to; or draw the curve wider.",
		Bad:     roomBad, Good: roomGood, Since: "0.1",
	},
	Each: rules.Pieces(room),
}

func room(p *rules.Pass, piece *model.Piece) {
	p.NothingHere()
	var missing, stating *model.Edge
	for _, e := range piece.Edges {
		switch {
		case !model.Known(e.Allowance.Width):
			missing = e
		case e.Allowance.Width > 0:
			stating = e
		}
	}
	if stating == nil {
		return
	}
	if err := piece.Undrawn(); err != nil {
		p.Cannot(err, rules.Say{})
		return
	}
	tight := map[int]bool{}
	for _, e := range piece.Edges {
		if !(e.Allowance.Width > 0) {
			continue
		}
		at, radius, err := drafting.TightTurn(e)
		if err != nil {
			p.Cannot(err, rules.Say{})
			return
		}
		tight[e.Index] = radius < e.Allowance.Width
		turn(p, e, at, radius)
	}
	if missing != nil {
		p.Cannot(unstated(missing), rules.Say{Key: "cut line", Place: missing.Place})
		return
	}
	cutLine(p, piece, tight)
}

// underRoom names the findings that explain a cut line which cannot be turned: an
// outline that crosses itself, or an allowance of a width that none has.
func underRoom(p *rules.Pass, piece *model.Piece) []rules.Under {
	out := []rules.Under{{Rule: "outline-crossing", Subject: piece.Address()}}
	for _, e := range piece.Edges {
		if e.Allowance.Width > 0 {
			out = append(out, wrongUnit(p.Garment, e))
		}
	}
	return out
}

// point is the radius, in millimetres, under which a curve is as good as a
// corner, and no allowance can be turned in it.
const point = 1.0

// turn judges the tightest curve of an edge.
func turn(p *rules.Pass, e *model.Edge, at, radius float64) {
	say := rules.Say{Key: e.Name, Place: e.Place, Under: underRoom(p, e.Piece), Account: bendAccount(e, at, radius)}
	if math.IsInf(radius, 1) {
		say.Account = noBendAccount(e)
		p.Good(say)
		return
	}
	most := fmt.Sprintf("Make it no more than %s, or draw the curve wider.", p.Show(radius))
	if radius < point {
		most = "Draw the curve wider there."
	}
	say.Message = func() string {
		return fmt.Sprintf("%s bends with a radius of %s at %s along it, and its allowance of %s lies on the inside of the bend: there is no room to turn it. %s",
			e.Address(), p.Show(radius), p.Show(at), p.Show(e.Allowance.Width), most)
	}
	say.Related = []rules.Related{{Message: "its allowance", Place: stated(e)}}
	if radius >= point {
		say.Mend = &rules.Mend{Title: fmt.Sprintf("give %s an allowance of no more than %s", e.Address(), p.Show(radius))}
	}
	p.AtLeast(radius, e.Allowance.Width, say)
}

// cutLine judges the whole cut line; what a tight curve does to it has been said.
func cutLine(p *rules.Pass, piece *model.Piece, tight map[int]bool) {
	say := rules.Say{Key: "cut line", Under: underRoom(p, piece)}
	crossings, err := drafting.CutLineCrossings(piece)
	if _, open := drafting.CutLine(piece); open != nil {
		say.Message = func() string {
			return fmt.Sprintf("the cut line of %s does not close: %s. Give one of them a narrower allowance, or draw their corner less sharp.", piece.Address(), open)
		}
		p.Fault(say)
		return
	}
	if err != nil {
		p.Cannot(err, say)
		return
	}
	for _, c := range crossings {
		if c.A == nil || c.B == nil || tight[c.A.Index] || tight[c.B.Index] {
			continue
		}
		say.Message = func() string {
			unit := p.Garment.Unit
			if c.A == c.B {
				return fmt.Sprintf("the cut line of %s crosses itself at [%s, %s]: an allowance of %s is wider than there is room for. Make it narrower, or draw the line more open.",
					c.A.Address(), unit.Bare(c.At.X), unit.Bare(c.At.Y), p.Show(c.A.Allowance.Width))
			}
			return fmt.Sprintf("the cut line of %s crosses that of %s at [%s, %s]: their allowances of %s and %s overlap. Make them narrower, or draw the two lines further apart.",
				c.B.Address(), c.A.Address(), unit.Bare(c.At.X), unit.Bare(c.At.Y), p.Show(c.B.Allowance.Width), p.Show(c.A.Allowance.Width))
		}
		say.Place = c.B.Place
		if c.A != c.B {
			say.Related = []rules.Related{{Message: "the edge it crosses", Place: c.A.Place}}
		}
		p.Fault(say)
		return
	}
	p.Good(say)
}
