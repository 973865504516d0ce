package ruletest

import (
	"math"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"understitch/model"
	"understitch/model/curve"
	"understitch/rules"
)

// way is one way of drafting garments elsewhere on the paper.
type way struct {
	name  string
	first func(g *model.Garment)        // what is done to a draft before it is judged and moved
	frame func(t *rapid.T) curve.Motion // where it is drafted

	key      func(g *model.Garment, key string) string // what an outcome is about, once moved
	nothing  map[string]string                         // rules that have nothing to go by, and why
	reversed map[string]reversal                       // rules whose outcomes may be others, and why
}

func ways() []way {
	as := func(_ *model.Garment, key string) string { return key }
	keep := func(*model.Garment) {}
	return []way{
		{name: "moved and mirrored", first: keep, frame: upright, key: as},
		{name: "on its head", first: keep, frame: onItsHead, key: keyOnItsHead, reversed: byDown},
		{name: "turned", first: withoutLevels, frame: turned, key: as, nothing: byLevels},
		{name: "piece by piece", first: apart, frame: upright, key: as},
		{name: "piece by piece, turned", first: func(g *model.Garment) { withoutLevels(g); apart(g) }, frame: turned, key: as, nothing: byLevels},
	}
}

// reversal is why a rule may say something else of a draft that stands on its head,
// and of what: outcomes whose keys have one of these words, or all of them.
type reversal struct {
	why string
	of  []string
}

// byDown are the rules that go by which way is down.
var byDown = map[string]reversal{
	"hem-drop":    {why: "a hem is what hangs at the lower end, and is measured from the lowest level"},
	"suppression": {why: "what is taken in downward is let out upward; and of two stretches that meet at a level which is at fault, the upper tells it"},
	"inner-within-outer": {
		why: "what hangs out over a finished edge below the lowest level is left to hem-drop, and told above the highest",
		of:  []string{"above", "below"},
	},
}

// leaves reports whether an outcome is not compared.
func (w way) leaves(o rules.Outcome) bool {
	r, ok := w.reversed[o.Rule.Name]
	return ok && (r.of == nil || slices.ContainsFunc(strings.Fields(o.Key), func(word string) bool { return slices.Contains(r.of, word) }))
}

// byLevels are the rules that go by levels, which a draft has not that is turned by
// any angle.
var byLevels = map[string]string{
	"inner-within-outer": "widths are measured along levels",
	"layer-girth":        "girths are measured along levels",
	"turn-of-cloth":      "girths are measured along levels",
	"suppression":        "girths are measured along levels",
	"layer-stretch":      "girths are measured along levels",
	"body-ease":          "girths are measured along levels",
	"template-points":    "points are stated at levels",
	"lacing-gap":         "girths are measured along levels",
	"alteration-partner": "alterations move edges sideways by amounts at levels",
}

// atNoLevel are those of them that compare pieces which lie at no level too, where a
// garment has such.
var atNoLevel = map[string]string{"inner-within-outer": "such pieces are compared by their outlines"}

// keyOnItsHead is what an outcome is about on a draft that stands on its head: what
// was between one level and the next, or above one, is between the next and the one,
// or below it; and a dart's upper point is the lower. Levels that are only named, as
// on paper, stay in the order in which they are named.
func keyOnItsHead(g *model.Garment, key string) string {
	words := strings.Split(key, " ")
	level := func(i int) bool {
		return i >= 0 && i < len(words) && slices.ContainsFunc(g.Levels, func(l *model.Level) bool { return l.Name == words[i] })
	}
	drawn := !slices.ContainsFunc(g.Levels, func(l *model.Level) bool { return !model.Known(l.Y) })
	other := map[string]string{"above": "below", "below": "above", "upper": "lower", "lower": "upper"}
	for i, word := range words {
		switch {
		case word == "to" && drawn && level(i-1) && level(i+1):
			words[i-1], words[i+1] = words[i+1], words[i-1]
		case other[word] != "" && (level(i+1) || i+1 < len(words) && words[i+1] == "point"):
			words[i] = other[word]
		}
	}
	return strings.Join(words, " ")
}

// reach is how far off, in millimetres, a draft is moved.
const reach = 2000

// upright frames are moved, and mirrored about the upright or not.
func upright(t *rapid.T) curve.Motion {
	at := rapid.Float64Range(-reach, reach)
	to := curve.Translate(curve.Point{X: at.Draw(t, "x"), Y: at.Draw(t, "y")})
	if rapid.Bool().Draw(t, "mirrored") {
		return curve.Mirror(curve.Point{}, curve.Point{Y: 1}).Then(to)
	}
	return to
}

// onItsHead frames have what was down up: they are half turns, or mirrored about the
// level.
func onItsHead(t *rapid.T) curve.Motion {
	return curve.Mirror(curve.Point{}, curve.Point{X: 1}).Then(upright(t))
}

func turned(t *rapid.T) curve.Motion {
	return curve.Rotate(curve.Point{}, rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")).Then(upright(t))
}

// frames are where a draft is moved to, and where those of its pieces are that have
// frames of their own.
type frames struct {
	whole curve.Motion
	own   map[string]curve.Motion // by the piece's address
}

func (w way) frames(g *model.Garment) *rapid.Generator[frames] {
	return rapid.Custom(func(t *rapid.T) frames {
		f := frames{w.frame(t), map[string]curve.Motion{}}
		for i, p := range g.Pieces() {
			if p.OwnLevels {
				f.own[p.Address()] = w.together(t, g, g.Pieces()[:i], p, f)
			}
		}
		return f
	})
}

// together is where a piece with levels of its own is moved to: along with an earlier
// piece that is drawn in one frame with it, or that an inside lays on it as they are
// drawn, else by itself, and so far down that no two frames become one by chance.
func (w way) together(t *rapid.T, g *model.Garment, earlier []*model.Piece, p *model.Piece, f frames) curve.Motion {
	for _, o := range earlier {
		laid := slices.ContainsFunc(g.Insides, func(n *model.Inside) bool {
			return n.Laid && (n.Outer.Has(o) && n.Inner.Has(p) || n.Outer.Has(p) && n.Inner.Has(o))
		})
		if laid || o.SameFrame(p) {
			if o.OwnLevels {
				return f.own[o.Address()]
			}
			return f.whole
		}
	}
	return w.frame(t).Then(down(len(earlier) + 1))
}

// down moves a draft so many times farther down than drafts are moved by chance.
func down(times int) curve.Motion {
	return curve.Translate(curve.Point{Y: 4 * reach * float64(times)})
}
