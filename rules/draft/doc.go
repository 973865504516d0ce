// Package draft holds the rules over the drawing of a single piece: that its
// outline closes and does not cross itself.
//
// They come before all others in sense, if not in order: a width, a girth or a
// region of a piece whose outline is at fault is not to be relied on. Whether
// pieces agree with each other is for the other families.
package draft
