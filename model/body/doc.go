// Package body reads the tables that tell whom a garment is cut for. A table of
// wearers has a row a person and a column a measure, named as in a spec
// ("waist_girth"); the first column names the wearer. It is what a
// made-to-measure house keeps of its customers, or a survey of bodies that a
// style is tried on.
//
// Lengths come out in millimetres. A cell that is left blank is a measure that
// was not taken: the wearer simply has none of that name, and whatever needs it
// says so. Anything else that is not a sensible length is a diagnostic with
// file, line and column, and the table is refused as a whole: a table that is
// wrong in one place may be wrong in others.
//
// It also knows how some measures hang together in real bodies, so that one
// taken or written down wrong can be told by the others ([Likelihoods]).
//
// The package does not know which measures a spec uses, and judges nothing.
package body
