package report

import (
	"understitch/model"
	"understitch/rules"
)

type diagnostic = model.Diagnostic

// diagnostics visits what could not be read, each fault once: one in a house
// file stands with every garment below it.
func (d *Document) diagnostics(visit func(*Garment, diagnostic)) {
	told := map[diagnostic]bool{}
	for _, g := range d.Garments {
		for _, diag := range g.Diagnostics {
			if !told[diag] {
				told[diag] = true
				visit(g, diag)
			}
		}
	}
}

// particulars are what is to be said of a finding beside its message: the sizes
// it shows in, and what puts it right.
func (g *Garment) particulars(f Finding) []string {
	var out []string
	if g.sizesMatter(f) {
		out = append(out, "It shows "+g.within()+" "+g.sizesWord(len(f.Sizes))+" "+sizesAndWorst(g, f)+".")
	}
	if f.Mend != nil {
		out = append(out, "To put it right: "+f.Mend.Title+".")
	}
	return out
}

// sizesMatter reports whether it tells anything to name the sizes of a finding.
func (g *Garment) sizesMatter(f Finding) bool {
	return len(f.Sizes) > 1 || (len(f.Sizes) == 1 && len(g.Sizes) > 1)
}

// because is the reason of a waiver, and the last day it holds.
func (w Waiver) because() string {
	if w.Until == "" {
		return w.Reason
	}
	return w.Reason + " (until " + w.Until + ")"
}

// forbids reports whether a finding keeps the cloth from being cut.
func (d *Document) forbids(f Finding) bool {
	severity, _ := rules.SeverityNamed(f.Severity)
	return severity >= d.Least
}

// LimitText writes a limit with its unit.
func LimitText(l rules.Limit) string {
	text := model.Decimal(l.Value, 3)
	switch l.Unit {
	case rules.Ratio:
		return text
	case rules.Degrees:
		return text + "°"
	}
	return text + " " + string(l.Unit)
}
