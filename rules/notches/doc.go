// Package notches holds the rules over notches: that each has its partner on the
// other side of the seam, lies on the seam line as it is drawn now, and is not
// cut as deep as the stitch line.
//
// A seam whose sides differ in length is for package seams to report. Here a
// notch counts as misplaced only by as much as no spread of that difference
// could explain, so that one wrong length does not make a finding at every notch.
// How far notches keep from corners and from each other, and whether a piece
// could be sewn to a wrong one by them, is not judged here.
package notches
