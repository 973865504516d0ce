package fit

import (
	_ "embed"
	"fmt"
	"math"
	"strings"

	"understitch/model"
	"understitch/model/sewing"
	"understitch/rules"
)

//go:embed testdata/tape-measure.bad.garment.hcl
var tapeMeasureBad string

//go:embed testdata/tape-measure.good.garment.hcl
var tapeMeasureGood string

// TapeMeasure checks that a tape run over the pattern suits the body.
var TapeMeasure = &rules.Rule{
	Name:     "tape-measure",
	Family:   "body",
	Severity: rules.Error,
	Doc: rules.Doc{
		Title: "A tape run over the pattern, with what closes it counted in, is as long as the body asks",
		Why: "Through the crotch, over the shoulder or down the back no level shows a fault: each piece can be right across, and the garment still " +
			"drag down or cut in. The closed tape belongs to the run, and is what gets forgotten.",
		How: "Run a tape along the edges on their stitch lines, darts closed, from and to the levels stated. A closure on the way adds its tape's " +
			"closed width at the row of eyes in use, less what laps over. Take off the body's measure. What is left must lie in the ease stated, " +
			"or be nothing where none is.",
		Fix: "Lengthen or shorten one of the parts that the message lists, on every layer that carries it; use another row of eyes or a wider " +
			"tape; or state the ease that is meant.",
		Bad: tapeMeasureBad, Good: tapeMeasureGood, Since: "0.1",
	},
	Limits: []rules.Limit{{
		Name: "beyond", Value: 0.5, Unit: rules.Millimetres,
		Text:   "how far past the stated ease a run may be",
		Source: "common practice, no source",
	}},
	Each: rules.Measures(tapeMeasure),
}

func tapeMeasure(p *rules.Pass, m *model.Measure) {
	var say rules.Say
	if !model.Known(m.Against) {
		p.Cannot(unknown(p.Garment, m.Body, m.Address()+" has no body measure to compare with"), say)
		return
	}
	run, err := sewing.LayRun(p.Garment, m)
	if err != nil {
		p.Cannot(err, say)
		return
	}
	if m.Ease.Any() {
		p.Good(say)
		return
	}
	say.Account = runAccount(p.Garment, m)
	parts := make([]string, len(run.Parts))
	for i, part := range run.Parts {
		parts[i] = fmt.Sprintf("%s %s", itemName(part.Item), p.Show(part.Length))
		say.Related = append(say.Related, rules.Related{Message: parts[i], Place: part.Item.Place})
	}
	ease := run.Total - m.Against
	say.Message = func() string {
		off := m.Ease.Beyond(ease)
		how, mend := "short", "lengthen"
		if off > 0 {
			how, mend = "long", "shorten"
		}
		return fmt.Sprintf("%s runs %s (%s) against %s of the body's %s: an ease of %s, where %s is asked for. It is %s too %s; "+
			"%s one of these parts by as much.", m.Address(), p.Show(run.Total), strings.Join(parts, ", "), p.Show(m.Against),
			bodyName(m.Body), p.Show(ease), p.Garment.ShowRange(m.Ease), p.Show(math.Abs(off)), how, mend)
	}
	p.Within(ease, m.Ease, "beyond", say)
}

func itemName(item model.RunItem) string {
	if item.Closure != nil {
		return item.Closure.Address()
	}
	return item.Stretch.String()
}

// bodyName is a body measure in words.
func bodyName(measure string) string {
	if measure == "" {
		return "stated measure"
	}
	return strings.ReplaceAll(measure, "_", " ")
}
