package closures

import (
	"fmt"

	"understitch/model"
	"understitch/model/reckoned"
	"understitch/rules"
)

func edgesAccount(g *model.Garment, first, second []model.Stretch, diff float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Full(g, 1, 1, first, "")
		l.Full(g, 1, -1, second, "")
		l.Sum(0, diff, "is how much longer the first is")
	}
}

// cutAccount tells where the tape can be cut, and how long the closure is.
func cutAccount(g *model.Garment, c *model.Closure, t *model.Tape) rules.Account {
	return func(l *reckoned.Lines) {
		l.Tape(g, c, t)
		l.Full(g, 0, 1, g.JoinOf(c).Sides[0], "the closure made up")
	}
}

func driftAccount(p *rules.Pass, a, b *model.Tape, gaps int, apart float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Say(1, "tape.%s has a pitch of %s, tape.%s one of %s", a.Name, fine(p, a.Pitch), b.Name, fine(p, b.Pitch))
		l.Result(0, apart, "is what they differ by, %d times, once for each gap between the fasteners", gaps)
	}
}

func zipAccount(g *model.Garment, c *model.Closure, zip, least, percent float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Full(g, 1, 1, g.JoinOf(c).Sides[0], "the opening made up")
		l.Beside(1, least, "is the shortest zip that is allowed, %s %% shorter", model.Decimal(percent, 1))
		l.Result(0, zip, "is the zip in stock that comes nearest to filling it")
	}
}

func (b *buttoning) evenAccount(least, most float64) rules.Account {
	return func(l *reckoned.Lines) {
		for i, at := range b.buttons {
			l.Beside(2, at, "from the closure's end lies button %d", i+1)
		}
		l.Differ(rules.Millimetres, 0, most, "the widest gap", least, "the narrowest gap")
	}
}

func (b *buttoning) levelAccount(level *model.Level, at, nearest float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Differ(rules.Millimetres, 0, at, fmt.Sprintf("the %s level along the closure", level.Name), nearest, "the button nearest to it along the closure")
	}
}

// roomAccount tells how far the button nearest to an end of the closure lies from it.
func (b *buttoning) roomAccount(length, room, needed float64) rules.Account {
	return func(l *reckoned.Lines) {
		if d := b.closure.Diameter; model.Known(d) {
			l.Beside(1, d, "the diameter of the buttons")
			l.Beside(1, needed, "%s diameters, which it needs", model.Decimal(b.Limit("room"), 2))
		}
		first, last := b.buttons[0], b.buttons[len(b.buttons)-1]
		if room == first {
			l.Add(1, first, "the first button along the closure")
			l.Sum(0, room, "is how far it lies from the start")
			return
		}
		l.Full(b.Garment, 1, 1, b.Garment.JoinOf(b.closure).Sides[0], "")
		l.Add(1, -last, "less the last button along it")
		l.Sum(0, length-last, "is how far that lies from the end")
	}
}

func (b *buttoning) extensionAccount(needed float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, b.closure.Diameter, "the diameter of the buttons")
		l.Beside(1, needed, "%s diameters, which it needs", model.Decimal(b.Limit("extension"), 2))
		l.Result(0, b.closure.Extension, "is how far the edge runs on, as %s states", b.closure.Address())
	}
}

// placedAccount tells where a tape can be cut whose first fastener is placed.
func placedAccount(p *rules.Pass, c *model.Closure, t *model.Tape, first float64, w model.Window) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, t.Pitch, "pitch of tape.%s", t.Name)
		l.Beside(1, t.Head, "metal along it")
		l.Beside(1, t.Clear, "least clear of metal at a cut")
		l.Beside(1, first, "from the upper end to the middle of the first fastener")
		l.Beside(1, w.Low, "with %d of them it can be cut from", w.Fasteners)
		l.Beside(1, w.High, "to")
		l.Full(p.Garment, 0, 1, p.Garment.JoinOf(c).Sides[0], "the closure made up")
	}
}

func firstAccount(t *model.Tape, first float64) rules.Account {
	return func(l *reckoned.Lines) {
		at := t.FirstAt()
		l.Beside(1, t.Pitch, "pitch of tape.%s", t.Name)
		l.Beside(1, at.Low, "half of the metal and what stays clear, which is the least")
		l.Beside(1, at.High, "the pitch less that, which is the most")
		l.Result(0, first, "is how far the middle of the first fastener is from the upper end")
	}
}

func placesAccount(a, b *model.Tape, first [2]float64, n int, apart float64) rules.Account {
	return func(l *reckoned.Lines) {
		l.Beside(1, first[0], "the first fastener of the one half, from the upper end")
		l.Beside(1, first[1], "that of the other")
		l.Beside(1, a.Pitch, "pitch of tape.%s", a.Name)
		l.Beside(1, b.Pitch, "pitch of tape.%s", b.Name)
		l.Result(0, apart, "is what the two halves differ by most, over %d fasteners", n)
	}
}
