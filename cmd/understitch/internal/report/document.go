package report

import (
	"understitch/model"
	"understitch/rules"
	"understitch/rules/inspect"
)

// Version is the version of the document's shape.
const Version = 1

// Document is the record of one run.
type Document struct {
	Version  int        `json:"version"`
	Tool     Tool       `json:"tool"`
	Garments []*Garment `json:"garments"`
	Summary  Summary    `json:"summary"`

	// Least is the severity from which a finding keeps the cloth from being cut.
	Least rules.Severity `json:"-"`
	// Rules are those that were judged by, with their documentation.
	Rules []*rules.Rule `json:"-"`
	// Source gives the text of a file that findings point into, or nil.
	Source func(file string) []byte `json:"-"`

	inspected []*inspect.Report // what the garments were made from; none when read back
}

// Tool names the program that wrote the document.
type Tool struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// Garment is everything about one garment file.
type Garment struct {
	File        string             `json:"file"`
	Name        string             `json:"garment"` // "" when the file could not be read
	Title       string             `json:"title,omitempty"`
	Unit        string             `json:"unit,omitempty"` // the spec's own, in which people read its lengths
	Sizes       []string           `json:"sizes"`
	Wearers     bool               `json:"wearers,omitempty"` // Sizes are wearers of a table
	Complete    bool               `json:"complete"`
	Findings    []Finding          `json:"findings"`
	Waived      []Waived           `json:"waived"`
	NotPossible []NotPossible      `json:"not_possible"`
	Passed      int                `json:"passed"`
	Closest     []Close            `json:"closest"`
	Diagnostics []model.Diagnostic `json:"diagnostics"`
}

// Finding is one fault, over all the sizes it shows at.
type Finding struct {
	Rule      string   `json:"rule"`
	Severity  string   `json:"severity"`
	Subject   string   `json:"subject"`
	Key       string   `json:"key,omitempty"` // which of the figures that the rule takes there
	Message   string   `json:"message"`
	Sizes     []string `json:"sizes"`
	WorstSize string   `json:"worst_size,omitempty"`
	*Figure
	Range       model.Place     `json:"range"`
	Related     []rules.Related `json:"related"`
	Mend        *rules.Mend     `json:"mend,omitempty"`
	Fingerprint string          `json:"fingerprint"`
}

// Figure is what was measured, against what. A finding without one leaves it
// out whole.
type Figure struct {
	Measured float64 `json:"measured"`
	Limit    float64 `json:"limit"`
	Margin   float64 `json:"margin"` // room to spare, negative when broken
	Unit     string  `json:"unit"`
	Spread   float64 `json:"spread,omitempty"` // how far the figures of its sizes lie apart
}

// Waived is a finding that the spec accepts, and why.
type Waived struct {
	Finding
	Waiver Waiver `json:"waiver"`
}

// outside reports whether what accepts the finding stands in no spec, but in a
// file of known findings.
func (w Waived) outside(g *Garment) bool { return w.Waiver.Range.File != g.File }

// Waiver is the acceptance of a finding.
type Waiver struct {
	Reason string      `json:"reason"`
	Until  string      `json:"until,omitempty"`
	Range  model.Place `json:"range"`
}

// NotPossible is a check that could not be made.
type NotPossible struct {
	Rule    string `json:"rule"`
	Subject string `json:"subject"`
	Reason  string `json:"reason"`
}

// Close is a check that passed, with the room it has left.
type Close struct {
	Rule      string   `json:"rule"`
	Subject   string   `json:"subject"`
	Key       string   `json:"key,omitempty"`      // which of the figures that the rule takes there
	Likewise  []string `json:"likewise,omitempty"` // others of which the rule says the very same
	Sizes     []string `json:"sizes"`
	WorstSize string   `json:"worst_size,omitempty"`
	Figure
}

// Summary counts over all garments.
type Summary struct {
	Garments    int `json:"garments"`
	Errors      int `json:"errors"`
	Warnings    int `json:"warnings"`
	Notes       int `json:"notes"`
	Waived      int `json:"waived"`
	Passed      int `json:"passed"`
	NotPossible int `json:"not_possible"`
	Unreadable  int `json:"unreadable"` // garments that were not checked in full
}

// count adds a garment to the summary.
func (s *Summary) count(g *Garment) {
	s.Garments++
	for _, f := range g.Findings {
		switch f.Severity {
		case rules.Error.String():
			s.Errors++
		case rules.Warning.String():
			s.Warnings++
		default:
			s.Notes++
		}
	}
	s.Waived += len(g.Waived)
	s.Passed += g.Passed
	s.NotPossible += len(g.NotPossible)
	if !g.Complete {
		s.Unreadable++
	}
}
