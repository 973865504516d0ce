package model

// Alteration re-draws edges after a fitting: each is moved sideways, towards
// its own cloth, by the amounts stated at levels.
type Alteration struct {
	Name   string
	Edges  []*Edge
	Inward []LevelValue // sideways: positive takes in, negative lets out
	Down   []MarkValue  // down the paper, of edges that lie across: negative lifts
	Place  Place
}

// MarkValue is an amount, in millimetres, at a place along an edge: a level, a
// notch, or one of its ends.
type MarkValue struct {
	Name  string // as written: a level, a notch, start, end, or the edge met at an end
	Level *Level // nil where it is no level
	Value float64
	Place Place
}

// Address of an alteration: "alter.second-fitting".
func (a *Alteration) Address() string { return "alter." + a.Name }

// Where the alteration's block stands.
func (a *Alteration) Where() Place { return a.Place }

// OneFrame reports whether all pieces are drawn, in one frame, so that a height is
// the same in all.
func (n *Inside) OneFrame() bool { return n.AsDrawn() && n.Outer.Drawn() && n.Inner.Drawn() }

// Mark is a place along an edge: its start or end, a level, or a notch.
type Mark struct {
	Kind  MarkKind
	Level *Level
	Notch string // the notch's name on that edge's piece
	Text  string // as written
	Place Place
}

// MarkKind tells what a Mark refers to.
type MarkKind uint8

// The kinds of Mark. The zero Mark means "not stated".
const (
	NoMark MarkKind = iota
	AtStart
	AtEnd
	AtLevel
	AtNotch
)

// Stretch is an edge, or the part of it between two marks.
type Stretch struct {
	Edge     *Edge
	From, To Mark // NoMark for the whole edge
	Place    Place
}

// Seam joins two sides; each side is one or more stretches sewn on end to end.
type Seam struct {
	Name  string
	Sides [2][]Stretch
	Ease  Range // how much longer the first side may be than the second
	Flip  *bool // which way round, where it is stated
	Place Place
	Join  Place // the join attribute
}

// Match tells how alike shared edges must be.
type Match string

// The kinds of Match.
const (
	Identical  Match = "identical"
	SameLength Match = "length"
	Eased      Match = "eased"
)

// Share names edges that two layers have in common.
type Share struct {
	Name         string
	Outer, Inner []Stretch
	Match        Match
	Ease         Range     // eased: how much longer the outer side may be than the inner, in all
	EasePlace    Place     // where that is stated
	Over         []Stretch // eased: where the ease lies; none where it may lie anywhere
	Flip         *bool     // which way round, where it is stated
	Place        Place

	Store Store // what is computed of it
}

// Inside tells which inner piece lies in which outer piece.
type Inside struct {
	Name         string
	Outer, Inner Group
	Align        *Share   // nil: drawn in one frame
	Laid         bool     // it says itself that they lie as they are drawn
	AlignEnd     MarkKind // of an eased share: the end that they are laid together by; NoMark without one
	Clearance    []LevelRange

	ClearanceFrom []LevelRange // from a level down, all along

	Place Place

	Store Store // what is computed of it
}

// Tape is a fastener tape.
type Tape struct {
	Name        string
	Kind        string // "snap" or "hook-and-eye"
	Pitch       float64
	Head        float64   // metal along the tape
	Clear       float64   // least distance from metal to a cut
	WidthClosed []float64 // one for each row of eyes
	Place       Place
	Stated      Attributes
}

// Closure opens and closes the garment along a pair of edges.
type Closure struct {
	Name      string
	Kind      string // zip, button, tape or lacing
	Tape      *Tape
	OtherTape *Tape // the other half when it is another tape; nil otherwise
	Edges     Opening
	Also      []Opening // what the same opening closes on other layers
	Half      string    // Left or Right as worn, where the other half is sewn; "" without one
	From, To  Mark
	Gap       *Range      // how far the edges of a lacing may lie apart; nil where it is not stated
	First     *[2]float64 // from the upper end of each side to the middle of its first fastener; nil where it is not stated
	Row       int         // which row of eyes is used, from 1
	Stock     []float64   // lengths a zip is sold in
	Lap       float64     // how far one edge laps over the other when closed
	Needs     float64     // allowance it needs; NaN lets the house tell

	// What buttons need; the lengths are NaN when not stated.
	Buttons   []float64 // their places along the first edge, from where the closure begins
	Diameter  float64
	Thickness float64
	Extension float64 // how far the edge runs on past the centre of the buttons

	Place  Place
	Stated Attributes
}

// Elastic is sewn to edges, stretched.
type Elastic struct {
	Name   string
	Edges  []Stretch
	Length float64
	Ratio  Range

	// Sections are the parts of it, each stretched by a ratio of its own; none where
	// Ratio holds for all of it.
	Sections []Section

	Place Place
}

// Section is a part of an elastic.
type Section struct {
	Name  string // "" without one
	Along []Stretch
	Ratio Range
	Place Place
}

// Bone lies along an edge or seam line.
type Bone struct {
	Name   string
	Along  Stretch
	Length float64
	Place  Place
}

// RunItem is a part of a measured run: a stretch of edge, or a closed closure.
type RunItem struct {
	Stretch *Stretch
	Closure *Closure
	Place   Place
}

// Measure is a tape run over the pattern, compared with the body.
type Measure struct {
	Name     string
	Along    []RunItem
	From, To Mark
	Against  float64 // NaN when the wearer's measure is not known
	Body     string  // the body measure's name
	Ease     Range
	Place    Place
}

// Waiver accepts a finding, with the reason.
type Waiver struct {
	Rule   string
	At     string // address of the subject
	Figure string // which of several figures of it: its key; "" where it names none
	Level  string // the figure at this level
	End    string // the figure at this end: "start" or "end"
	Size   string // in this size, or on this wearer, alone
	Reason string
	UpTo   *LimitSetting // nil: any figure
	Until  string        // ISO date, the last day it holds; "" without end
	Place  Place
}
