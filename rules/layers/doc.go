// Package layers holds the rules about what lies under what: a lining in a
// coat, a brief in a dress, a foundation under a gown.
//
// Layers are drafted one after the other, often by different hands and weeks
// apart, and altered one at a time. Each can be right by itself and the garment
// still not go together, which shows only when both are cut. These rules lay
// the layers' edges and pieces on each other as they will be sewn.
//
// How layers belong together is said in the spec, by shares and insides: an inner
// layer is not always the smaller one, and a lining that is cut larger on
// purpose is as right as a foundation that is cut smaller. One fault is
// reported once: what a length explains is not found again at every notch, and
// what the pieces show at a level is not found again in the girth.
package layers
