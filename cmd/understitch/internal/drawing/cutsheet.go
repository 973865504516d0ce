package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/measuring"
	"understitch/model/sewing"
)

// CutSheet is the list that is pinned up beside the cutting table: what to cut
// from which cloth, with which allowances and notches, and which fasteners,
// elastics and bones to cut to which length. It is of one size and bears no date.
type CutSheet struct {
	Layers   []CutLayer
	Lengths  []CutLength
	Problems []string // what could not be worked out, and why
}

// CutLayer is what is cut from one cloth.
type CutLayer struct {
	Name   string
	Cloth  string // "" when not stated
	Pieces []CutPiece
}

// CutPiece is a piece to cut.
type CutPiece struct {
	Name       string
	How        string // "cut 1 on the fold"
	Grain      string // "grain along centre"; "" where none is drawn
	Allowances []string
	Notches    []string
	ByTape     bool // there is no drawing of it
}

// CutLength is something to cut to a length.
type CutLength struct {
	Subject string // "closure.gusset"
	What    string // "snap tape snap-19"
	Length  string
	How     string
}

// CutSheetOf makes the cut sheet of a garment in one size.
func CutSheetOf(g *model.Garment) *CutSheet {
	s := &CutSheet{}
	for _, l := range measuring.LayersInward(g) {
		layer := CutLayer{Name: l.Name}
		if l.Fabric != nil {
			layer.Cloth = l.Fabric.Name
		}
		for _, p := range l.Pieces {
			how := CutText(p)
			if text := tracedText(p); text != "" {
				how += "; " + text
			}
			layer.Pieces = append(layer.Pieces, CutPiece{
				Name: p.Name, How: how, Grain: grainText(p), Allowances: allowances(g, p), Notches: notches(g, p), ByTape: p.Paper(),
			})
		}
		s.Layers = append(s.Layers, layer)
	}
	for _, c := range g.Closures {
		s.closure(g, c)
	}
	for _, e := range g.Elastics {
		s.length(g, CutLength{Subject: e.Address(), What: "elastic", How: "along " + sewing.SideText(e.Edges) + sectionsText(g, e)}, e.Length, e.Edges)
	}
	for _, b := range g.Bones {
		s.length(g, CutLength{Subject: b.Address(), What: "bone", How: "along " + b.Along.String()}, b.Length, []model.Stretch{b.Along})
	}
	return s
}

// sectionsText says how much of an elastic goes on each of its sections.
func sectionsText(g *model.Garment, e *model.Elastic) string {
	parts, _, err := sewing.Sections(g, e)
	if err != nil || len(parts) == 0 {
		return ""
	}
	var out []string
	for _, s := range parts {
		out = append(out, fmt.Sprintf("%s on the %s of %s", g.ShowRange(s.Takes), g.Show(s.Edges), s.Along()))
	}
	return "; " + strings.Join(out, ", ")
}

// allowances groups a piece's edges by the width of their allowance.
func allowances(g *model.Garment, p *model.Piece) []string {
	var widths []float64
	edges := map[float64][]string{}
	var unknown []string
	for _, e := range p.Edges {
		w := e.Allowance.Width
		switch {
		case p.Fold == e:
			continue
		case !model.Known(w):
			unknown = append(unknown, e.Name)
			continue
		}
		if _, ok := edges[w]; !ok {
			widths = append(widths, w)
		}
		edges[w] = append(edges[w], e.Name)
	}
	slices.SortStableFunc(widths, func(a, b float64) int { return len(edges[b]) - len(edges[a]) })
	var out []string
	for _, w := range widths {
		out = append(out, g.Show(w)+": "+strings.Join(edges[w], ", "))
	}
	if len(unknown) > 0 {
		out = append(out, "not stated: "+strings.Join(unknown, ", "))
	}
	return out
}

func notches(g *model.Garment, p *model.Piece) []string {
	var out []string
	for _, n := range p.Notches {
		text := n.On.Name + ": " + n.Name
		if n.Kind != "single" && n.Kind != "" {
			text += ", " + n.Kind
		}
		if at, _, err := n.Position(); err == nil {
			text += " at " + g.Show(at)
		}
		out = append(out, text)
	}
	return out
}

// length adds something whose length is stated, and how often the line that it
// lies along is there.
func (s *CutSheet) length(g *model.Garment, cut CutLength, mm float64, along []model.Stretch) {
	whole, err := sewing.WholeOf(g, along)
	if err != nil {
		s.Problems = append(s.Problems, cut.Subject+": how many: "+err.Error())
		whole.Copies = 1
	}
	cut.Length = counted(g, whole.Copies, mm)
	s.Lengths = append(s.Lengths, cut)
}

