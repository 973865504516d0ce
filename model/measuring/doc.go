// Package measuring takes the tape across a piece and round the body: the width
// of a piece at a level or a height, the girth of a layer, the room between the
// girths of two layers, and how a girth changes from level to level and from
// size to size.
//
// Widths and girths are millimetres, darts closed. A piece on the fold counts
// twice, a pair twice, and what one edge of a closure laps over the other is
// taken off. A piece that is known by tape alone has the widths that its spec
// states. Where a level is not closed all round, or a piece does not reach it,
// there is no girth, and the [model.Missing] says why.
package measuring
