package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
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
			layer.Pieces = append(layer.Pieces, CutPiece{
				Name: p.Name, How: CutText(p), Allowances: allowances(g, p), Notches: notches(g, p), ByTape: p.Paper(),
			})
		}
		s.Layers = append(s.Layers, layer)
	}
	for _, c := range g.Closures {
		s.closure(g, c)
	}
	for _, e := range g.Elastics {
		s.Lengths = append(s.Lengths, CutLength{e.Address(), "elastic", g.Show(e.Length), "along " + sewing.SideText(e.Edges)})
	}
	for _, b := range g.Bones {
		s.Lengths = append(s.Lengths, CutLength{b.Address(), "bone", g.Show(b.Length), "along " + b.Along.String()})
	}
	return s
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

func (s *CutSheet) closure(g *model.Garment, c *model.Closure) {
	length, _, err := c.FullLength()
	if err != nil {
		s.Problems = append(s.Problems, c.Address()+": "+err.Error())
		return
	}
	cut := CutLength{Subject: c.Address(), What: c.Kind, Length: g.Show(length)}
	switch {
	case c.Kind == "tape" && c.Tape != nil:
		cut.What = "tape " + c.Tape.Name
		n, fits := Fasteners(c.Tape, length)
		cut.How = fmt.Sprintf("%d fasteners, both cuts %s from metal", n, g.Show(clearOf(c.Tape, length, n)))
		if !c.Tape.CanBeCut() || !fits {
			cut.How = "cannot be cut at this length without meeting metal"
		}
	case c.Kind == "zip":
		cut.How = zipText(g, c, length)
	case c.Kind == "button" && len(c.Buttons) == 1:
		cut.How = "1 button"
	case c.Kind == "button" && len(c.Buttons) > 1: // else it is not stated where they lie
		cut.How = fmt.Sprintf("%d buttons", len(c.Buttons))
	}
	s.Lengths = append(s.Lengths, cut)
}

// zipText names the zip of the stock that is long enough with least left over.
func zipText(g *model.Garment, c *model.Closure, length float64) string {
	best := math.Inf(1)
	for _, l := range c.Stock {
		if l >= length-least {
			best = min(best, l)
		}
	}
	switch {
	case len(c.Stock) == 0:
		return ""
	case math.IsInf(best, 1):
		return "no zip of the stock is that long"
	case best-length < least:
		return "the zip of " + g.Show(best)
	}
	return "the zip of " + g.Show(best) + ", shortened by " + g.Show(best-length)
}
