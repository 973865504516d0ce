package inspect

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/agext/levenshtein"

	"understitch/model"
	"understitch/model/body"
	"understitch/model/spec"
	"understitch/rules"
)

// troubles gathers the diagnostics of every body that a garment was built for.
// What is wrong for thousands of wearers is one trouble, with who they are: the
// same measure that they lack, or the same place and the same words but for the
// figures in them.
type troubles struct {
	told  []model.Diagnostic // of the file and its house, not of a body
	each  bool               // keep them apart by every word, as those of sizes are
	list  []*trouble
	known map[troubleKey]*trouble
}

type troubleKey struct {
	measure string // the body measure that is lacking; else ""
	place   model.Place
	text    string
}

// trouble is what is wrong for some bodies.
type trouble struct {
	first  model.Diagnostic // as it was told of the first of them
	bodies []int            // by their number, in order
}

func newTroubles(told []model.Diagnostic, ofWearers bool) *troubles {
	return &troubles{told: told, each: !ofWearers, known: map[troubleKey]*trouble{}}
}

// plain takes in diagnostics that are not of one body, each once.
func (t *troubles) plain(diags []model.Diagnostic) {
	for _, d := range diags {
		if !slices.Contains(t.told, d) {
			t.told = append(t.told, d)
		}
	}
}

// add takes in what was wrong for the n-th body.
func (t *troubles) add(n int, l look) {
	for _, d := range l.diags {
		t.one(n, d)
	}
	if l.garment == nil || t.each {
		return
	}
	// What is only held against the body may be lacking: no fault by itself, but
	// in a table where others have it the cell was forgotten.
	for _, level := range l.garment.Levels {
		t.compared(n, l.garment, level.Measure, level.Place)
	}
	for _, run := range l.garment.Measures {
		t.compared(n, l.garment, run.Body, run.Place)
	}
}

func (t *troubles) compared(n int, g *model.Garment, measure string, at model.Place) {
	if _, stated := g.Body[measure]; measure != "" && !stated {
		t.one(n, model.Diagnostic{Severity: comparedOnly, Measure: measure, Place: at})
	}
}

// comparedOnly is the severity of a measure that is lacking and that nothing is
// drafted from. It is never told as it is.
const comparedOnly = ""

func (t *troubles) one(n int, d model.Diagnostic) {
	var key troubleKey
	switch {
	case t.each:
		key = troubleKey{d.Measure, d.Place, d.Severity + d.Summary + d.Detail}
	case d.Measure != "":
		key.measure = d.Measure
	default:
		key = troubleKey{place: d.Place, text: d.Severity + strings.Map(withoutFigures, d.Summary)}
	}
	known := t.known[key]
	if known == nil {
		known = &trouble{first: d}
		t.known[key] = known
		t.list = append(t.list, known)
	}
	if graver(d.Severity, known.first.Severity) {
		known.first = d
	}
	if last := len(known.bodies) - 1; last < 0 || known.bodies[last] != n {
		known.bodies = append(known.bodies, n)
	}
}

func graver(a, b string) bool {
	order := []string{comparedOnly, "warning", "error"}
	return slices.Index(order, a) > slices.Index(order, b)
}

func withoutFigures(r rune) rune {
	if '0' <= r && r <= '9' || r == '.' || r == '-' {
		return -1
	}
	return r
}

// diagnostics are all that is to be told, after so many bodies. Where they are
// those of sizes, what is wrong is in the spec, and the table is not looked at.
func (t *troubles) diagnostics(doc *spec.Document, table *body.Table, looked int) []model.Diagnostic {
	out := slices.Clone(t.told)
	add := func(d model.Diagnostic) {
		if d.Severity != comparedOnly && !slices.Contains(out, d) {
			out = append(out, d)
		}
	}
	if t.each {
		for _, x := range t.list {
			add(x.first)
		}
		return out
	}
	p := placing{table, doc, map[string]float64{}, map[string]int{}}
	for _, x := range t.list {
		switch {
		case x.first.Measure != "":
			add(p.lacking(x))
		case len(x.bodies) == looked && looked > 1:
			add(x.first) // it holds for everybody: the spec is to blame
		default:
			add(p.onSome(x))
		}
	}
	return out
}

// placing finds where in a table the blame for a trouble lies.
type placing struct {
	table   *body.Table
	doc     *spec.Document
	middles map[string]float64 // of measures; in millimetres
	counts  map[string]int     // of the wearers behind them
}

