package page

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"understitch/cmd/understitch/internal/drawing"
)

// Bytes that the parts of a page may take together, about; with its frame and
// style it then stays under 5 MB.
const (
	roomForFindings = 1_700_000
	roomInShort     = 900_000
	roomForSources  = 600_000
	roomForDrawings = 1_400_000
)

// view is the page as its template sees it.
type view struct {
	Page
	Head     string
	Style    template.CSS
	Script   template.JS
	Garments []*garmentView
}

type garmentView struct {
	*Garment
	ID       string
	Open     bool
	Drawings []drawingView
	NoRoom   []string // sizes whose drawing is left out
	Findings []Finding
	Short    []Finding // that are told in one line
	Rest     []rest
	Lines    []line
}

// drawingView is the drawing and the cut sheet of one size.
type drawingView struct {
	Size    string
	Shown   bool
	Sheet   *drawing.Sheet
	Panels  []panelView
	Missing []*drawing.Panel
	Cut     *drawing.CutSheet
	Verdict Verdict
}

type panelView struct {
	*drawing.Panel
	SVG   template.HTML
	Basis int // pixels, that it asks for beside others
}

// PanelWide is how wide a panel may be at its first size in pixels, so that it
// goes on to a small telephone as it is; columnWide is what it asks for beside
// others where there is more room.
const (
	PanelWide  = 300
	columnWide = 380
)

// Margins are the pixels beside the cloth, as the script reads them.
func (p panelView) Margins() string {
	var parts []string
	for _, points := range p.Beside {
		parts = append(parts, fmt.Sprintf("%.1f", points))
	}
	return strings.Join(parts, " ")
}

// rest counts the findings of a rule that are not listed.
type rest struct {
	Rule  string
	Count int
}

func (p Page) view() *view {
	v := &view{Page: p, Head: "understitch", Script: template.JS(script),
		Style: template.CSS(drawing.StyleSheet() + style)}
	if len(p.Garments) == 1 && p.Garments[0].Title != "" {
		v.Head = p.Garments[0].Title
	}
	v.Head += ": " + p.Verdict.Ruling
	b := &budget{findings: roomForFindings, short: roomInShort, sources: roomForSources, drawings: roomForDrawings}
	for i, g := range p.Garments {
		v.Garments = append(v.Garments, &garmentView{Garment: g, ID: fmt.Sprintf("g%d", i+1), Open: len(p.Garments) <= 3})
	}
	b.list(v.Garments)
	for _, g := range v.Garments {
		g.Lines = b.source(g.Source, g.Findings)
		b.first(g)
	}
	for _, g := range v.Garments {
		b.others(g)
	}
	return v
}

// budget is the room that is left.
type budget struct{ findings, short, sources, drawings int }

// list chooses the findings that there is room for, errors before others, and
// keeps their order: in full, then in a line, then only counted by their rule.
func (b *budget) list(garments []*garmentView) {
	const full, short = 1, 2
	how := make([][]int, len(garments))
	for i, g := range garments {
		how[i] = make([]int, len(g.Garment.Findings))
	}
	for _, severity := range []string{"error", "warning", "note"} {
		for i, g := range garments {
			for k, f := range g.Garment.Findings {
				switch size := f.size(); {
				case f.Severity != severity:
				case b.findings >= size:
					b.findings -= size
					how[i][k] = full
				case b.short >= f.shortSize():
					b.short -= f.shortSize()
					how[i][k] = short
				}
			}
		}
	}
	for i, g := range garments {
		for k, f := range g.Garment.Findings {
			switch how[i][k] {
			case full:
				g.Findings = append(g.Findings, f)
			case short:
				g.Short = append(g.Short, f)
			default:
				g.count(f.Rule)
			}
		}
	}
}

func (g *garmentView) count(rule string) {
	at := slices.IndexFunc(g.Rest, func(r rest) bool { return r.Rule == rule })
	if at < 0 {
		at = len(g.Rest)
		g.Rest = append(g.Rest, rest{Rule: rule})
	}
	g.Rest[at].Count++
}

