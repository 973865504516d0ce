package slips

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
)

// text is a spec, and everything in it that may slip.
type text struct {
	src     []byte
	unit    string  // of the file
	unitAt  edit    // the unit's own bytes, and the text there
	garment thing   // the garment block
	mm      float64 // in one unit
	figures []figure
	names   []name
	labels  map[string][]label // the edges of each piece
	levels  []string
	body    []string // measures of the body
	taken   map[string]bool
	tied    map[string][]string // levels that are at a measure of the body
}

// name is a reference that may be another one.
type name struct {
	from, to int
	was      string
	others   []string // what it may have been mistaken for
	of       thing
}

// label is the name of an edge where it is drawn.
type label struct {
	from, to int
	name     string
	of       thing
}

var units = map[string]float64{"mm": 1, "cm": 10, "in": 25.4}

// read finds what may slip in a spec.
func read(src []byte) (*text, error) {
	file, diags := hclsyntax.ParseConfig(src, "spec", hcl.InitialPos)
	if diags.HasErrors() {
		return nil, diags
	}
	t := &text{src: src, labels: map[string][]label{}, taken: map[string]bool{}, tied: map[string][]string{}}
	body := file.Body.(*hclsyntax.Body)
	for _, b := range body.Blocks {
		t.heading(b)
	}
	if t.mm == 0 {
		return nil, fmt.Errorf("the spec states no unit")
	}
	for _, b := range body.Blocks {
		t.block(b)
	}
	for _, b := range body.Blocks {
		t.references(b)
	}
	return t, nil
}

// heading takes what is needed to read the rest: the unit, the levels, the body.
func (t *text) heading(b *hclsyntax.Block) {
	switch b.Type {
	case "garment":
		a := b.Body.Attributes["unit"]
		if a == nil {
			return
		}
		at := a.Expr.Range()
		t.unit = strings.Trim(string(t.src[at.Start.Byte:at.End.Byte]), `"`)
		t.mm = units[t.unit]
		t.unitAt = edit{at.Start.Byte, at.End.Byte, t.unit}
		t.garment = of("garment", b, "garment", t.unit)
	case "level":
		t.levels = append(t.levels, b.Labels[0])
		if a := b.Body.Attributes["body"]; a != nil {
			measure := strings.TrimPrefix(t.at(a.Expr), "body.")
			t.tied[measure] = append(t.tied[measure], b.Labels[0])
		}
	case "body", "size":
		for _, a := range sorted(b.Body.Attributes) {
			if !slices.Contains(t.body, a.Name) {
				t.body = append(t.body, a.Name)
			}
		}
	}
}

// of is the thing that a block is.
func of(piece string, b *hclsyntax.Block, names ...string) thing {
	return thing{piece: piece, names: names, lines: [2]int{b.DefRange().Start.Line, b.Body.SrcRange.End.Line}}
}

func (t *text) at(e hclsyntax.Expression) string {
	r := e.Range()
	return string(t.src[r.Start.Byte:r.End.Byte])
}

// sorted are attributes as they stand in the file.
func sorted(list hclsyntax.Attributes) []*hclsyntax.Attribute {
	var out []*hclsyntax.Attribute
	for _, a := range list {
		out = append(out, a)
	}
	slices.SortFunc(out, func(a, b *hclsyntax.Attribute) int { return a.SrcRange.Start.Byte - b.SrcRange.Start.Byte })
	return out
}

// block finds the figures of a block at the top of the file.
func (t *text) block(b *hclsyntax.Block) {
	switch b.Type {
	case "level":
		th := of("level."+b.Labels[0], b, "level."+b.Labels[0])
		th.keys = b.Labels
		t.numbers(level, b.Body.Attributes["y"], th)
	case "body", "size":
		for _, a := range sorted(b.Body.Attributes) {
			th := of(b.Type+"."+strings.Join(b.Labels, "."), b, "body."+a.Name, strings.ReplaceAll(strings.TrimSuffix(a.Name, "_girth"), "_", " "))
			th.keys = append([]string{a.Name}, t.tied[a.Name]...)
			t.numbers(girth, a, th)
		}
	case "layer":
		for _, p := range b.Body.Blocks {
			if p.Type == "piece" {
				t.piece(b.Labels[0]+"."+p.Labels[0], p)
			}
		}
	}
}

