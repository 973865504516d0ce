package drawing

import (
	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
)

// Sheet is the drawing of one garment in one size.
type Sheet struct {
	Title  string // of the garment; its name where it has none
	Name   string
	Size   string // "" where the spec names no sizes
	Layers []Layer
	Panels []*Panel

	Findings  []Finding // all of them
	Elsewhere []Finding // belong to no one place in the drawing
}

// Layer is a layer of the garment, for the legend and for hiding it.
type Layer struct {
	Name  string
	Side  model.Side
	Cloth string // the fabric's name; "" when not stated
}

// PanelKind tells what a panel shows.
type PanelKind uint8

// The kinds of panel, in the order they come in.
const (
	Laid  PanelKind = iota // the inner pieces of an inside laid on its outer ones
	Alone                  // one piece by itself
	Strip                  // two sides laid along each other, made straight
	Taped                  // a fastener tape on its edge
)

// Panel is a part of the drawing that stands by itself.
type Panel struct {
	Kind    PanelKind
	Subject string // the address of what is shown: "inside.front", "seam.side"
	Title   string // the same in words
	Facts   []string
	Layers  []string   // names of the layers that are in it
	Box     curve.Box  // all of it, room for words included
	Point   float64    // millimetres a point of pens, signs and words
	Beside  [4]float64 // points beside the cloth, left, right, above and below, which stay when the cloth is drawn larger
	Marks   []Mark
	Repeats bool   // all of it is shown in another panel too
	Missing string // why nothing can be drawn; "" when something is
}

// Kind tells what a mark stands for.
type Kind uint8

// The kinds of mark.
const (
	StitchLine Kind = iota
	CutLine
	DraftedLine // where the stitch line lay before the alterations
	FoldLine
	GrainLine
	DartLeg
	DartTip
	NotchMark
	LevelLine
	LevelWidth // the level's name and what is measured there
	PieceName
	EdgeName
	PairLine // from a notch to the one it is laid on
	Figure   // a figure that is no finding
	TapeLine // the outline of a tape
	Metal    // a fastener's head, filled
	Clear    // what must stay clear beside it
	CutEnd   // where the tape is cut
	Trouble  // the line or stretch that a finding is about
	Found    // a finding's tag
	Base     // the base line of a strip
)

// Sign is a small figure of a size in points, drawn at a mark's At.
type Sign uint8

// The signs. An arrowhead points along Dir.
const (
	NoSign Sign = iota
	ArrowHead
	Dot
	Ring
	Cross
	Leader // a line of Reach points along Dir
	Tag    // a finding's tag, with a leader of Reach points along Dir
)

// Align tells on which side of At a text lies.
type Align uint8

// The alignments.
const (
	Middle Align = iota
	Start        // the text starts at At
	End          // the text ends at At
)

// Mark is one thing on the sheet. It may have a line, a sign and a text, each of
// them or only one.
type Mark struct {
	Kind    Kind
	Layer   string     // the layer it belongs to; "" for none
	Side    model.Side // where that layer lies
	Subject string     // the address of what it stands for; may be ""

	Line   *curve.Path
	Closed bool // the line goes round; it is filled where its kind is Metal or Clear

	At    curve.Point
	Dir   curve.Point // of length 1, where the sign or the text has a direction
	Sign  Sign
	Reach float64 // how far along Dir a tag or a text stands off At, in points

	Text  []string // lines, from the top
	Align Align
	Bold  bool
	Small bool

	Severity string   // of a finding: error, warning or note
	Numbers  []string // of the findings the tag stands for
}

// Finding is what the drawing has to know of a finding.
type Finding struct {
	Number   string // as the report numbers it
	Severity string // error, warning or note
	Subject  string // the address it is about
	Key      string // which of several figures of it: often a level's name, or the address of a notch
	Figure   string // the figure as it is shown; "" for none
	Message  string // what is wrong and what to do, in words; "" where the reader has it elsewhere

	Places []model.Place // the lines of the spec that it has to do with
	Spot   layering.Spot // where on a piece it lies; nothing where that is the whole of what it is about
}

// Options say how a sheet is drawn.
type Options struct {
	Point float64 // millimetres a point; 0 fits each panel to a screen
	Wide  float64 // points that a panel may take across, its words included; 0 for as many as a desk has
}

// TextSize is the height of plain words in points, SmallSize that of small ones.
const (
	TextSize  = 12.0
	SmallSize = 10.5
	LineStep  = 13.5 // from line to line
	TagSize   = 9.0  // half the height of a finding's tag
)
