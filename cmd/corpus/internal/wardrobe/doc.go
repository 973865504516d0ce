// Package wardrobe makes layered garments of the Harbour Lane Playhouse, an
// invented theatre, that are in order: every seam walks, the layers lie in each
// other as they should, and all sizes grow alike. Each kind of garment has a
// file of its own; chance chooses its measures, lengths and cloths.
//
// The shapes are built so that they are right by construction: sides that are
// sewn together are one line moved sideways, lines that run over a seam meet it
// square on both pieces, and what grows with the sizes moves sideways only, so
// that no curve changes its length. They are no patterns to cut clothes from.
package wardrobe
