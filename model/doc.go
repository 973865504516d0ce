// Package model is the garment as a cutter sees it: layers made of pieces,
// pieces made of edges, darts and notches; seams, shares, insides and closures
// that join them; levels and the body they are compared with.
//
// A [Garment] is one garment in one size, or drafted for one wearer. Every
// length in it is in millimetres, whatever unit the spec was written in. The
// frame is the drafting paper: x runs away from the drafting origin, y runs
// downward. A figure that was not stated is NaN, and [Known] says so.
//
// The computed figures (lengths with the darts closed, widths at levels,
// girths, what lies along a seam) are methods. Each is computed once, when a
// rule first asks for it, and kept; a Garment is therefore for one goroutine
// at a time. A figure that cannot be had returns a [*Missing] whose text says
// why in words for the report ("shell.back.side has no drawing").
//
// The package neither reads files nor judges: package spec builds garments,
// package rules judges them.
package model
