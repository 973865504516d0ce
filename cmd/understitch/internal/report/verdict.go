package report

import (
	"fmt"
	"strings"

	"understitch/rules"
)

// Ruling is what the cutter may do.
type Ruling uint8

// The rulings. Cannot stands only where nothing already forbids cutting.
const (
	MayCut Ruling = iota
	CannotSay
	DoNotCut
)

func (r Ruling) String() string {
	return [...]string{"may be cut", "cannot say", "do not cut"}[r]
}

// Verdict is a ruling with its reasons in words.
type Verdict struct {
	Ruling  Ruling
	Reasons string // "2 errors, 1 warning"; may be empty
}

func (v Verdict) String() string {
	if v.Reasons == "" {
		return v.Ruling.String()
	}
	return v.Ruling.String() + ": " + v.Reasons
}

// Verdict of one garment: findings at or above the severity forbid cutting; a
// garment that was not checked in full, or of which nothing could be checked,
// has none.
func (g *Garment) Verdict(least rules.Severity) Verdict {
	var s Summary
	s.count(g)
	var reasons []string
	add := func(n int, one, many string) {
		if n > 0 {
			reasons = append(reasons, count(n, one, many))
		}
	}
	add(s.Errors, "error", "errors")
	add(s.Warnings, "warning", "warnings")
	add(s.Notes, "note", "notes")
	ruling := MayCut
	switch {
	case s.reaches(least):
		ruling = DoNotCut
	case !g.Complete:
		ruling = CannotSay
	case s.Passed == 0 && len(g.Findings) == 0:
		ruling = CannotSay
		reasons = append(reasons, "nothing could be checked")
	}
	if !g.Complete {
		reasons = append(reasons, g.unread())
	}
	if ruling == MayCut && s.NotPossible > 0 {
		reasons = append(reasons, "as far as could be checked, "+count(s.NotPossible, "check was", "checks were")+" not possible")
	}
	return Verdict{ruling, strings.Join(reasons, ", ")}
}

func (g *Garment) unread() string {
	if g.Name == "" {
		return "the spec cannot be read"
	}
	return "not checked in full"
}

// Verdict of all garments together.
func (d *Document) Verdict() Verdict {
	if len(d.Garments) == 1 {
		return d.Garments[0].Verdict(d.Least)
	}
	var n [3]int
	for _, g := range d.Garments {
		n[g.Verdict(d.Least).Ruling]++
	}
	of := fmt.Sprintf(" of %d garments", len(d.Garments))
	switch {
	case n[DoNotCut] > 0:
		return Verdict{DoNotCut, fmt.Sprint(n[DoNotCut]) + of}
	case n[CannotSay] > 0:
		return Verdict{CannotSay, fmt.Sprint(n[CannotSay]) + of}
	}
	return Verdict{MayCut, fmt.Sprintf("all %d garments", len(d.Garments))}
}

// Forbids reports whether any finding reaches the severity from which it keeps
// the cloth from being cut.
func (d *Document) Forbids() bool { return d.Summary.reaches(d.Least) }

func (s Summary) reaches(least rules.Severity) bool {
	return s.Errors > 0 || (s.Warnings > 0 && least <= rules.Warning) || (s.Notes > 0 && least <= rules.Note)
}

// count writes a number with its noun.
func count(n int, one, many string) string { return fmt.Sprint(n) + " " + plural(n, one, many) }

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}
