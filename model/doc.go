// Package model is the garment as a cutter sees it: layers made of pieces,
// pieces made of edges, darts and notches; seams, shares, insides and closures
// that join them; levels and the body they are compared with. It holds the
// nouns. What is done with them is in the packages above it, each of which
// imports only those before it:
//
//   - drafting: alterations, cut lines, outlines that cross themselves
//   - sewing: the sides of a join laid along each other
//   - measuring: widths and girths, round the body
//   - layering: one layer inside another
//
// A [Garment] is one garment in one size, or drafted for one wearer. Every
// length is in millimetres, whatever unit the spec was written in, and every
// angle in degrees. The frame is the drafting paper: x runs away from the
// drafting origin, y runs downward. A figure that was not stated is NaN, and
// [Known] says so.
//
// A figure is computed once, when it is first needed, and kept in the [Store]
// of the thing it belongs to; a Garment is therefore for one goroutine at a
// time. A figure that cannot be had returns a [*Missing], whose text gives the
// reason in words for the report ("shell.back.side has no drawing").
//
// The packages neither read files nor judge: package spec builds garments,
// package rules judges them. No limit of a rule is in any of them.
package model
