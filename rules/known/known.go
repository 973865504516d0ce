// Package known keeps findings that a pattern room has accepted for now: the
// faults that a thousand existing styles already had when the room began to check
// them. What is known is no longer told as a fault; what is new, or worse than it
// was, still is. A waiver says why one fault is meant and stands in the spec; a
// known finding says nothing but that it was there.
//
// A finding is known by the garment's file, the rule, the thing's address and the
// key of the figure, never by a line, so that editing elsewhere in the spec leaves
// it known. The value beside them is how far off it was: a finding that is further
// off is in force again. What is told as coming of a finding is known by itself.
//
// The file is text, one finding a line as JSON, in the order of its fields, so
// that two runs write the same bytes and a review shows what came and went. It
// grows only where that is asked for, and shrinks whenever it is written: what is
// mended is taken out, what is less far off is held to that.
//
// The package opens no files and prints nothing.
package known

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/rules"
)

// Entry is one finding that is known. File is the garment's, named from the
// folder of the known file with slashes.
type Entry struct {
	File string   `json:"file"`
	Rule string   `json:"rule"`
	At   string   `json:"at"`
	Key  string   `json:"key,omitempty"`
	Off  *float64 `json:"off,omitempty"` // how far from what is meant; nil for a finding without a figure
	Unit string   `json:"unit,omitempty"`

	line int // in the file it was read from
}

func (e Entry) key() key { return key{e.File, e.Rule, e.At, e.Key} }

// key is what a finding is known by.
type key struct{ file, rule, at, key string }

// File is what a known file holds.
type File struct {
	Name    string // as it was given, for messages
	entries map[key]Entry
}

// Empty is a known file that holds nothing yet.
func Empty(name string) *File { return &File{name, map[key]Entry{}} }

// Len is how many findings are known.
func (k *File) Len() int { return len(k.entries) }

// steps is how finely values are written: a thousandth of a millimetre, a
// degree, a percent or a ratio.
const steps = 1000

// value is how far off a finding is, rounded up to what is written.
func value(f rules.Finding) *float64 {
	if !f.Numeric || math.IsInf(f.Off, 0) || math.IsNaN(f.Off) {
		return nil
	}
	v := max(math.Ceil(f.Off*steps-1e-6)/steps, 0)
	return &v
}

// worse reports whether a finding is further off than what is known of it.
func (e Entry) worse(f rules.Finding) bool {
	v := value(f)
	return v != nil && (e.Off == nil || e.Unit != string(f.Unit) || *v > *e.Off)
}

// Apply moves the known findings of one garment from those in force to those
// accepted. One that is worse than it was stays, with a pointer to what is
// known; so does one of a rule whose findings cannot be accepted. What follows
// from another finding is known by itself, whether that one is known or not.
func (k *File) Apply(file string, r *rules.Result, g model.Unit) {
	known := func(f rules.Finding) (e Entry, there, accepted bool) {
		e, there = k.entries[key{file, f.Rule.Name, f.Subject, f.Key}]
		there = there && f.Rule.Firm == ""
		return e, there, there && !e.worse(f)
	}
	r.Accept(func(f *rules.Finding) *model.Waiver {
		e, there, accepted := known(*f)
		switch {
		case accepted:
			return &model.Waiver{Rule: f.Rule.Name, At: f.Subject, Reason: "known, and no worse than it was", Place: k.place(e)}
		case there:
			f.Related = append(slices.Clip(f.Related), rules.Related{Message: e.outgrown(g), Place: k.place(e)})
		}
		return nil
	})
}

// outgrown says what a finding was known as that is worse now.
func (e Entry) outgrown(u model.Unit) string {
	if e.Off == nil {
		return "known without a figure"
	}
	text := model.Decimal(*e.Off, 3) + " " + e.Unit
	if e.Unit == string(rules.Millimetres) {
		text = (&model.Garment{Unit: u}).Show(*e.Off)
	}
	return "known as " + text + " off, and worse now"
}

func (k *File) place(e Entry) model.Place {
	at := model.Pos{Line: max(e.line, 1), Column: 1}
	return model.Place{File: k.Name, Start: at, End: at}
}

// Checked is what became of one garment in a run.
type Checked struct {
	File     string // named from the folder of the known file with slashes
	Complete bool   // all of it was checked
	Result   *rules.Result
}

// Change is what writing a known file anew does to it.
type Change struct {
	Gone, Lowered, Added int
	New                  int // findings that are not known, or worse, and were not added
}

// Update gives the file as it is after a run. What is no longer found is taken
// out, what is less far off is held to that; with add, what is new or worse is
// put in. Entries of garments that were not checked, or not in full, stay as they
// are, as long as there still is such a file. Nothing is lost that was not looked
// at.
func (k *File) Update(checked []Checked, add bool, exists func(file string) bool) (*File, Change) {
	out, change := Empty(k.Name), Change{}
	looked := map[string]bool{}
	for _, c := range checked {
		looked[c.File] = c.Complete
		for _, f := range c.Result.Raw() {
			if f.Rule.Firm != "" {
				continue
			}
			if c.Result.RestsOn(f, func(o *rules.Finding) bool { return o.Rule.Firm != "" }) {
				// Where the firm finding is put right it may be gone: what was known stays known, new of it is not.
				if old, there := k.entries[key{c.File, f.Rule.Name, f.Subject, f.Key}]; there {
					out.entries[old.key()] = old
				}
				continue
			}
			fresh := Entry{File: c.File, Rule: f.Rule.Name, At: f.Subject, Key: f.Key, Off: value(f)}
			if fresh.Off != nil {
				fresh.Unit = string(f.Unit)
			}
			old, known := k.entries[fresh.key()]
			switch {
			case known && !old.worse(f):
				if old.Off != nil && (fresh.Off == nil || *fresh.Off < *old.Off) {
					change.Lowered++
				}
			case add:
				change.Added++
			case known:
				fresh = old
				change.New++
			default:
				change.New++
				continue
			}
			out.entries[fresh.key()] = fresh
		}
	}
	for at, e := range k.entries {
		if _, kept := out.entries[at]; kept {
			continue
		}
		complete, was := looked[e.File]
		if was && !complete || !was && exists(e.File) {
			out.entries[at] = e
			continue
		}
		change.Gone++
	}
	return out, change
}

// Entries are in the order in which they are written.
func (k *File) Entries() []Entry {
	list := make([]Entry, 0, len(k.entries))
	for _, e := range k.entries {
		list = append(list, e)
	}
	slices.SortFunc(list, func(a, b Entry) int {
		return cmp.Or(strings.Compare(a.File, b.File), strings.Compare(a.Rule, b.Rule), strings.Compare(a.At, b.At), strings.Compare(a.Key, b.Key))
	})
	return list
}

// String tells of a change in words.
func (c Change) String() string {
	text := fmt.Sprintf("%d taken out, %d lowered, %d added", c.Gone, c.Lowered, c.Added)
	if c.New > 0 {
		text += fmt.Sprintf("; %d new or worse not added", c.New)
	}
	return text
}
