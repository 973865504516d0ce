package wardrobe

import (
	"math/rand/v2"

	"understitch/cmd/corpus/internal/sheet"
)

// Hand is how somebody might write a garment down. Plain figures and path data
// hold for one size only.
func Hand(g *sheet.Garment, r *rand.Rand) sheet.Hand {
	h := sheet.Hand{Style: sheet.Style(r.IntN(4)), Named: r.IntN(2) == 0, OneLine: r.IntN(2) == 0, Explicit: r.IntN(3) == 0}
	if len(g.Sizes) > 1 {
		h.Style = sheet.Style(r.IntN(2))
	} else if h.Style == sheet.Graded {
		h.Style = sheet.Plain
	}
	return h
}
