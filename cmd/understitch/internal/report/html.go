package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"understitch/cmd/understitch/internal/drawing"
	"understitch/cmd/understitch/internal/page"
	"understitch/model"
	"understitch/rules"
)

// writeHTML writes the page: the ruling, the drawing where the document has its
// garments' models, the findings and the cut sheet.
func writeHTML(w io.Writer, d *Document, _ Look) error { return page.Write(w, d.Page()) }

// Page is the document put in words for the page. Findings have the numbers that
// the text report gives them.
func (d *Document) Page() page.Page {
	p := page.Page{Verdict: onPage(d.Verdict()), Advice: Advice, Tool: strings.TrimSpace(d.Tool.Name + " " + d.Tool.Version)}
	for i, g := range d.Garments {
		p.Garments = append(p.Garments, d.garmentPage(i, g))
	}
	return p
}

func onPage(v Verdict) page.Verdict {
	return page.Verdict{Ruling: v.Ruling.String(), Reasons: v.Reasons}
}

func (d *Document) garmentPage(i int, g *Garment) *page.Garment {
	out := &page.Garment{
		File: Clean(g.File), Title: Clean(g.Title), Verdict: onPage(g.Verdict(d.Least)),
		About: count(g.Passed, "check", "checks") + " passed", Sizes: cleaned(g.Sizes),
	}
	if len(g.Sizes) > 0 {
		out.About += "; " + g.sizesText(out.Sizes)
	}
	if d.Source != nil {
		out.Source = d.Source(g.File)
	}
	for k, e := range fold(g.Findings) {
		for _, f := range append([]Finding{e.Finding}, e.likewise...) {
			out.Findings = append(out.Findings, g.findingPage(k+1, f))
		}
	}
	slices.SortStableFunc(out.Findings, func(a, b page.Finding) int { return a.Number - b.Number })
	g.notes(out)
	if len(d.models(i)) > 0 {
		out.First = firstSize(g, d.models(i))
		out.Draw = func(size string) (*drawing.Sheet, *drawing.CutSheet) {
			return d.Drawing(i, size, drawing.Options{Wide: page.PanelWide})
		}
		if len(out.Sizes) == 0 {
			out.Sizes = []string{""}
		}
	}
	return out
}

func cleaned(list []string) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = Clean(s)
	}
	return out
}

func (g *Garment) findingPage(number int, f Finding) page.Finding {
	out := page.Finding{
		Number: number, Severity: f.Severity, Subject: f.Subject, Rule: f.Rule, Message: Clean(f.Message),
		Figure: g.figureAlone(f), Place: Clean(f.Range.String()),
	}
	if len(f.Sizes) < len(g.Sizes) { // in all sizes, none need be named
		out.Sizes = cleaned(f.Sizes)
	}
	if f.Range.File == g.File {
		out.Line, out.From, out.To = f.Range.Start.Line, f.Range.Start.Column, f.Range.End.Column
		if f.Range.End.Line > f.Range.Start.Line {
			out.To = 1 << 20 // to the end of the line
		}
	}
	add := func(head, text string) { out.Facts = append(out.Facts, page.Note{Head: head, Text: Clean(text)}) }
	if f.Figure != nil {
		add("figure", g.figureText(*f.Figure, ", where the limit is "))
	}
	if g.sizesMatter(f) {
		add("shows "+g.within(), sizesAndWorst(g, f))
	}
	for _, r := range f.Related {
		add("see also", r.Message+" ("+g.where(r.Place)+")")
	}
	if f.Mend != nil {
		add("put right", f.Mend.Title)
	}
	return out
}

func (g *Garment) where(p model.Place) string {
	if p.File == g.File {
		return fmt.Sprintf("line %d", p.Start.Line)
	}
	return p.String()
}

// figureAlone is what was measured, for a tag on the drawing.
func (g *Garment) figureAlone(f Finding) string {
	if f.Figure == nil {
		return ""
	}
	text, _, _ := strings.Cut(g.figureText(*f.Figure, "\x00"), "\x00")
	return text
}

func (g *Garment) notes(out *page.Garment) {
	note := func(list *[]page.Note, head, text string) {
		*list = append(*list, page.Note{Head: Clean(head), Text: Clean(text)})
	}
	for _, diag := range g.Diagnostics {
		note(&out.Trouble, g.where(diag.Place), sentence(diag))
	}
	for _, c := range g.Closest {
		note(&out.Closest, g.showOf(c.Figure, c.Margin), c.Subject+" ("+figureNamed(c.Rule, c.Key)+": "+g.closeText(c)+")")
	}
	for _, w := range g.Waived {
		note(&out.Waived, w.Subject, w.Message+" Because: "+w.Waiver.because())
	}
	for _, u := range byReason(g.NotPossible) {
		note(&out.Undone, strings.Join(u.rules, ", "), strings.Trim(u.reason+": "+strings.Join(u.subjects, ", "), ": "))
	}
}

// models are the garment's models, one for each size; none in a document that
// was read back from its JSON form.
func (d *Document) models(i int) []*model.Garment {
	if i >= len(d.inspected) {
		return nil
	}
	return d.inspected[i].Models
}

// firstSize is the size that is shown first: the one in which most errors show
// worst, else the middle one.
func firstSize(g *Garment, models []*model.Garment) string {
	worst, most := models[len(models)/2].Size, 0
	counts := map[string]int{}
	for _, f := range g.Findings {
		if f.Severity != rules.Error.String() || f.WorstSize == "" {
			continue
		}
		counts[f.WorstSize]++
		if n := counts[f.WorstSize]; n > most {
			worst, most = f.WorstSize, n
		}
	}
	return worst
}

// FirstSize is the size of a garment that is best looked at first.
func (d *Document) FirstSize(i int) string {
	if models := d.models(i); len(models) > 0 {
		return firstSize(d.Garments[i], models)
	}
	return ""
}

// Drawing draws the garment at a place in the document in one size, with the
// findings that show in it, and makes its cut sheet. Both are nil where the
// document has no model of it in that size.
func (d *Document) Drawing(i int, size string, o drawing.Options) (*drawing.Sheet, *drawing.CutSheet) {
	for _, m := range d.models(i) {
		if m.Size == size {
			return drawing.Of(m, d.marks(i, size), o), drawing.CutSheetOf(m)
		}
	}
	return nil, nil
}

// marks are the findings that show in a size, as the drawing wants them. A
// figure that was measured in another size says so.
func (d *Document) marks(i int, size string) []drawing.Finding {
	g := d.Garments[i]
	origin := map[string]*rules.Finding{}
	for k, f := range g.Findings {
		origin[f.Fingerprint] = &d.inspected[i].Result.Findings[k]
	}
	var out []drawing.Finding
	for k, e := range fold(g.Findings) {
		for _, f := range append([]Finding{e.Finding}, e.likewise...) {
			if len(f.Sizes) > 0 && !slices.Contains(f.Sizes, size) {
				continue
			}
			m := drawing.Finding{
				Number: fmt.Sprint(k + 1), Severity: f.Severity, Subject: f.Subject, Key: origin[f.Fingerprint].Key,
				Figure: g.figureAlone(f), Message: f.Message, Spot: origin[f.Fingerprint].Spot,
			}
			m.Places = append(m.Places, f.Range)
			for _, r := range f.Related {
				m.Places = append(m.Places, r.Place)
			}
			if m.Figure != "" && f.WorstSize != size && g.differ(f.Figure) {
				m.Figure += " " + g.within() + " " + f.WorstSize
			}
			out = append(out, m)
		}
	}
	return out
}
