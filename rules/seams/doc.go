// Package seams holds the rules over what is sewn together within a layer: that
// the two sides of a seam are equally long, that a dart's legs are, that a fold
// is straight, and that something is done with every edge.
//
// Lengths are always those of the stitch line with the darts closed. Notches
// serve here only to tell where along a seam a difference lies; whether they
// meet is for package notches. Shared edges of two layers are for package
// layers, and how two seam lines run into each other at a corner is for the
// rules over truing.
package seams
