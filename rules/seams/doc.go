// Package seams holds the rules over what is sewn together within a layer: that
// the two sides of a seam are equally long, with the ease on the right side, that a
// line runs on smoothly over a seam, that a dart's legs are equal, that a fold is
// straight, and that something is done with every edge.
//
// Lengths are always those of the stitch line with the darts closed. Notches
// serve here only to tell where along a seam a difference lies; whether they
// meet is for package notches. Shared edges of two layers are for package layers.
package seams
