package spec

import (
	"math"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"understitch/model"
)

// bodyOf reads the measures of a body or size block, in millimetres, and where each is. They are
// plain figures: what one body measures does not follow from a draft.
func (s *scope) bodyOf(b *block) (map[string]float64, map[string]model.Place) {
	plain := scope{faults: s.faults, unit: s.unit, plainOnly: true}
	body := make(map[string]float64, len(b.inOrder))
	at := make(map[string]model.Place, len(b.inOrder))
	for _, a := range b.inOrder {
		name := a.Name
		if !isName(name) {
			name = asName(name) // what names it rightly is not at fault
			s.fault(a.NameRange, lettersOf(name), "%q cannot be a name", a.Name)
		}
		body[name] = plain.length(a.Expr, above0)
		at[name] = place(a.SrcRange)
	}
	return body, at
}

// level builds a level. Both its height and what the wearer measures there may
// be left out: a garment of paper pieces has no heights.
func (s *scope) level(b *block) *model.Level {
	l := &model.Level{Name: b.name, Y: math.NaN(), Body: math.NaN(), Place: place(b.header)}
	if e := b.attr("y"); e != nil {
		l.Y = s.levelHeight(b.name, e)
	}
	if e := b.attr("body"); e != nil {
		l.Body, l.Measure = s.bodyFigure(e)
	}
	return l
}

// levelHeight reads the height of a level. Levels that may be stated from each other are
// reckoned once, in any order.
func (s *scope) levelHeight(name string, e hclsyntax.Expression) float64 {
	v := s.levelY[name]
	if v == nil || v.expr != e {
		return s.length(e, signed)
	}
	y, ok := s.reckon(&v.value)
	if !ok {
		return math.NaN()
	}
	return s.lengthOf(e, y, signed)
}

// bodyFigure reads what is compared with the body: a body measure, which may
// not be known for this wearer, or a figure.
func (s *scope) bodyFigure(e hclsyntax.Expression) (v float64, name string) {
	t, ok := e.(*hclsyntax.ScopeTraversalExpr)
	if !ok {
		return s.length(e, above0), ""
	}
	words, n := steps(t)
	if n != 2 || words[0] != "body" {
		return s.length(e, above0), ""
	}
	name = words[1]
	if v, known := s.body[name]; known {
		return v, name
	}
	if near := nearest(name, append(sortedKeys(s.body), bodyMeasures...)); near != "" && !s.lenient && !isKnownMeasure(name) {
		s.lacks("warning", e.Range(), name, "The nearest known measure is body."+near+".", "")
	}
	return math.NaN(), name
}

func isKnownMeasure(name string) bool {
	for _, m := range bodyMeasures {
		if m == name {
			return true
		}
	}
	return false
}

// fabric builds a fabric. What it does not state is NaN.
func (s *scope) fabric(b *block) *model.Fabric {
	nan := math.NaN()
	f := &model.Fabric{Name: b.name, Thickness: nan, StretchAcross: nan, StretchAlong: nan,
		ShrinkAcross: nan, ShrinkAlong: nan, Place: place(b.header), Stated: b.stated()}
	if e := b.attr("thickness"); e != nil {
		f.Thickness = s.length(e, atLeast0)
	}
	if e := b.attr("stretch"); e != nil {
		s.acrossAlong(e, atLeast0, &f.StretchAcross, &f.StretchAlong)
	}
	if e := b.attr("shrink"); e != nil { // some cloths grow in the wash
		s.acrossAlong(e, signed, &f.ShrinkAcross, &f.ShrinkAlong)
	}
	if e := b.attr("washed"); e != nil {
		f.Washed = s.flag(e)
	}
	if e := b.attr("allowance"); e != nil {
		f.Standard = &model.Standard{Of: "fabric." + f.Name, Role: model.RoleDefault, Width: s.length(e, atLeast0), Place: place(e.Range())}
	}
	return f
}

func (s *scope) acrossAlong(e hclsyntax.Expression, want sense, across, along *float64) {
	for _, x := range s.entries(e) {
		switch x.key {
		case "across":
			*across = s.plain(x.value, want)
		case "along":
			*along = s.plain(x.value, want)
		default:
			s.fault(x.keyExpr.Range(), hint(x.key, []string{"across", "along"}), "%s is not known here", x.key)
		}
	}
}

// lengths reads a list of lengths, or a single one.
func (s *scope) lengths(e hclsyntax.Expression, want sense) []float64 {
	list := items(e)
	out := make([]float64, 0, len(list))
	for _, x := range list {
		out = append(out, s.length(x, want))
	}
	return out
}

// limit reads a limit whose unit only its rule knows: as a length and as it
// stands.
func (s *scope) limit(name string, e hclsyntax.Expression) model.LimitSetting {
	v, ok := s.number(e)
	if !ok {
		v = math.NaN()
	} else if v < 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		s.fault(e.Range(), "", "a limit cannot be negative")
	}
	return model.LimitSetting{Name: name, Length: v * s.unit.Millimetre, Plain: v, Place: place(e.Range())}
}
