package seams

import (
	_ "embed"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
	"understitch/rules/guess"
)

//go:embed testdata/seam-walk.bad.garment.hcl
var walkBad string

//go:embed testdata/seam-walk.good.garment.hcl
var walkGood string

// Walk checks that the two sides of every seam are equally long, less the ease
// that is meant.
var Walk = rules.Rule{
	Name:     "seam-walk",
	Family:   "seams",
	Severity: rules.Error,
	Under:    []string{"ease-side"},
	Doc: rules.Doc{
		Title: "The two sides of a seam are equally long, less the ease that is meant",
		Why: "At the machine the longer side is pushed along until something gives: the seam puckers, the hems do not meet, or the layer twists " +
			"round the body. A curve laid beside another looks equal when it is not.",
		How: "Walk the two sides along each other on the stitch line, darts closed, and read off how much the first is longer than the second. " +
			"That must lie in the seam's ease, or be nothing where the seam states none. From notch to notch the same tells where the difference " +
			"lies. Where a seam takes an edge that something else takes too, and an edge of that piece, or the one so named of the other layer, is " +
			"left over and would fit, that one was meant: it is reported, and the seam is judged with it.",
		Fix: "Lengthen the shorter side or shorten the longer one at the place named, and true the lines at its ends. Where the difference is " +
			"meant, state it as ease: ease = [0, 0.3].",
		Bad: walkBad, Good: walkGood, Since: "0.1",
	},
	Limits: append(walkSteps, rules.Limit{
		Name: "fits", Value: 3.2, Unit: rules.Millimetres, Source: "1/8 inch, 10 Patternwork Skills, Threads 200, 2018/19",
		Text: "how near the sides must come to the ease with another edge for that edge to be taken as the one meant",
	}),
	Each: rules.Seams(walk),
}

var walkSteps = rules.Steps(1.6, 3.2, rules.Millimetres, "how far the difference of the two sides may lie outside the ease",
	"10 Patternwork Skills, Threads 200, 2018-19: one professional keeps patterns true to 1/16 in, many find that 1/8 in works")

func walk(p *rules.Pass, s *model.Seam) {
	j := p.Garment.JoinOf(s)
	if wrong := guess.Misjoins(p.Garment, p.Limit("fits"))[s]; wrong != nil {
		misjoined(p, s, wrong)
		return
	}
	a, b, err := sewing.Walks(p.Garment, j)
	if err != nil {
		p.Cannot(err, rules.Say{Place: s.Join})
		return
	}
	w := walked{p, s, a, b, a.Length - b.Length}
	off := s.Ease.Beyond(w.longer)
	say := rules.Say{Place: s.Join, Under: []rules.Under{{Rule: "ease-side", Subject: s.Address()}}, Account: w.account(sewing.Way(j)), Message: func() string { return w.message(off) }}
	if math.Abs(off) > p.Limit("warn") {
		say.Related, say.Mend = append(w.segments(), w.altered()...), w.mend(off)
	}
	p.Steps(off, say)
}

// walked is a seam with its sides laid out.
type walked struct {
	*rules.Pass
	seam   *model.Seam
	a, b   *sewing.Walk
	longer float64 // how much longer the first side is
}

func (w walked) message(off float64) string {
	first, second := sewing.SideText(w.seam.Sides[0]), sewing.SideText(w.seam.Sides[1])
	allowed := w.Limit("warn")
	if math.Abs(off) > w.Limit("error") {
		allowed = w.Limit("error")
	}
	text := fmt.Sprintf("%s is %s longer than %s (%s against %s)", first, w.Show(w.longer), second, w.Show(w.a.Length), w.Show(w.b.Length))
	if w.longer < 0 {
		text = fmt.Sprintf("%s is %s shorter than %s (%s against %s)", first, w.Show(-w.longer), second, w.Show(w.a.Length), w.Show(w.b.Length))
	}
	if (w.seam.Ease != model.Range{}) {
		text += fmt.Sprintf("; an ease of %s is meant, and it is %s outside that", w.Garment.ShowRange(w.seam.Ease), w.Show(math.Abs(off)))
	}
	text += fmt.Sprintf("; no more than %s is allowed.", w.Show(allowed))
	if where := w.where(); where != "" {
		text += " " + where
	}
	return text + " Let out the shorter side or shorten the longer one, or state the ease that is meant."
}

// telling is the least difference between two notches, in millimetres, that is
// worth a line of its own: what a pencil line hides.
const telling = 0.5

// where names the one stretch in which all of the difference lies; "" where it
// is spread, or there is no notch to tell by.
func (w walked) where() string {
	segments := sewing.Segments(w.a, w.b)
	if len(segments) == 1 {
		return ""
	}
	var worst *sewing.Segment
	for i := range segments {
		if math.Abs(segments[i].Longer()) <= telling {
			continue
		}
		if worst != nil {
			return ""
		}
		worst = &segments[i]
	}
	if worst == nil {
		return ""
	}
	return "All of it lies " + w.between(*worst) + "."
}

// segments lists the stretches that differ.
func (w walked) segments() []rules.Related {
	segments := sewing.Segments(w.a, w.b)
	if len(segments) == 1 {
		return nil
	}
	var out []rules.Related
	for _, s := range segments {
		if math.Abs(s.Longer()) <= telling {
			continue
		}
		place := w.seam.Join
		if mark := s.Last; mark != nil {
			place = mark.A.Notch.Place
		} else if s.First != nil {
			place = s.First.A.Notch.Place
		}
		out = append(out, rules.Related{
			Message: fmt.Sprintf("%s: %s against %s", w.between(s), w.Show(s.A), w.Show(s.B)), Place: place,
		})
	}
	return out
}

// altered lists the edges that a fitting re-drew and whose partners it left as they
// were: there the difference most likely comes from.
func (w walked) altered() []rules.Related {
	var out []rules.Related
	for _, side := range w.seam.Sides {
		for _, s := range side {
			by := guess.AlteredBy(w.Garment, s.Edge)
			if len(by) == 0 {
				continue
			}
			for _, l := range guess.LaidOn(w.Garment, s.Edge) {
				if l.By() == model.Thing(w.seam) && len(guess.AlteredBy(w.Garment, l.Other)) == 0 {
					out = append(out, rules.Related{
						Message: fmt.Sprintf("%s was re-drawn by %s; %s was not", s.Edge.Address(), by[0].Address(), l.Other.Address()), Place: by[0].Place,
					})
				}
			}
		}
	}
	return out
}

func (w walked) between(s sewing.Segment) string {
	return "between " + w.name(s.First, false) + " and " + w.name(s.Last, true)
}

// name says one end of a segment in words.
func (w walked) name(pair *sewing.NotchPair, atEnd bool) string {
	if pair != nil {
		return pair.A.Notch.Address()
	}
	if corner := w.a.Corner(atEnd); corner != nil {
		return corner.Address()
	}
	if atEnd {
		return "the end"
	}
	return "the start"
}

func (w walked) mend(off float64) *rules.Mend {
	long, short := w.seam.Sides[0], w.seam.Sides[1]
	if off < 0 {
		long, short = short, long
	}
	by := w.Show(math.Abs(off))
	return &rules.Mend{Title: fmt.Sprintf("shorten %s by %s, or let out %s by as much", sewing.SideText(long), by, sewing.SideText(short))}
}
