package report

import (
	"fmt"
	"strings"
)

func (g *Garment) sizesText(sizes []string) string {
	return g.sizesWord(len(sizes)) + " " + listed(sizes)
}

// sizesWord is the word for sizes, or for the wearers of a table that stand in
// their place.
func (g *Garment) sizesWord(n int) string {
	if g.Wearers {
		return plural(n, "wearer", "wearers")
	}
	return plural(n, "size", "sizes")
}

// within is the word for what shows at a size or at a wearer: in 38, on anna.
func (g *Garment) within() string {
	if g.Wearers {
		return "on"
	}
	return "in"
}

// listed names sizes or wearers, the first of them where they are many.
func listed(sizes []string) string {
	const most = 12
	if len(sizes) <= most {
		return strings.Join(sizes, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(sizes[:most], ", "), len(sizes)-most)
}

// sizesAndWorst names the sizes that a finding shows in, and the worst of them where
// they differ.
func sizesAndWorst(g *Garment, f Finding) string {
	text := listed(f.Sizes)
	if len(f.Sizes) == len(g.Sizes) && len(f.Sizes) > 3 {
		text = "all of them"
	}
	if len(f.Sizes) > 1 && f.WorstSize != "" && g.differ(f.Figure) {
		text += "; worst " + g.within() + " " + f.WorstSize
	}
	return text
}

// differ reports whether the figures of the sizes differ by anything that can be
// seen: where all are alike none is the worst.
func (g *Garment) differ(f *Figure) bool {
	return f != nil && g.showOf(*f, f.Spread) != g.showOf(*f, 0)
}
