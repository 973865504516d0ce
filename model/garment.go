package model

import "understitch/model/curve"

// Garment is one garment in one size or for one wearer.
type Garment struct {
	File  string // the spec it came from, as the user named it
	Name  string
	Title string
	Place Place
	Unit  Unit // the unit the spec is written in, for messages

	Size  string   // the size or wearer at hand; "" when the spec names none
	Sizes []string // all sizes of the spec, in its order

	Body   map[string]float64 // the wearer's measures
	BodyAt map[string]Place   // where the spec or the house states each; none for a wearer of a table
	Levels []*Level           // from the spec's order
	Layers []*Layer

	Seams    []*Seam
	Shares   []*Share
	Insides  []*Inside
	Closures []*Closure
	Elastics []*Elastic
	Bones    []*Bone
	Measures []*Measure
	Waivers  []*Waiver

	Alterations []*Alteration // in the order they were made

	Standards []*Standard // the house's allowances by role

	// Anew builds the garment again, to see what would come of a change that is
	// made before its alterations are; it gives nil where none comes of it. Nil
	// for a garment that no spec stands behind.
	Anew func(change func(*Garment)) *Garment

	// As builds the garment again as if the spec's bare figures were in another unit,
	// bare without its alterations; it gives nil where no garment comes of it.
	As func(u Unit, bare bool) *Garment

	Store Store // what is computed of it
}

// Level is a horizontal line of the draft that all pieces drawn in the common
// frame share: bust, waist, hip.
type Level struct {
	Name    string
	Y       float64
	Body    float64 // what the wearer measures there; NaN when not stated
	Measure string  // the body measure's name, "" when Body is a plain figure
	Place   Place
}

// Side tells where a layer lies.
type Side string

// The places a layer can have.
const (
	Outer   Side = "outer"
	Inner   Side = "inner"
	Between Side = "between"
)

// Layer is a set of pieces of one cloth.
type Layer struct {
	Name   string
	Side   Side
	Order  int // 0 is the outermost; grows inward
	Fabric *Fabric
	Ease   []LevelRange // finished girth minus body, by level

	Standard *Standard // of its edges that have no role of their own; nil for the fabric's or the house's
	Pieces   []*Piece
	Place    Place
}

// LevelRange is a range that holds at one level.
type LevelRange struct {
	Level *Level
	Range Range
	Place Place
}

// Fabric is what a layer is cut from. Shares are in percent; NaN when not
// stated.
type Fabric struct {
	Name                      string
	Thickness                 float64
	StretchAcross             float64
	StretchAlong              float64
	ShrinkAcross, ShrinkAlong float64
	Washed                    bool      // before it is cut
	Standard                  *Standard // of edges cut from it that have no role of their own; nil for the house's
	Place                     Place
	Stated                    Attributes
}

// Drawing tells which line of a piece was drawn.
type Drawing string

// A piece is drawn net, on its stitch line, or with its allowances.
const (
	StitchLine Drawing = "stitch"
	CutLine    Drawing = "cut"
)

// Piece is one pattern piece. Its edges run round it in drawing order, each
// starting where the last one ended.
type Piece struct {
	Name     string
	Layer    *Layer
	Cut      int  // how many are cut
	Mirrored bool // whether several are cut as mirrored pairs
	Fold     *Edge
	DrawnOn  Drawing
	Grain    []curve.Point // two points, or none
	CutOn    string        // which way of the cloth: see OnStraight
	Edges    []*Edge
	Darts    []*Dart // and the pleats and tucks, which fold cloth away too
	Notches  []*Notch
	Place    Place

	OwnLevels bool         // the piece is drafted in a frame of its own
	LevelsAt  []LevelValue // the heights of levels in that frame
	Widths    []LevelValue // paper pieces: measured across, darts closed

	TracedFrom *Piece  // the piece that it is traced from as a whole; nil without one
	Ends       *Ends   // where it is cut off straight across; nil where it is not
	CutOff     []*Edge // the edges that lay below that

	Store Store // what is computed of it
}

// LevelValue is a figure that holds at one level.
type LevelValue struct {
	Level *Level
	Value float64
	Place Place
}

// Edge is one side of a piece, on the stitch line.
type Edge struct {
	Name        string
	Piece       *Piece
	Index       int
	Path        *curve.Path // nil when the edge is known by tape alone
	Cut         *curve.Path // the cut line, where that was drawn; nil otherwise
	CutDrawn    *curve.Path // the cut line as it was drawn beside the stitch line; nil otherwise
	CutPlace    Place       // where that is
	Drafted     *curve.Path // the line before the garment's alterations; nil when they left it
	PaperLength float64     // measured by tape; NaN when drawn
	Allowance   Allowance
	Finish      string // hem, faced, bound, raw …; "" when not stated
	Role        string // the house standard it follows; "" lets the garment tell
	Traced      *Trace // how it was traced from another edge; nil when it was drawn by itself
	Place       Place

	Store Store // what is computed of it
}

// Allowance is the seam allowance along an edge.
type Allowance struct {
	Width float64 // NaN when none is stated anywhere
	Own   bool    // stated on the edge itself, not taken from the piece or house
	Place Place   // where it is stated
}

// Dart is a dart on an edge (On set; Tip may be unknown on paper) or inside the
// piece with two points (Centre, Up and Down set).
type Dart struct {
	Name   string
	Piece  *Piece
	On     *Edge
	At     float64 // middle of the mouth along the edge as drawn, mouth open
	Intake float64 // width of the mouth, or at the widest place
	Tip    curve.Point
	HasTip bool
	Centre curve.Point
	Up     float64 // from the centre to the upper point
	Down   float64
	Pleat  *Pleat // how it is folded where it is a pleat or a tuck; nil for a dart
	Traced *Dart  // the dart that it came along with; nil when it is the piece's own
	Place  Place
}

// Notch is a mark on an edge. It was given by exactly one of At, Level and
// Point.
type Notch struct {
	Name    string
	Piece   *Piece
	On      *Edge
	At      float64 // along the edge as drawn; NaN unless given
	Level   *Level
	Point   curve.Point
	ByPoint bool
	Kind    string
	Depth   float64 // NaN when not stated
	Traced  *Notch  // the notch that it came along with; nil when it is the piece's own
	Place   Place
	Given   Place // the attribute that fixes it
	Deep    Place // the attribute that states its depth
}

// Standard is an allowance for one role: the house's, or, for edges without a role of
// their own, that of a layer or a fabric.
type Standard struct {
	Of    string // the address of the layer or fabric; "" for the house
	Role  string
	Width float64
	Place Place
}
