package report

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/fatih/color"

	"understitch/model"
	"understitch/rules"
)

// Advice is the one line that says what the program is not.
const Advice = "Advice, not authority: fit, medical or protective garments and load-carrying costume need a qualified person and a toile."

// writeText writes the report that is read at the cutting table: the ruling
// first, then for each garment its faults, what came closest, what was accepted
// and what could not be checked.
func writeText(w io.Writer, d *Document, look Look) error {
	if len(d.Garments) == 0 {
		return nil
	}
	s := newSheet(w, look)
	verdict := d.Verdict()
	s.plain(shout(verdict), verdict.Ruling.ink()...)
	for _, g := range d.Garments {
		s.line("")
		if len(d.Garments) > 1 {
			s.seam()
		}
		s.garment(d, g)
	}
	s.line("")
	if len(d.Garments) > 1 {
		s.seam()
		s.total(d)
	}
	s.footing(d)
	return s.err
}

// shout is the verdict as the first line has it.
func shout(v Verdict) string {
	text := strings.ToUpper(v.Ruling.String())
	if v.Reasons != "" {
		text += ": " + v.Reasons
	}
	return text
}

func (s *sheet) garment(d *Document, g *Garment) {
	title := []word{unbroken(g.File)}
	if g.Title != "" {
		title = append([]word{unbroken(g.File + ":")}, words(g.Title)...)
	}
	s.flat(title, color.Bold)
	about := count(g.Passed, "check", "checks") + " passed"
	if len(g.Sizes) > 0 {
		about += "; " + g.sizesText(g.Sizes)
	}
	if len(d.Garments) > 1 {
		verdict := g.Verdict(d.Least)
		s.plain(verdict.String(), verdict.Ruling.ink()...)
	}
	entries := fold(g.Findings)
	s.whichForbid(d, entries)
	if g.Complete || g.Passed > 0 {
		s.plain(about)
	}
	s.unread(g)
	for i, e := range entries {
		s.line("")
		s.finding(d, g, i+1, e)
	}
	s.closest(g)
	s.waived(g)
	s.undone(g)
}

// whichForbid points to the findings that forbid cutting where others stand
// between them: findings come in the order of the spec.
func (s *sheet) whichForbid(d *Document, entries []entry) {
	var numbers []string
	for i, e := range entries {
		if d.forbids(e.Finding) {
			numbers = append(numbers, fmt.Sprint(i+1))
		}
	}
	if len(numbers) > 0 && len(numbers) < len(entries) {
		s.plain("what forbids it: " + plural(len(numbers), "number", "numbers") + " " + strings.Join(numbers, ", "))
	}
}

func (s *sheet) unread(g *Garment) {
	for _, diag := range g.Diagnostics {
		where := fmt.Sprintf("line %d", diag.Place.Start.Line)
		text := words(sentence(diag))
		if diag.Place.File != g.File {
			where, text = "see", append([]word{unbroken(diag.Place.String())}, text...)
		}
		s.entryOf(where, text, inkOf(diag.Severity)...)
	}
}

// sentence is what a diagnostic says, in one run of text.
func sentence(d model.Diagnostic) string {
	if d.Detail == "" {
		return d.Summary
	}
	first, n := utf8.DecodeRuneInString(d.Detail)
	return d.Summary + ". " + string(unicode.ToUpper(first)) + d.Detail[n:]
}

func (s *sheet) finding(d *Document, g *Garment, number int, f entry) {
	lead := fmt.Sprintf("%2d  ", number)
	s.hang(lead, strings.ToUpper(f.Severity), words(f.Subject+" ("+figureNamed(f.Rule, f.Key)+")"), inkOf(f.Severity)...)
	s.indented(f.Message)
	if f.Figure != nil {
		s.entry("figure", g.figureText(*f.Figure, ", where the limit is "))
	}
	if g.sizesMatter(f.Finding) {
		s.entry("shows "+g.within(), sizesAndWorst(g, f.Finding))
	}
	s.entryOf("look at", []word{unbroken(f.Range.String())})
	if d.Source != nil {
		s.exactly(excerpt(d.Source(f.Range.File), f.Range, s.room-indent-tagColumn)...)
	}
	s.likewise(f)
	for _, r := range f.Related {
		s.entryOf("see also", append(g.whereabouts(r.Place), words(r.Message)...))
	}
	if f.Mend != nil {
		s.entry("put right", f.Mend.Title)
	}
}

