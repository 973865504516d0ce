package closures

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/measuring"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/button-spacing.bad.garment.hcl
var buttonSpacingBad string

//go:embed testdata/button-spacing.good.garment.hcl
var buttonSpacingGood string

// ButtonSpacing checks where buttons sit, and what the edge gives them.
var ButtonSpacing = &rules.Rule{
	Name:     "button-spacing",
	Family:   "closures",
	Severity: rules.Error,
	Under:    []string{"unit-slip"},
	Doc: rules.Doc{
		Title: "Buttons sit evenly, with one where the strain is, and the edge has room for them",
		Why: "A front gapes between two buttons that stand either side of the bust or the waist. An uneven row is seen from the back of the house. " +
			"A button that lies across the edge pulls out of its hole.",
		How: "Measured along the stitch line, darts closed: where the bust or the waist level crosses the closure, a button must lie near it, if " +
			"the wearer's measure there is known. Where one is missing the row has to be divided anew in any case; else the widest and the " +
			"narrowest gap are compared. The first and the last stand clear of the closure's ends by a share of the button's diameter, and the " +
			"edge runs on by as much past the buttons' centre. A button past the closure's end cannot be sewn on and is an error; all else is a warning. What a spec does not state is not checked. Where no button has the diameter, the finding of unit-slip stands for what follows from it. A buttonhole is as long as the button's " +
			"diameter and thickness together.",
		Nothing: "The closure is no button closure, or states neither where its buttons lie nor how far its edge runs on past them and how large they are.",
		Fix:     "Fix a button at the bust and one at the waist and divide what lies between. Move the ends of the closure, or take a smaller button.",
		Bad:     buttonSpacingBad, Good: buttonSpacingGood, Since: "0.1",
	},
	Limits: []rules.Limit{
		{Name: "even", Value: 3, Unit: rules.Millimetres, Source: "common practice, no source",
			Text: "how much the widest and the narrowest gap may differ"},
		{Name: "level", Value: 10, Unit: rules.Millimetres, Source: "common practice, no source; buttons at bust and waist: Buttonholes, 1999, sewing.about.com",
			Text: "how far from the bust or waist level the nearest button may lie"},
		{Name: "room", Value: 0.75, Unit: rules.Ratio, Source: "common practice, no source",
			Text: "how many diameters lie at least between a button's centre and the end of the closure"},
		{Name: "extension", Value: 0.75, Unit: rules.Ratio, Source: "Sewing handbook, chapter on buttonholes, trantor.is ch0708",
			Text: "how many diameters the edge runs on at least past the centre of the buttons"},
	},
	Each: rules.Closures(buttonSpacing),
}

// buttoning is one buttoned closure while it is judged.
type buttoning struct {
	*rules.Pass
	closure *model.Closure
	buttons []float64
}

func buttonSpacing(p *rules.Pass, c *model.Closure) {
	p.NothingHere() // unless something is stated
	if c.Kind != "button" {
		return
	}
	b := &buttoning{p, c, c.ButtonsInOrder()}
	b.extension()
	if len(b.buttons) == 0 {
		return
	}
	if !b.levels() {
		b.even() // else the row is divided anew in any case
	}
	b.room()
}

// oddButton names the finding that no button has the stated diameter.
func (b *buttoning) oddButton() []rules.Under {
	return []rules.Under{{Rule: "unit-slip", Subject: b.closure.Address(), Key: "button"}}
}

// nearEnd is how far past the end, in millimetres, a button lies at it.
const nearEnd = 0.01

// stated is the place of what the closure says.
func (b *buttoning) stated(attribute string) model.Place {
	return b.closure.Stated.Or(attribute, b.closure.Place)
}

// reach is what ends where the closure does.
func (b *buttoning) reach() string {
	s := b.closure.Starts(0)
	if b.closure.From.Kind == model.NoMark && b.closure.To.Kind == model.NoMark && s.From.Kind == model.NoMark && s.To.Kind == model.NoMark {
		return "edge"
	}
	return "closure"
}

func (b *buttoning) even() {
	if len(b.buttons) < 3 {
		return
	}
	var gaps []float64
	for i := 1; i < len(b.buttons); i++ {
		gaps = append(gaps, b.buttons[i]-b.buttons[i-1])
	}
	least, most := slices.Min(gaps), slices.Max(gaps)
	apart := func(gap float64) string {
		i := slices.Index(gaps, gap)
		return fmt.Sprintf("%s between those at %s and %s", b.Show(gap), b.Show(b.buttons[i]), b.Show(b.buttons[i+1]))
	}
	first, last := b.buttons[0], b.buttons[len(b.buttons)-1]
	b.AtMost(most-least, "even", rules.Say{Key: "even", Account: b.evenAccount(least, most), Mild: true, Place: b.stated("buttons"), Message: func() string {
		return fmt.Sprintf("the buttons of %s are not even: %s, but %s; the gaps may differ by no more than %s. Evenly they stand %s apart.",
			b.closure.Address(), apart(most), apart(least), b.Show(b.Limit("even")), b.Show((last-first)/float64(len(gaps))))
	}})
}