// piece finds the figures of a piece.
func (t *text) piece(address string, p *hclsyntax.Block) {
	whole := of(address, p, address)
	own := func(a *hclsyntax.Attribute) thing {
		th := whole
		if a != nil {
			th.lines = [2]int{a.SrcRange.Start.Line, a.SrcRange.End.Line}
		}
		return th
	}
	attrs := p.Body.Attributes
	t.numbers(allowance, attrs["allowance"], t.everyEdge(own(attrs["allowance"]), p))
	t.byLevel(width, attrs["width"], own(attrs["width"]))
	t.byLevel(level, attrs["levels"], own(attrs["levels"]))
	for _, b := range p.Body.Blocks {
		inside := b.Body.Attributes
		switch b.Type {
		case "points":
			for _, a := range sorted(inside) {
				t.numbers(point, a, t.everyEdgeThrough(own(a), a.Name, p))
			}
		case "edge":
			th := of(address, b, address+"."+b.Labels[0], address)
			at := b.LabelRanges[0]
			t.labels[address] = append(t.labels[address], label{at.Start.Byte, at.End.Byte, b.Labels[0], th})
			t.taken[address+"."+b.Labels[0]] = true
			for _, form := range []string{"line", "curve", "smooth", "cut_line"} {
				t.numbers(point, inside[form], th)
			}
			t.path(inside["path"], th)
			t.numbers(length, inside["length"], th)
			t.numbers(allowance, inside["allowance"], th)
		case "dart":
			th := of(address, b, address+".dart."+b.Labels[0], address)
			if a := inside["on"]; a != nil {
				th.names = append(th.names, address+"."+t.at(a.Expr))
			}
			t.numbers(intake, inside["intake"], th)
			for _, where := range []string{"at", "tip", "centre"} {
				t.numbers(point, inside[where], th)
			}
		case "notch":
			th := of(address, b, address+".notch."+b.Labels[0], address)
			th.keys = []string{b.Labels[0]}
			if a := inside["on"]; a != nil {
				th.names = append(th.names, address+"."+t.at(a.Expr))
			}
			t.numbers(notch, inside["at"], th)
			t.numbers(notch, inside["point"], th)
		}
	}
}

// everyEdge are the edges of a piece as well as the piece: they all have the figure.
func (t *text) everyEdge(th thing, p *hclsyntax.Block) thing {
	return t.everyEdgeThrough(th, "", p)
}

// everyEdgeThrough are the edges that are drawn through a named point.
func (t *text) everyEdgeThrough(th thing, point string, p *hclsyntax.Block) thing {
	th.names = slices.Clone(th.names)
	for _, b := range p.Body.Blocks {
		if b.Type != "edge" {
			continue
		}
		drawn := string(t.src[b.Body.SrcRange.Start.Byte:b.Body.SrcRange.End.Byte])
		if point == "" || regexp.MustCompile(`\b`+point+`\b`).MatchString(drawn) {
			th.names = append(th.names, th.piece+"."+b.Labels[0])
		}
	}
	return th
}

// byLevel finds the figures of { hip = 25.6, knee = 30.4 }.
func (t *text) byLevel(kind string, a *hclsyntax.Attribute, th thing) {
	if a == nil {
		return
	}
	object, ok := a.Expr.(*hclsyntax.ObjectConsExpr)
	if !ok {
		return
	}
	for _, item := range object.Items {
		at := th
		at.keys = []string{t.at(item.KeyExpr)}
		t.literals(kind, item.ValueExpr, t.mm, at)
	}
}

func (t *text) numbers(kind string, a *hclsyntax.Attribute, th thing) {
	if a != nil {
		t.literals(kind, a.Expr, t.mm, th)
	}
}

// literals finds the numbers of an expression that are added up to the figure. What
// is multiplied, and how a figure grows with the sizes, is left alone.
func (t *text) literals(kind string, e hclsyntax.Expression, mm float64, th thing) {
	add := func(e hclsyntax.Expression, v float64) {
		r := e.Range()
		t.figures = append(t.figures, figure{kind, r.Start.Byte, r.End.Byte, v, mm, th})
	}
	switch e := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		if v, ok := number(e); ok {
			add(e, v)
		}
	case *hclsyntax.UnaryOpExpr:
		if lit, ok := e.Val.(*hclsyntax.LiteralValueExpr); ok {
			if v, ok := number(lit); ok {
				add(e, -v)
			}
		}
	case *hclsyntax.ParenthesesExpr:
		t.literals(kind, e.Expression, mm, th)
	case *hclsyntax.BinaryOpExpr:
		if e.Op == hclsyntax.OpAdd || e.Op == hclsyntax.OpSubtract {
			t.literals(kind, e.LHS, mm, th)
			t.literals(kind, e.RHS, mm, th)
		}
	case *hclsyntax.FunctionCallExpr:
		switch e.Name {
		case "mm":
			mm = 1
		case "cm":
			mm = 10
		case "inch":
			mm = 25.4
		case "graded":
		default:
			return
		}
		t.literals(kind, e.Args[0], mm, th)
	case *hclsyntax.TupleConsExpr:
		for _, x := range e.Exprs {
			t.literals(kind, x, mm, th)
		}
	case *hclsyntax.ObjectConsExpr:
		for _, item := range e.Items {
			t.literals(kind, item.ValueExpr, mm, th)
		}
	}
}

func number(e *hclsyntax.LiteralValueExpr) (float64, bool) {
	if e.Val.IsNull() || e.Val.Type() != cty.Number {
		return 0, false
	}
	v, _ := e.Val.AsBigFloat().Float64()
	return v, true
}

var inPath = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)

// path finds the numbers of path data.
func (t *text) path(a *hclsyntax.Attribute, th thing) {
	if a == nil {
		return
	}
	from := a.Expr.Range().Start.Byte
	data := t.at(a.Expr)
	for _, at := range inPath.FindAllStringIndex(data, -1) {
		if v, err := strconv.ParseFloat(data[at[0]:at[1]], 64); err == nil {
			t.figures = append(t.figures, figure{point, from + at[0], from + at[1], v, t.mm, th})
		}
	}
}
