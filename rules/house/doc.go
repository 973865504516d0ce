// Package house makes rules of what a house states as text: the require blocks
// of its house.hcl. They become rules like any other, run in the same engine,
// and can be waived, explained and set like those that are built in.
//
// A require block looks at one kind of thing and says what must hold of it,
// either ready-made (a least or greatest value of a figure, two figures that are
// equal, something that must be stated, a pattern of names) or as an expression.
// Expressions read the figures of the measurement document and what the spec
// states, under the names that both have, and every bare number in them is in
// the unit of the house file, as everywhere in it: a house that works in
// centimetres writes edge.allowance >= 3.
//
// A rule is compiled once. Names are looked up then, so that an unknown figure is
// told with its place and the names that are known, and the expression is run on
// figures without a value, which tells of wrong types. What is left runs on one
// thing after another: only the figures that the rule names are taken down, and
// only when they are asked for.
//
// A figure that cannot be had is null. Comparing or reckoning with it makes the
// look not possible, with the figure's name; it never counts as passed.
//
// Numbers are compared to a billionth, as the arithmetic of the computer is not
// exact. Expressions cannot read files, the clock or other garments, and the
// steps they may take are counted, so that no rule of a house can hold up the
// checking of a wardrobe.
package house
