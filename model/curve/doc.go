// Package curve is plane geometry of drawn lines: lengths, positions, fits,
// distances, areas. It knows nothing of what the lines are for.
//
// # Frame
//
// All lengths are millimetres. X runs to the right and Y runs down the paper,
// as on screens and in path data; "clockwise" is meant as seen on that paper.
// A place on a path is its arc length from the path's start. Coordinates are
// expected to be finite and of a size that paper has; nothing panics on
// others, but their figures mean nothing.
//
// # Lines
//
// A Path is made of straight lines, cubic Bézier curves and elliptic arcs.
// Arcs stay arcs: the usual four cubics make a circle 0.014 % too long, which
// is a quarter of a millimetre on a hem. Nothing is ever flattened.
//
// # Lengths
//
// Lines and circular arcs have closed forms. Other lengths are integrated by
// the sixteen-point Gauss–Legendre rule, halved until it agrees with itself to
// 1e-13 of the segment; at a cusp that takes about twenty halvings. The point
// at a length is found by Halley's and Newton's step inside a bracket.
//
// # What is proven
//
// Sampling decides nothing here. Deviation, Outside, Room and Straightness
// return bounds that the true figure cannot pass, found by branch and bound:
// a stretch is enclosed, and halved as long as its enclosure leaves open more
// than the tolerance. Three enclosures are used.
//
//   - A stretch of arc length h over a chord of length c lies, run through
//     evenly, within sqrt(h²−c²)/2 of the chord (see enclosure). It holds at
//     cusps and loops, for it needs no derivatives.
//   - A stretch lies within (t1−t0)²/8 · max|r”| of its chord run through by
//     parameter (see strip).
//   - A cubic lies within the convex hull of its control points.
//
// The proofs are in exact arithmetic; arc lengths are allowed an error of
// 1e-12 of the path's length, other rounding is far below 1e-9 mm.
// Nearest, Bounds, areas, Crossings and Spans are exact to rounding: roots of
// polynomials are isolated by Descartes' rule of signs, level crossings by
// cutting the line where it turns back.
//
// # What it does not do
//
// It cuts no regions with each other, and does not simplify or repair. A Region whose outline crosses itself has the inside that its
// winding number gives.
package curve
