package allowances

import (
	"understitch/model"
	"understitch/model/drafting"
	"understitch/model/reckoned"
	"understitch/model/sewing"
	"understitch/rules"
)

func matchAccount(p *rules.Pass, s sewing.AllowanceSpan, where string) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "they lie on each other %s", where)
		l.Differ(rules.Millimetres, 0, s.A.Allowance.Width, reckoned.AllowanceText(s.A), s.B.Allowance.Width, reckoned.AllowanceText(s.B))
	}
}

// runOnAccount tells both allowances, the wider first.
func runOnAccount(x, y *model.Edge) rules.Account {
	if x.Allowance.Width < y.Allowance.Width {
		x, y = y, x
	}
	return func(l *reckoned.Lines) {
		l.Differ(rules.Millimetres, 0, x.Allowance.Width, reckoned.AllowanceText(x), y.Allowance.Width, reckoned.AllowanceText(y))
	}
}

func stepAccount(s sewing.AllowanceStep) rules.Account {
	return func(l *reckoned.Lines) {
		l.Allowance(1, s.Before)
		l.Allowance(1, s.After)
		notch := "a notch marks the place"
		if !s.Notched {
			notch = "no notch marks the place"
		}
		l.Say(1, "%s", notch)
	}
}

func standardAccount(e *model.Edge, house *model.Standard) rules.Account {
	return func(l *reckoned.Lines) {
		l.Differ(rules.Millimetres, 0, e.Allowance.Width, reckoned.AllowanceText(e), house.Width, "the house's for "+roleText(house.Role))
	}
}

// neededAccount tells what a closure needs, by whose word, and what the edge has.
func neededAccount(g *model.Garment, c *model.Closure, e *model.Edge, needed float64) rules.Account {
	return func(l *reckoned.Lines) {
		by := "as a fastener does where neither the closure nor the house says"
		switch {
		case model.Known(c.Needs):
			by = "as it states"
		case g.Standard(model.RoleClosure) != nil:
			by = "as the house says of closures"
		}
		l.Beside(1, needed, "%s needs, %s", c.Address(), by)
		l.Result(0, e.Allowance.Width, "is %s", reckoned.AllowanceText(e))
	}
}

func foldAccount(e *model.Edge) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "%s lies on the fold, where the cloth goes on and nothing is sewn", e.Address())
		l.Result(0, e.Allowance.Width, "is %s", reckoned.AllowanceText(e))
	}
}

func drawnAccount(e *model.Edge, cut drafting.CutDistances) rules.Account {
	return func(l *reckoned.Lines) {
		l.Allowance(1, e)
		l.Beside(1, cut.At, "is where along %s its cut line is off most", e.Address())
		l.Beside(1, cut.Width, "is how far the cut line lies from the stitch line there")
		l.Result(0, cut.Off, "is the most by which it can be off, all along")
	}
}

func bendAccount(e *model.Edge, at, radius float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Allowance(1, e)
		l.Beside(1, at, "is where along %s its tightest bend towards the allowance lies", e.Address())
		l.Result(0, radius, "is the radius of that bend")
	}
}

// noBendAccount tells of an edge that leaves room for any allowance.
func noBendAccount(e *model.Edge) rules.Account {
	return func(l *reckoned.Lines) {
		l.Allowance(0, e)
		l.Say(0, "%s does not bend towards it anywhere", e.Address())
	}
}