// levels reports whether a level that needs a button lacks one.
func (b *buttoning) levels() (lacking bool) {
	for _, l := range measuring.LevelsDown(b.Garment) {
		if !strains(l) {
			continue
		}
		at, err := b.Garment.LevelAlong(b.closure, l)
		if err != nil {
			if b.mayCross(l) {
				b.Cannot(err, rules.Say{Key: l.Name})
			}
			continue
		}
		nearest := b.buttons[0]
		for _, place := range b.buttons {
			if math.Abs(place-at) < math.Abs(nearest-at) {
				nearest = place
			}
		}
		lacking = lacking || math.Abs(nearest-at) > b.Limit("level")
		b.AtMost(math.Abs(nearest-at), "level", rules.Say{
			Account: b.levelAccount(l, at, nearest),
			Key:     l.Name, Mild: true, Place: b.stated("buttons"), Related: []rules.Related{{Message: "the level " + l.Name, Place: l.Place}},
			Message: func() string {
				return fmt.Sprintf("no button of %s lies at the %s level, which crosses it at %s: the nearest lies at %s, %s away, where no more than %s is allowed. "+
					"Move it there and divide the rest anew.", b.closure.Address(), l.Name, b.Show(at), b.Show(nearest), b.Show(math.Abs(nearest-at)), b.Show(b.Limit("level")))
			},
		})
	}
	return lacking
}

// mayCross reports whether a level that is not found on the closure may cross it
// all the same: on paper only a notch would show where.
func (b *buttoning) mayCross(l *model.Level) bool {
	e := b.closure.Starts(0).Edge
	if _, err := e.LevelAt(l); err == nil || e.Drawn() {
		return false
	}
	return e.Piece.Reaches(l) || measuring.Unmeasured(b.Garment, e.Piece, l) != nil
}

// strains reports whether a level is one at which a front gapes without a
// button: the fullest and the narrowest of the body.
func strains(l *model.Level) bool {
	name := l.Measure
	if name == "" {
		name = l.Name
	}
	word, _, _ := strings.Cut(name, "_")
	return model.Known(l.Body) && (word == "bust" || word == "waist")
}

func (b *buttoning) room() {
	whole, err := sewing.WholeClosure(b.Garment, b.closure, 0)
	length := whole.Length
	if err != nil {
		b.Cannot(err, rules.Say{Key: "room"})
		return
	}
	needed := 0.0
	if d := b.closure.Diameter; model.Known(d) {
		needed = d * b.Limit("room")
	}
	first, last := b.buttons[0], b.buttons[len(b.buttons)-1]
	room, which := first, "first"
	if length-last < first {
		room, which = length-last, "last"
	}
	off := room < -nearEnd
	b.AtLeast(room, needed, rules.Say{Key: "room", Under: b.oddButton(), Account: b.roomAccount(length, room, needed), Mild: !off, Place: b.stated("buttons"), Related: []rules.Related{{Message: "the edge it closes", Place: b.closure.Starts(0).Place}}, Message: func() string {
		if off {
			return fmt.Sprintf("the last button of %s lies %s beyond the end of the %s, which is %s long. Move it in, or lengthen the %s.",
				b.closure.Address(), b.Show(-room), b.reach(), b.Show(length), b.reach())
		}
		return fmt.Sprintf("the %s button of %s lies %s from its end; a button of %s takes %s. Move it in, or lengthen the closure.",
			which, b.closure.Address(), b.Show(room), b.Show(b.closure.Diameter), b.Show(needed))
	}})
}

func (b *buttoning) extension() {
	c := b.closure
	if !model.Known(c.Extension) || !model.Known(c.Diameter) {
		return
	}
	needed := c.Diameter * b.Limit("extension")
	b.AtLeast(c.Extension, needed, rules.Say{Key: "extension", Under: b.oddButton(), Account: b.extensionAccount(needed), Mild: true, Place: b.stated("extension"), Message: func() string {
		hole := ""
		if model.Known(c.Buttonhole()) {
			hole = fmt.Sprintf(", and its buttonhole is %s long", b.Show(c.Buttonhole()))
		}
		return fmt.Sprintf("the edge of %s runs on by %s past the centre of its buttons; a button of %s takes %s%s. Widen the extension, or take a smaller button.",
			c.Address(), b.Show(c.Extension), b.Show(c.Diameter), b.Show(needed), hole)
	}})
}
