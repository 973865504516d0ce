package report

import (
	"fmt"
	"strings"

	"github.com/fatih/color"
)

// closest lists the passes with least room left.
func (s *sheet) closest(g *Garment) {
	if len(g.Closest) == 0 {
		return
	}
	s.line("")
	s.plain("Closest calls, of those that passed: room left, and where", color.Bold)
	for _, c := range g.Closest {
		subject := c.Subject
		if n := len(c.Likewise); n > 0 {
			subject += fmt.Sprintf(" and %d more", n)
		}
		s.entry(g.showOf(c.Figure, c.Margin), subject+" ("+figureNamed(c.Rule, c.Key)+": "+g.closeText(c)+")")
	}
}

// figureNamed names a rule, and which of its figures it is where the rule takes
// several: a waiver names the figure by the same word.
func figureNamed(rule, key string) string {
	if key == "" || strings.Contains(rule, key) { // edge-unused has one: unused
		return rule
	}
	return rule + ", " + key
}

// closeText is the figure of a close call, and the size it is of.
func (g *Garment) closeText(c Close) string {
	text := g.figureText(c.Figure, ", limit ")
	if len(c.Sizes) > 1 && c.WorstSize != "" && g.differ(&c.Figure) {
		text += "; tightest " + g.within() + " " + c.WorstSize
	}
	return text
}
