package rules

import (
	"understitch/model"
	"understitch/model/layering"
)

// Status is how a look ended.
type Status uint8

// The ways a look can end.
const (
	Passed Status = iota
	Found
	Waived
	NotPossible
)

// Outcome is what one look of a rule at one thing, in one size, came to.
type Outcome struct {
	Rule     *Rule
	Subject  string // the thing's address
	Key      string // tells several figures of one thing apart: a level, a notch
	End      string // "start" or "end", where it is a figure at one end of a seam or a share
	Status   Status
	Severity Severity

	Numeric  bool
	Measured float64 // in Unit
	Limit    float64
	Margin   float64 // room to spare; negative when broken
	Room     float64 // the margin at its best, that the margin is compared with; 0 when unknown
	Off      float64 // how far from what is meant, never negative; waivers' windows go by it
	Unit     Unit

	Message string // findings: what is wrong, with the figure and what to correct
	Reason  string // not possible: why
	Place   model.Place
	Spot    layering.Spot
	Related []Related
	Mend    *Mend
	Size    string
	account Account

	cures   []Cure
	under   []Under     // findings that would make it redundant
	covers  []gatherKey // those of them that were made in the same size
	only    bool        // told only where something follows from it
	because gatherKey   // the finding that it follows from; zero where it stands by itself
}

// Related is another place that a finding has to do with.
type Related struct {
	Message string      `json:"message"`
	Place   model.Place `json:"range"`
}

// Mend is a correction. Safe ones may be made without a look.
type Mend struct {
	Title string `json:"title"`
	Safe  bool   `json:"safe"`
	Edits []Edit `json:"edits"`
}

// Edit replaces a stretch of a file by a text.
type Edit struct {
	Place model.Place `json:"range"`
	Text  string      `json:"text"`
}
