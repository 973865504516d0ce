// Package draft holds the rules over the drawing itself: that a piece's outline
// closes and does not cross itself, that pairs are whole, that pieces sewn on each
// other agree in grain, that what a fitting altered is answered on the other side,
// that measures step steadily over the sizes, and that no figure is in the wrong
// unit.
//
// Those over the outline come before all others in sense, if not in order: a width,
// a girth or a region of a piece whose outline is at fault is not to be relied on.
// How well pieces agree once they are drawn is for the other families.
package draft
