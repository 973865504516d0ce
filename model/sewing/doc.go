// Package sewing lays the sides of a seam, a closure or a share along each
// other, as they lie under the needle, and measures what meets what: lengths
// from notch to notch, notches and their partners, allowances, grain, the
// corner at each end, and how two lines that should be the same differ.
//
// A [Walk] is one side laid out: its edges in the order in which they are sewn,
// darts closed. Distances run along the stitch line in millimetres from the
// joined start; angles are degrees. Which way round the second side runs is
// found from levels, notches and the ends of the edges; [Way] says by which. A
// side that is not drawn where its drawing is needed gives a
// [model.Missing].
//
// The package compares and does not judge: no limit is in it.
package sewing
