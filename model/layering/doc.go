// Package layering lays one layer inside another: the inner piece on the outer
// one, by the frame in which both are drafted or by an edge that they share, and
// measures the room between them. It answers three questions: how much wider the
// outer is at each height, how far the inner stands outside the outer, and which
// dart of one layer answers which dart of the other.
//
// Lengths are millimetres in the outer piece's frame. "Outside by at most" and
// "at least so much room" are enclosed by bounds along the whole line, never
// taken from samples. Pieces that cannot be laid on each other give a
// [model.Missing] with the reason.
package layering
