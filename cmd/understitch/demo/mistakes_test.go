package demo

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

// One slip of the pen in a garment that may be cut is one finding, which forbids
// cutting, names the place where the slip is, and says how it is put right.
func TestOneMistakeIsOneFinding(t *testing.T) {
	const (
		pleat    = "fold  = centre # the pleat: 1.3 cm a side at the neck"
		shellHip = "fold  = centre\n    width = { waist = 18.7"
		lining   = "fold  = centre\n    width = { waist = inch(7 + 5/16)"
	)
	for _, c := range []struct {
		name, garment     string
		swap              []string
		rule, at, correct string
	}{
		{"a fold forgotten on the shell", "ball-gown", []string{"fold  = centre", "cut = 2"}, "edge-unused", "shell.centre-front.centre", "lay shell.centre-front.centre to the fold: fold = centre in place of cut = 2"},
		{"a fold forgotten, and no count", "frock-coat", []string{pleat, ""}, "edge-unused", "lining.back.centre", "lay lining.back.centre to the fold: fold = centre"},
		{"a fold forgotten where no other layer has one", "frock-coat", []string{pleat, "cut = 2"}, "edge-unused", "lining.back.centre", ""},
		{"a fold forgotten in every size", "rink-dress", []string{"fold  = centre", "cut = 2"}, "edge-unused", "shell.front.centre", "lay shell.front.centre to the fold: fold = centre in place of cut = 2"},
		{"a fold forgotten on a shell known by tape", "paper-skirt", []string{shellHip, "cut = 2\n    width = { waist = 18.7"}, "edge-unused", "shell.front.centre", "lay shell.front.centre to the fold: fold = centre in place of cut = 2"},
		{"a fold forgotten on a lining known by tape", "paper-skirt", []string{lining, "cut = 2\n    width = { waist = inch(7 + 5/16)"}, "edge-unused", "lining.front.centre", "lay lining.front.centre to the fold: fold = centre in place of cut = 2"},
		{"a share that lacks an edge of the lining", "ball-gown", []string{", foundation.side-back.top", ""}, "edge-unused", "foundation.side-back.top", "name foundation.side-back.top in share.top as well"},
		{"a share that lacks an edge of the shell", "ball-gown", []string{", shell.back.top]", "]"}, "edge-unused", "shell.back.top", "name shell.back.top in share.top as well"},
		{"a share that lacks an edge, by which all its notches are off", "frock-coat", []string{" lining.side.armhole,", ""}, "edge-unused", "lining.side.armhole", "name lining.side.armhole in share.armhole as well"},
		{"a share of lengths by tape that lacks an edge", "paper-skirt", []string{"outer = [shell.front.waist, shell.back.waist]", "outer = [shell.front.waist]"}, "edge-unused", "shell.back.waist", "name shell.back.waist in share.waist as well"},
		{"a share that names the edge of the other layer", "ball-gown", []string{"foundation.side-front.top,", "shell.side-front.top,"}, "edge-unused", "foundation.side-front.top", "write foundation.side-front.top for shell.side-front.top in share.top"},
		{"a seam that lacks an edge", "ball-gown", []string{" shell.side-front.basque,", ""}, "edge-unused", "shell.side-front.basque", "name shell.side-front.basque in seam.basque as well"},
		{"a piece of the shell cut once", "ball-gown", []string{"piece \"side-front\" {\n    cut   = 2", "piece \"side-front\" {\n    cut   = 1"}, "mirror-pair", "shell.side-front", "cut 2 of shell.side-front"},
		{"a piece cut once on which nothing lies", "frock-coat", []string{"cut    = 2", "cut    = 1"}, "mirror-pair", "shell.skirt", "cut 2 of shell.skirt"},
		{"a piece cut once that is closed to itself", "frock-coat", []string{"piece \"forepart\" {\n    cut   = 2", "piece \"forepart\" {\n    cut   = 1"}, "mirror-pair", "shell.forepart", "cut 2 of shell.forepart"},
		{"a piece on the fold cut twice", "rink-dress", []string{"fold  = centre\n    grain = [[9, 8], [9, 30]]", "fold  = centre\n    cut = 2\n    grain = [[9, 8], [9, 30]]"}, "mirror-pair", "brief.front", "cut 1 of brief.front"},
		{"the height of a level with its figures changed about", "ball-gown", []string{"y    = 18", "y    = 81"}, "body-ease", "foundation", ""},
		{"a notch written in inches", "ball-gown", []string{"at    = 35.25", "at    = 13.88"}, "notch-match", "seam.princess", "move shell.side-front.notch.bust to 35.24 cm along shell.side-front.princess"},
		{"a notch by tape for which inch was forgotten", "paper-skirt", []string{"at    = inch(8)", "at    = 8"}, "notch-match", "seam.lining-side", "move lining.front.notch.hip to 20.32 cm along lining.front.side"},
		{"a body measure in inches", "ball-gown", []string{"= 70", "= 27.5"}, "unit-slip", "garment", "read body.waist_girth as inches: 69.85 cm"},
		{"an edge drawn against the run of its piece", "ball-gown", []string{"smooth = [[0, 0], [4, 0.57], [16, 1.8], [38, 2.4], [42, 2.4]]", "smooth = [[42, 2.4], [38, 2.4], [16, 1.8], [4, 0.57], [0, 0]]"}, "outline-closed", "shell.skirt-back",
			"write the points of shell.skirt-back.waist in the other order: it is drawn against the run of its piece; all that is told of it here is put right with that"},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := changed(t, c.garment, c.swap...)
			require.Len(t, found, 1)
			require.Equal(t, c.rule, found[0].Rule.Name)
			require.Equal(t, c.at, found[0].Subject)
			require.Equal(t, rules.Error, found[0].Severity)
			if c.correct != "" {
				require.NotNil(t, found[0].Mend)
				require.Equal(t, c.correct, found[0].Mend.Title)
			}
		})
	}
}