// figureText is a figure against its limit. Where only the size of a difference
// counts, its sign is left to the message.
func (g *Garment) figureText(f Figure, limit string) string {
	measured := f.Measured
	if size := f.Limit - f.Margin; math.Abs(size+measured) < 1e-9*math.Abs(size) {
		measured = size
	}
	return g.showOf(f, measured) + limit + g.showOf(f, f.Limit)
}

// whereabouts are the words for a place: its line in the garment's own file,
// which the heading names, or in another.
func (g *Garment) whereabouts(p model.Place) []word {
	if p.File == g.File {
		return words(fmt.Sprintf("line %d, column %d:", p.Start.Line, p.Start.Column))
	}
	return append([]word{unbroken(p.File)}, words(fmt.Sprintf("line %d:", p.Start.Line))...)
}

func (s *sheet) waived(g *Garment) {
	if len(g.Waived) == 0 {
		return
	}
	s.line("")
	s.plain("Looked at and accepted", color.Bold)
	known, file := 0, ""
	for _, w := range g.Waived {
		if w.outside(g) { // many, and each the same to say
			known, file = known+1, w.Waiver.Range.File
			continue
		}
		s.entry(w.Severity, w.Subject+" ("+w.Rule+")")
		s.indented(w.Message)
		s.entry("because", w.Waiver.because())
	}
	if known > 0 {
		s.entry("known", count(known, "finding", "findings")+" that "+plural(known, "stands", "stand")+" in "+file)
	}
}

func (s *sheet) undone(g *Garment) {
	if len(g.NotPossible) == 0 {
		return
	}
	s.line("")
	s.plain("Could not be checked, and why", color.Bold)
	groups := byReason(g.NotPossible)
	for _, u := range groups {
		text := u.reason
		if len(u.subjects) > 0 {
			text += ": " + strings.Join(u.subjects, ", ")
		}
		if u.reason != noDrawing { // what that concerns stands below, once
			text += " (" + strings.Join(u.rules, ", ") + ")"
		}
		s.indented(text)
	}
	if names := drawable(groups); len(names) > 0 {
		s.indented("A drawing would add: " + strings.Join(names, ", ") + ".")
	}
}

func (s *sheet) total(d *Document) {
	var n [3]int
	for _, g := range d.Garments {
		n[g.Verdict(d.Least).Ruling]++
	}
	s.plain(fmt.Sprintf("Together %d garments: %d may be cut, %d must not be, %d cannot be told.",
		len(d.Garments), n[MayCut], n[DoNotCut], n[CannotSay]), color.Bold)
	t := d.Summary
	s.plain(fmt.Sprintf("%s, %s, %s; %s passed, %d accepted, %d not possible.",
		count(t.Errors, "error", "errors"), count(t.Warnings, "warning", "warnings"), count(t.Notes, "note", "notes"),
		count(t.Passed, "check", "checks"), t.Waived, t.NotPossible))
}

func (s *sheet) footing(d *Document) {
	if d.Summary.Errors+d.Summary.Warnings+d.Summary.Notes > 0 {
		s.plain("\"understitch explain RULE\" tells why a rule is there and how it is reckoned.")
	}
	s.plain(Advice)
}

// own is the unit of the spec, millimetres where it is not known.
func (g *Garment) own() model.Unit {
	if unit, ok := model.UnitNamed(g.Unit); ok {
		return unit
	}
	return model.Millimetre
}

// showOf writes a value of a figure. A ratio that is held against less than one is
// a share, and is shown in percent.
func (g *Garment) showOf(f Figure, v float64) string {
	if rules.Unit(f.Unit) != rules.Ratio || !(f.Limit > 0 && f.Limit < 1) {
		return g.show(v, f.Unit)
	}
	places := 0
	if math.Abs(f.Margin) < 0.01 {
		places = 1 // else both would look alike
	}
	return model.Decimal(v*100, places) + " %"
}

// show writes a figure in its unit, lengths in the unit of the spec.
func (g *Garment) show(v float64, unit string) string {
	switch rules.Unit(unit) {
	case rules.Millimetres:
		return (&model.Garment{Unit: g.own()}).Show(v)
	case rules.Degrees:
		return model.Decimal(v, 1) + "°"
	case rules.Percent:
		return model.Decimal(v, 1) + " %"
	}
	return model.Decimal(v, 3)
}
