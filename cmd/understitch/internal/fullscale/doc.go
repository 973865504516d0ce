// Package fullscale prints a garment at full scale, as a PDF that is laid on
// paper or on cloth.
//
// [Write] lays out pages of one size of paper. First comes a page with two test
// squares, how to print and join, the legend and a map of the tiles; then what
// was found, the cut sheet, and the seams laid along each other, which are
// reduced to fit; then the pieces and the tapes at full scale, whatever fits on
// one page together, the others over as many tiles as they need.
//
// # Scale
//
// A millimetre of the drawing is a millimetre of the page. The file rounds
// places to a hundredth of a point, which is 0.004 mm. What a printer makes of it
// is not in our hand, hence the squares of 10 cm and 4 in, measured from the
// middle of a line to the middle of the line across.
//
// # Tiles
//
// Tiles overlap by [Overlap]. In the middle of the overlap runs the join line,
// on both sheets; the sheets are joined where these lie on each other. A ring
// sits astride each join line, twice on a side, with the names of both tiles in
// its halves; on sheets that are joined rightly each ring closes. Lines are not cut at
// tiles but drawn on each tile whole and clipped, so that a broken line goes on
// in step. A tile through which nothing runs and that holds no cloth is left out.
//
// # What is drawn
//
// The marks of package drawing, each with its own pen, thinner than on a screen,
// for a line of a millimetre hides a fault of a millimetre. Each layer of the
// garment is a layer of the PDF that readers can hide before they print, and so
// are levels and findings. Pieces that are known by the tape alone have no shape
// to lay on anything; their widths stand on the reduced pages.
//
// # Text
//
// One typeface is held in the program and embedded as far as it is used. It has
// Latin, Greek and Cyrillic letters and more; letters are set from left to right
// without joining, so that Arabic or Hebrew names are not set as they are read.
// What it has no sign for is a box.
//
// The same garment gives the same bytes: no date or place of this machine is in
// the file. The package judges nothing; all words about what was found come in.
package fullscale
