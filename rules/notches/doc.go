// Package notches holds the rules over notches: that each has its partner on the
// other side of the seam, lies on the seam line as it is drawn now, is not cut as
// deep as the stitch line, keeps clear of corners, darts and its neighbours, and
// that no two seams of a layer are notched alike.
//
// A seam whose sides differ in length is for package seams to report. Here a
// notch counts as misplaced only by as much as no spread of that difference
// could explain, so that one wrong length does not make a finding at every notch.
// What a notch should be like, single in front and double behind, is left to the
// house.
package notches
