// Package measured writes down every figure that the model computes of a
// garment, as a plain document: lengths of edges, widths and girths at levels,
// what darts take in, where notches lie, how the sides of seams compare.
//
// The document has three readers: the cutter who wants the tape's figures
// without the tape, rules of a house written as text, and plugins. All lengths
// are in millimetres and areas in square millimetres, unrounded. A figure that
// cannot be had (a width where nothing is drawn) is left out; nothing is ever
// put in its place. Maps are keyed by the names of the spec and are written in
// the order of their keys, so that the same garment gives the same bytes.
//
// The package judges nothing and reads no files.
package measured
