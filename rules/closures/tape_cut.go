package closures

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"strings"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/tape-cut.bad.garment.hcl
var tapeCutBad string

//go:embed testdata/tape-cut.good.garment.hcl
var tapeCutGood string

// TapeCut checks that a tape can be cut to its closure's length between two
// fasteners.
var TapeCut = &rules.Rule{
	Name:     "tape-cut",
	Family:   "closures",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "A fastener tape can be cut to the length of its closure without meeting metal",
		Why: "Hooks and snaps sit on their tape at a fixed pitch. A length that falls on one means cutting through metal, or a tape that ends " +
			"short of the edge and gapes, or one that is bent round the end and digs in. The edge has to be drafted to a length that the tape can " +
			"have.",
		How: "The closure is measured along its stitch line, darts closed; an edge that runs up to the fold, or to the seam of a pair, counts both halves. Say the tape is to " +
			"carry two hooks. The shortest piece runs from one to the other, one metal more, and the clear space at both ends. The longest runs " +
			"from the hook before them to the hook after them, less one metal and the clear space at both ends. At a pitch of 19 mm, with 9 mm of " +
			"metal and 1.5 mm clear, that is from 31 to 45 mm. In between both ends lie in a clear gap. The figure is the room to the nearer end. " +
			"A closure that states first says where its metal is: from the upper end to the middle of the first fastener. Then each cut is compared " +
			"with the fasteners where they are, and a first fastener that lies too near to the upper cut, or too far from it, is reported too.",
		Nothing: "The closure is no tape.",
		Fix:     "Draft the edge, on every layer that carries it, to a length that the message names; or choose a tape of another pitch.",
		Bad:     tapeCutBad, Good: tapeCutGood, Since: "0.1",
	},
	Each: rules.Closures(tapeCut),
}

func tapeCut(p *rules.Pass, c *model.Closure) {
	if c.Kind != "tape" {
		p.NothingHere()
		return
	}
	t := c.Tape
	if t == nil {
		p.Cannot(errors.New(c.Address()+" names no tape"), rules.Say{})
		return
	}
	say := rules.Say{
		Place:   c.Starts(0).Place,
		Related: []rules.Related{{Message: "the tape's pitch is stated here", Place: t.Place}},
	}
	if !t.CanBeCut() {
		say.Place = t.Stated.Or("pitch", t.Place)
		say.Related = []rules.Related{{Message: "this closure uses the tape", Place: c.Place}}
		say.Message = func() string {
			return fmt.Sprintf("tape.%s cannot be cut anywhere: at a pitch of %s, with %s of metal and %s clear on either side of a cut, "+
				"its %s leave no gap. Look at its pitch, head and clear again.",
				t.Name, p.Show(t.Pitch), p.Show(t.Head), p.Show(t.Clear), fasteners(t))
		}
		p.Fault(say)
		return
	}
	whole, err := sewing.WholeClosure(p.Garment, c, 0)
	length := whole.Length
	if err != nil {
		p.Cannot(err, say)
		return
	}
	if c.First != nil {
		placed(p, c, length, say)
		return
	}
	w, choices := t.Nearest(length)
	say.Account = cutAccount(p.Garment, c, t)
	say.Message = func() string {
		both := ""
		if whole.Halves {
			both = ", both halves together"
		}
		return fmt.Sprintf("%s is %s long%s, and tape.%s cannot be cut there without meeting one of its %s. It can be cut at %s.",
			c.Address(), p.Show(length), both, t.Name, fasteners(t), alternatives(p, t, length, choices))
	}
	p.Within(length, model.Range{Low: w.Low, High: w.High}, "", say)
}

// placed checks both cuts of each half where the closure says where its metal is.
func placed(p *rules.Pass, c *model.Closure, length float64, say rules.Say) {
	halves := []struct {
		tape *model.Tape
		key  string
	}{{c.Tape, ""}, {c.OtherTape, "other "}}
	if halves[1].tape == nil {
		halves[1].tape = c.Tape
	}
	for i, half := range halves {
		t, first := half.tape, c.First[i]
		if i == 1 && first == c.First[0] && t == c.Tape {
			return // cut like the first half
		}
		upper := say
		upper.Key, upper.Place, upper.Account = half.key+"first", c.Stated.Or("first", c.Place), firstAccount(t, first)
		upper.Message = func() string {
			return fmt.Sprintf("%s has its first fastener %s from the upper end, and the cut there meets metal of tape.%s. Between %s and %s it does not.",
				c.Address(), p.Show(first), t.Name, p.Show(t.FirstAt().Low), p.Show(t.FirstAt().High))
		}
		p.Within(first, t.FirstAt(), "", upper)
		w, other := t.NearestFrom(first, length)
		lower := say
		lower.Key, lower.Account = strings.TrimSpace(half.key), placedAccount(p, c, t, first, w)
		lower.Message = func() string {
			return fmt.Sprintf("%s is %s long, and tape.%s, whose first fastener is %s from the upper end, cannot be cut there without meeting one of its %s. "+
				"It can be cut from %s to %s with %s, or from %s to %s with %s.", c.Address(), p.Show(length), t.Name, p.Show(first), fasteners(t),
				p.Show(w.Low), p.Show(w.High), count(w.Fasteners, t), p.Show(other.Low), p.Show(other.High), count(other.Fasteners, t))
		}
		p.Within(length, model.Range{Low: w.Low, High: w.High}, "", lower)
	}
}

// alternatives names for each span the nearest length in it and the one that
// lies midway in the gaps.
func alternatives(p *rules.Pass, t *model.Tape, length float64, choices []model.Window) string {
	text := ""
	for i, w := range choices {
		if i > 0 {
			text += ", or at "
		}
		near, change := shownInside(p, w, length), "shorter"
		if near > length {
			change = "longer"
		}
		middle := (w.Low + w.High) / 2
		text += fmt.Sprintf("%s with %s (%s %s), best at %s, with %s clear of metal at both ends",
			p.Show(near), count(w.Fasteners, t), p.Show(math.Abs(near-length)), change,
			p.Show(middle), p.Show(t.EndMargin(middle, w.Fasteners)))
	}
	return text
}

// shownInside is the length in the span nearest to the one at hand, rounded
// into the span to what a message shows, so that a cutter who drafts what is
// written lands inside.
func shownInside(p *rules.Pass, w model.Window, length float64) float64 {
	step := 0.1
	if p.Garment.Unit == model.Inch {
		step = 0.001 * model.Inch.Millimetre
	}
	const grain = 1e-6 // so that a length that is a whole number of steps stays
	if length > w.High {
		return math.Max(math.Floor(w.High/step+grain)*step, w.Low)
	}
	return math.Min(math.Ceil(w.Low/step-grain)*step, w.High)
}

func fasteners(t *model.Tape) string {
	if t.Kind == "snap" {
		return "snaps"
	}
	return "hooks"
}

func count(n int, t *model.Tape) string {
	word := fasteners(t)
	if n == 1 {
		word = word[:len(word)-1]
	}
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n < len(words) {
		return words[n] + " " + word
	}
	return fmt.Sprintf("%d %s", n, word)
}
