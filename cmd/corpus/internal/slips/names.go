package slips

import (
	"regexp"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// joining are the blocks that name edges or pieces, and the attributes in which
// they do.
var joining = map[string][]string{
	"seam":    {"join"},
	"share":   {"outer", "inner"},
	"inside":  {"outer", "inner"},
	"closure": {"edges"},
	"elastic": {"edges"},
	"bone":    {"along"},
	"measure": {"along", "against"},
	"alter":   {"edges"},
	"level":   {"body"},
}

var reference = regexp.MustCompile(`[a-z][a-z0-9_-]*(\.[a-z][a-z0-9_-]*)+`)

// references finds the names in a block that may be mistaken for others.
func (t *text) references(b *hclsyntax.Block) {
	for _, attr := range joining[b.Type] {
		if a := b.Body.Attributes[attr]; a != nil {
			t.referring(a, of(b.Type+"."+b.Labels[0], b, b.Type+"."+b.Labels[0]))
		}
	}
	if b.Type != "layer" {
		return
	}
	for _, p := range b.Body.Blocks {
		if p.Type != "piece" {
			continue
		}
		address := b.Labels[0] + "." + p.Labels[0]
		if a := p.Body.Attributes["fold"]; a != nil {
			t.within(a, address, of(address, p, address))
		}
		for _, n := range p.Body.Blocks {
			if n.Type != "notch" && n.Type != "dart" {
				continue
			}
			th := of(address, n, address+"."+n.Type+"."+n.Labels[0], address)
			if a := n.Body.Attributes["on"]; a != nil {
				t.within(a, address, th)
			}
			if a := n.Body.Attributes["level"]; a != nil {
				t.name(a.Expr.Range().Start.Byte, t.at(a.Expr), t.levels, th)
			}
		}
	}
}

// within is an attribute that names an edge of its own piece.
func (t *text) within(a *hclsyntax.Attribute, piece string, th thing) {
	was := t.at(a.Expr)
	th.names = append(slices.Clone(th.names), piece+"."+was)
	t.name(a.Expr.Range().Start.Byte, was, t.edgesOf(piece), th)
}

func (t *text) edgesOf(piece string) []string {
	var out []string
	for _, l := range t.labels[piece] {
		out = append(out, l.name)
	}
	return out
}

func (t *text) name(from int, was string, others []string, th thing) {
	others = slices.DeleteFunc(slices.Clone(others), func(o string) bool { return o == was })
	if len(others) > 0 {
		t.names = append(t.names, name{from, from + len(was), was, others, th})
	}
}

// referring finds the addresses of an expression.
func (t *text) referring(a *hclsyntax.Attribute, th thing) {
	text, from := t.at(a.Expr), a.Expr.Range().Start.Byte
	for _, at := range reference.FindAllStringIndex(text, -1) {
		was := text[at[0]:at[1]]
		parts := strings.Split(was, ".")
		own := th
		own.names = append(slices.Clone(th.names), was)
		var others []string
		switch {
		case parts[0] == "body":
			for _, m := range t.body {
				others = append(others, "body."+m)
			}
		case len(parts) == 3: // another edge of the piece, or the same edge of another piece
			for _, e := range t.edgesOf(parts[0] + "." + parts[1]) {
				others = append(others, parts[0]+"."+parts[1]+"."+e)
			}
			for _, p := range t.pieces() {
				if other := p + "." + parts[2]; t.taken[other] && !slices.Contains(others, other) {
					others = append(others, other)
				}
			}
		case len(parts) == 2: // another piece of the layer
			for _, p := range t.pieces() {
				if strings.HasPrefix(p, parts[0]+".") {
					others = append(others, p)
				}
			}
		}
		t.name(from+at[0], was, others, own)
	}
}

// pieces are all pieces, by name.
func (t *text) pieces() []string {
	var out []string
	for p := range t.labels {
		out = append(out, p)
	}
	slices.Sort(out)
	return out
}