// lacking tells of a measure that wearers lack: at the heading where there is no
// such column, else at the first cell that is left blank.
func (p *placing) lacking(x *trouble) model.Diagnostic {
	d, measure := x.first, x.first.Measure
	needs := "It is needed on "
	if d.Severity != "error" {
		needs = "The garment is held against it on "
	}
	needs += fmt.Sprintf("line %d of %s", d.Place.Start.Line, p.doc.File())
	if at, there := p.table.Cell(x.bodies[0], measure); there {
		if d.Severity == comparedOnly {
			d.Severity = "warning"
		}
		d.Place = at
		d.Summary = fmt.Sprintf("%s is lacking for %s", measure, p.who(x.bodies, "wearers: "))
		d.Detail = needs + ". Fill it in, or take these rows out of the table."
		return d
	}
	if len(p.table.Measures()) == 0 { // not read from a file
		d.Summary = fmt.Sprintf("body.%s is not stated for %s", measure, p.who(x.bodies, "wearers: "))
		return d
	}
	near := p.misspelt(measure)
	if own := p.doc.Body(); own != nil {
		if _, stated := own[measure]; !stated && d.Severity != comparedOnly {
			d.Summary = fmt.Sprintf("body.%s is stated neither here nor in %s", measure, p.table.File)
			return d
		}
	}
	switch {
	case near != "":
		d.Detail = needs + ". Is " + near + " meant?"
	case d.Severity == "error":
		d.Detail = needs + "."
	default:
		return model.Diagnostic{Severity: comparedOnly} // not measured at all: what follows from it is told as not possible
	}
	if d.Severity == comparedOnly {
		d.Severity = "warning"
	}
	d.Place = p.table.Heading(near)
	d.Summary = fmt.Sprintf("the table has no column %s", measure)
	return d
}

// misspelt is the column that is likely meant by a measure that has none, or "".
func (p *placing) misspelt(measure string) string {
	own, least, best := p.doc.Body(), 3, "" // two letters; by three, bust is waist
	for _, column := range p.table.Measures() {
		if _, used := own[column]; used {
			continue
		}
		if d := levenshtein.Distance(column, measure, nil); d < least {
			least, best = d, column
		}
	}
	return best
}

// onSome tells of what is wrong for some wearers and not for others: it follows
// from their figures. The figure that stands furthest from the middle of the
// table is pointed at.
func (p *placing) onSome(x *trouble) model.Diagnostic {
	d, n := x.first, x.bodies[0]
	at, there := p.table.Row(n)
	d.Summary = "on " + p.who(x.bodies, "wearers, ") + ": " + d.Summary
	if !there {
		return d
	}
	in := fmt.Sprintf("It shows on line %d of %s", d.Place.Start.Line, p.doc.File())
	d.Place = at
	if measure := p.furthest(n); measure != "" {
		d.Place, _ = p.table.Cell(n, measure)
		in += fmt.Sprintf(". Look at the figures in the table: furthest off is %s of %s, %s where the middle of all wearers is %s",
			measure, p.table.Wearers[n].Name, p.table.Unit.Show(p.table.Wearers[n].Body[measure]), p.table.Unit.Show(p.middles[measure]))
	}
	if d.Detail != "" {
		in = strings.TrimSuffix(d.Detail, ".") + ". " + in
	}
	d.Detail = in + "."
	return d
}

// furthest is the measure of a wearer that stands furthest from the middle of
// the table, as a share of it; "" where the table is too small to have a middle.
func (p *placing) furthest(n int) string {
	const few = 3
	best, most := "", 0.0
	for _, measure := range p.table.Measures() {
		v, stated := p.table.Wearers[n].Body[measure]
		if !stated {
			continue
		}
		if _, reckoned := p.counts[measure]; !reckoned {
			p.middles[measure], p.counts[measure] = p.table.Middle(measure)
		}
		if p.counts[measure] < few {
			continue
		}
		if off := math.Abs(math.Log(v / p.middles[measure])); off > most {
			best, most = measure, off
		}
	}
	return best
}

// who names wearers: the one, or how many and the first of them.
func (p *placing) who(bodies []int, several string) string {
	const most = 4
	var names []string
	for _, n := range bodies[:min(len(bodies), most)] {
		names = append(names, p.table.Wearers[n].Name)
	}
	if len(bodies) == 1 {
		return names[0]
	}
	text := fmt.Sprintf("%d %s", len(bodies), several)
	if len(bodies) > most {
		return text + strings.Join(names[:most-1], ", ") + " …"
	}
	return text + strings.Join(names, ", ")
}

// inTable puts what rules found about a wearer's measure where the measure
// stands: a spec says nothing of wearers, and its head is no place to look.
func inTable(table *body.Table, n int, g *model.Garment, outcomes []rules.Outcome) {
	if table == nil {
		return
	}
	for i := range outcomes {
		o := &outcomes[i]
		if o.Status != rules.Found || o.Subject != g.Address() || o.Place != g.Place {
			continue
		}
		if at, ok := table.Cell(n, o.Key); ok {
			o.Place = at
		}
	}
}
