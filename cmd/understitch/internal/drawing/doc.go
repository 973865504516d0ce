// Package drawing draws a garment as it is pinned up: the inner pieces laid on
// the outer ones, seams laid along each other notch against notch, tapes with
// their metal and their cut, and on all of it the findings where they are.
//
// [Of] makes a [Sheet] of one garment in one size. A sheet is a list of panels,
// and a panel a list of marks: lines, signs and words, each with what it stands
// for. Nothing in it knows of screens or paper, so that the page, the picture
// and the printed sheet all draw the same thing. A renderer goes over the marks
// in their order and draws of each whatever it has: its Line with the pen that
// [PenOf] names, its Sign at At, its Text at At. [WriteSVG] is one renderer.
//
// Everything is in millimetres at full scale, x to the right and y downward, in
// a frame of the panel's own; only the sizes of pens, signs and words are in
// points, and [Panel.Point] says how many millimetres a point is. On a screen a
// point is a pixel of the panel at its first size; a renderer that prints at
// full scale asks for a fixed size by [Options.Point].
//
// Two layers must be told apart where they lie on each other, in black and white
// too: the outermost layer's stitch line is a thin whole line, an inner one's a
// heavy broken line like running stitches, and where both run together the
// stitches are seen threaded on the line. Cut lines are the same, but hairlines.
//
// Words are placed last, each where it lies on no other word or tag, by room for
// a wide typeface. A page draws panels as narrow as a telephone ([Options.Wide])
// and enlarges only their cloth, so words are kept apart at every size between;
// what is about the cloth, [Panel.Beside], keeps its size as the words do.
//
// The package does not judge: what was found comes in as [Finding] values, and
// those that belong to no one place in the drawing are listed in Sheet.Elsewhere.
package drawing
