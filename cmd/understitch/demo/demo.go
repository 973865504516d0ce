// Package demo is the wardrobe that is built into the program, so that it can
// be tried without a pattern of one's own: garments of the Harbour Lane
// Playhouse, a theatre that does not exist. Every number in it is invented.
//
// Each garment is there twice. In the wardrobe's own folder it is in order and
// a check finds nothing; in the folder faulty its twin has a few faults of the
// kinds that are made in pattern rooms, told in words at the top of the file,
// and on each line where a finding must appear a comment says which:
//
//	smooth = [a, b, c] # fault shared-edge error 4.8mm
//
// The garments are a skating dress with a brief built in, a frock coat whose
// lining is cut larger than the shell, a quick-change waistcoat, a ball gown over
// a boned foundation, and a skirt of which there is no drawing, only tape
// measurements. One house file holds for all of them and their twins.
//
// They show how specs are written as much as what is found in them, so each
// draws its edges in another way. They are no patterns to cut clothes from.
package demo

import (
	"embed"
	"io/fs"
)

//go:embed *.hcl faulty/*.hcl
var wardrobe embed.FS

// Files is the wardrobe: house.hcl, the garments, and the folder faulty with
// their twins.
func Files() fs.FS { return wardrobe }