// counted writes a length and how many of it are cut.
func counted(g *model.Garment, n int, mm float64) string {
	if n < 2 {
		return g.Show(mm)
	}
	return fmt.Sprintf("%d of %s", n, g.Show(mm))
}

func (s *CutSheet) closure(g *model.Garment, c *model.Closure) {
	whole, err := sewing.WholeClosure(g, c, 0)
	if err != nil {
		s.Problems = append(s.Problems, c.Address()+": "+err.Error())
		return
	}
	cut := CutLength{Subject: c.Address(), What: c.Kind, Length: counted(g, whole.Copies, whole.Length)}
	switch {
	case c.Kind == "tape" && c.Tape != nil:
		cut.What = "tape " + c.Tape.Name
		cut.How = tapeText(g, c.Tape, whole.Length)
		if c.First != nil {
			cut.How = placedText(g, c, whole.Length)
		}
	case c.Kind == "zip" && len(c.Stock) > 0:
		cut.How = zipText(g, c, whole.Length)
	case c.Kind == "button" && len(c.Buttons) == 1:
		cut.How = "1 button"
	case c.Kind == "button" && len(c.Buttons) > 1: // else it is not stated where they lie
		cut.How = fmt.Sprintf("%d buttons", len(c.Buttons))
	}
	if c.Half != "" {
		cut.How = strings.TrimPrefix(cut.How+"; on the "+c.Half+" half", "; ")
	}
	s.Lengths = append(s.Lengths, cut)
}

// placedText says where the metal of a tape is whose first fastener is placed.
func placedText(g *model.Garment, c *model.Closure, length float64) string {
	t, from := c.Tape, sewing.UpperEnd(g, c)
	w, _ := t.NearestFrom(c.First[0], length)
	var at []string
	for _, x := range t.Metal(c.First[0], w.Fasteners) {
		at = append(at, g.Show(x))
	}
	text := fmt.Sprintf("middles of the metal from the %s: %s", from, strings.Join(at, ", "))
	if length < w.Low || length > w.High || t.FirstAt().Beyond(c.First[0]) != 0 {
		text = "cannot be cut at this length without meeting metal; " + text
	}
	return text
}

func tapeText(g *model.Garment, t *model.Tape, length float64) string {
	w, _ := t.Nearest(length)
	switch {
	case !t.CanBeCut() || length < w.Low || length > w.High:
		return "cannot be cut at this length without meeting metal"
	case w.Fasteners == 1:
		return fmt.Sprintf("1 fastener, both cuts %s from metal", g.Show(clearOf(t, length, 1)))
	}
	return fmt.Sprintf("%d fasteners, both cuts %s from metal", w.Fasteners, g.Show(clearOf(t, length, w.Fasteners)))
}

// zipText names the zip that the rule zip-length takes for the opening: the
// longest that goes into it.
func zipText(g *model.Garment, c *model.Closure, opening float64) string {
	zip, longer := c.ZipsAround(opening)
	switch {
	case zip == 0:
		return "no zip in stock goes in; shorten that of " + g.Show(longer) + " by " + g.Show(longer-opening)
	case opening-zip < least:
		return "the zip of " + g.Show(zip)
	}
	return "the zip of " + g.Show(zip) + ", " + g.Show(opening-zip) + " shorter than the opening"
}

// Directions that differ by less, in degrees, are the same on the cutting table.
const sameDirection = 0.5

// grainText names the straight edge that the grain runs along; else the angle
// between it and straight down on the paper.
func grainText(p *model.Piece) string {
	if len(p.Grain) != 2 {
		return ""
	}
	grain := p.Grain[1].Sub(p.Grain[0])
	along := func(e *model.Edge) bool {
		return e.Drawn() && e.Path.Straightness() < least && apart(grain, e.Path.End().Sub(e.Path.Start())) < sameDirection
	}
	if p.Fold != nil && along(p.Fold) {
		return "grain along the fold"
	}
	if i := slices.IndexFunc(p.Edges, along); i >= 0 {
		return "grain along " + p.Edges[i].Name
	}
	if turn := apart(grain, curve.Point{Y: 1}); turn >= sameDirection {
		return "grain " + model.Decimal(turn, 1) + "° from straight down"
	}
	return "grain straight down"
}

// apart is the angle between two directions, in degrees, whichever way they point.
func apart(a, b curve.Point) float64 {
	return math.Atan2(math.Abs(a.Cross(b)), math.Abs(a.Dot(b))) * 180 / math.Pi
}