// size is about how many bytes a finding takes.
func (f Finding) size() int {
	n := 440 + len(f.Message) + len(f.Subject) + len(f.Figure) + len(f.Rule)
	for _, note := range f.Facts {
		n += 20 + len(note.Head) + len(note.Text)
	}
	for _, s := range f.Sizes {
		n += len(s) + 1
	}
	return n
}

func (f Finding) shortSize() int { return 60 + len(f.Subject) + len(f.Figure) + len(f.Rule) }

// first draws the size that is shown first, where there is room.
func (b *budget) first(g *garmentView) {
	if g.Draw == nil {
		return
	}
	b.draw(g, g.First, true)
}

// others draws all other sizes, where there is room, in their order.
func (b *budget) others(g *garmentView) {
	if g.Draw == nil || len(g.Drawings) == 0 {
		return
	}
	for _, size := range g.Sizes {
		if size != g.First {
			b.draw(g, size, false)
		}
	}
	slices.SortStableFunc(g.Drawings, func(x, y drawingView) int {
		return slices.Index(g.Sizes, x.Size) - slices.Index(g.Sizes, y.Size)
	})
}

func (b *budget) draw(g *garmentView, size string, shown bool) {
	if b.drawings <= 0 {
		g.NoRoom = append(g.NoRoom, size)
		return
	}
	sheet, cut := g.Draw(size)
	if sheet == nil {
		return
	}
	d := drawingView{Size: size, Shown: shown, Sheet: sheet, Cut: cut, Verdict: g.Verdict}
	bytes := 0
	for _, p := range sheet.Panels {
		switch {
		case p.Repeats:
			continue
		case p.Missing != "":
			d.Missing = append(d.Missing, p)
			continue
		}
		svg := drawing.PanelSVG(p, p.Title+", size "+size)
		bytes += len(svg) + 400
		d.Panels = append(d.Panels, panelView{p, template.HTML(svg), max(int(p.Box.Width()/p.Point), columnWide)})
	}
	if bytes > b.drawings {
		g.NoRoom = append(g.NoRoom, size)
		return
	}
	b.drawings -= bytes
	g.Drawings = append(g.Drawings, d)
}

// line is a line of a spec.
type line struct {
	N             int
	Before, Meant string
	After         string
	Numbers       []int // of the findings that are about it
	Severity      string
	Skipped       bool // lines before it are left out
}

// source takes a spec apart into lines, all of them where there is room, else
// those about its findings.
func (b *budget) source(src []byte, findings []Finding) []line {
	if len(src) == 0 {
		return nil
	}
	about := map[int][]Finding{}
	near := map[int]bool{}
	for _, f := range findings {
		if f.Line > 0 {
			about[f.Line] = append(about[f.Line], f)
			for n := f.Line - 2; n <= f.Line+2; n++ {
				near[n] = true
			}
		}
	}
	texts := strings.Split(strings.TrimRight(string(src), "\n"), "\n")
	all := len(src)+60*len(texts) <= b.sources
	var out []line
	last := 0
	for i, text := range texts {
		n := i + 1
		size := len(text) + 60
		if (!all && !near[n]) || b.sources < size {
			continue
		}
		b.sources -= size
		l := line{N: n, Before: strings.TrimRight(text, "\r"), Skipped: n != last+1}
		if list := about[n]; len(list) > 0 {
			l.mark(list)
		}
		out = append(out, l)
		last = n
	}
	return out
}

// mark sets off what the first finding of a line means, and notes all of them.
func (l *line) mark(list []Finding) {
	runes := []rune(l.Before)
	f := list[0]
	from := min(max(f.From-1, 0), len(runes))
	to := min(max(f.To-1, from), len(runes))
	l.Before, l.Meant, l.After = string(runes[:from]), string(runes[from:to]), string(runes[to:])
	l.Severity = f.Severity
	for _, f := range list {
		l.Numbers = append(l.Numbers, f.Number)
	}
}
