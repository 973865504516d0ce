// Package report turns what was found out about garments into documents for
// people and for machines.
//
// Everything starts from a [Document]: the plain record of a run, the same
// whatever the format, with the shapes of the JSON report. [Of] makes it from
// the inspected garments. Each format is one file with one function that writes
// a Document; [Formats] lists them. A format reads nothing but the Document, so
// that a report read back from its JSON form can be written out in any other.
//
// The package does not check anything and does not decide the exit status; it
// only says, in [Document.Verdict] and [Garment.Verdict], what the cutter may
// do.
package report
