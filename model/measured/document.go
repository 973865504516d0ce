package measured

// Version is the version of the document's shape.
const Version = 1

// Document is the figures of several garments.
type Document struct {
	Version  int       `json:"version"`
	Garments []Garment `json:"garments"`
}

// Garment is the figures of one garment in each of its sizes.
type Garment struct {
	File  string `json:"file"`
	Name  string `json:"garment"`
	Sizes []Size `json:"sizes"`
}

// Size is the figures of one garment in one size, or for one wearer. Size is
// "" where the spec names none.
type Size struct {
	Size     string             `json:"size"`
	Layers   map[string]Layer   `json:"layers"`
	Seams    map[string]Pair    `json:"seams"`
	Shares   map[string]Share   `json:"shares"`
	Insides  map[string]Inside  `json:"inside"`
	Closures map[string]Closure `json:"closures"`
	Runs     map[string]Run     `json:"runs"`
	Elastics map[string]Elastic `json:"elastics"`
	Bones    map[string]Bone    `json:"bones"`
}

// Levels are lengths at levels, by the level's name.
type Levels map[string]float64

// Layer is a layer's girths and pieces.
type Layer struct {
	Girth  Levels           `json:"girth"`
	Pieces map[string]Piece `json:"pieces"`
}

// Piece is one piece as it is drawn; on a fold, half of the finished part.
type Piece struct {
	Area      *float64         `json:"area,omitempty"`
	Perimeter *float64         `json:"perimeter,omitempty"`
	Width     Levels           `json:"width"` // darts closed
	Edges     map[string]Edge  `json:"edges"`
	Darts     map[string]Dart  `json:"darts"`
	Pleats    map[string]Pleat `json:"pleats,omitempty"`
	Notches   map[string]Notch `json:"notches"`
}

// Edge is one edge on the stitch line: as drawn, with its darts closed, and
// the allowance beyond it.
type Edge struct {
	Length     *float64 `json:"length,omitempty"`
	SewnLength *float64 `json:"sewn_length,omitempty"`
	Allowance  *float64 `json:"allowance,omitempty"`
	Drafted    *float64 `json:"drafted_length,omitempty"` // before the alterations, where they changed it
	TracedFrom string   `json:"traced_from,omitempty"`    // the edge that it is traced from
}

// Dart is what a dart takes in, and its two legs.
type Dart struct {
	Intake *float64    `json:"intake,omitempty"`
	Legs   *[2]float64 `json:"legs,omitempty"`
}

// Pleat is what a pleat or tuck folds away along its edge: all of it, and what of
// it the drawn piece carries, which at a fold is half.
type Pleat struct {
	Kind    string   `json:"kind"`
	Depth   *float64 `json:"depth,omitempty"`
	TakesUp *float64 `json:"takes_up,omitempty"`
	Drawn   *float64 `json:"drawn,omitempty"`
}

// Notch is where a notch lies: along its edge as drawn, and on the paper.
type Notch struct {
	On string   `json:"on"`
	At *float64 `json:"at,omitempty"`
	X  *float64 `json:"x,omitempty"`
	Y  *float64 `json:"y,omitempty"`
}

// Pair is two sides that are sewn together or shared, darts closed. Difference
// is the first less the second. Way is "along" where the second side runs as it
// is drawn when the first does, "against" where it runs the other way, and
// FoundBy tells by what that was found.
type Pair struct {
	Sides      *[2]float64 `json:"sides,omitempty"`
	Difference *float64    `json:"difference,omitempty"`
	Way        string      `json:"way,omitempty"`
	FoundBy    string      `json:"found_by,omitempty"`
}

// Share is the edges that two layers share, and where the outer is eased on to the
// inner how much ease there is and how it is spread.
type Share struct {
	Pair
	Ease *Ease `json:"ease,omitempty"`
}

// Ease is how much longer the outer side is, in millimetres and in percent of the
// stretch of the inner side that it is eased on to.
type Ease struct {
	Length  float64       `json:"length"`
	Percent *float64      `json:"percent,omitempty"`
	Spread  []EaseStretch `json:"spread"`
}

// EaseStretch is the ease between two places that both sides have: notches, places
// where pieces meet, levels, ends.
type EaseStretch struct {
	From    string   `json:"from"`
	To      string   `json:"to"`
	Outer   float64  `json:"outer"`
	Inner   float64  `json:"inner"`
	Length  float64  `json:"length"`
	Percent *float64 `json:"percent,omitempty"`
}

// Inside is the room between an outer piece and the inner one in it: at each
// level, the least anywhere between the levels, and how far the inner stands
// outside the outer at most.
type Inside struct {
	Clearance Levels   `json:"clearance"`
	Least     *float64 `json:"least,omitempty"`
	Outside   *float64 `json:"outside,omitempty"`
}

// Closure is the two edges a closure opens between, and what it adds to a run
// that passes over it when closed. Gap is the least and the greatest gap of a
// lacing that serves all levels, and Metal where the middles of the fasteners are from
// the upper end, where the closure states the first.
type Closure struct {
	Pair
	Across *float64    `json:"across,omitempty"`
	Gap    *[2]float64 `json:"gap,omitempty"`
	Metal  []float64   `json:"metal,omitempty"`
}

// Run is a tape laid over the pattern, and the body's measure it is held
// against.
type Run struct {
	Total *float64  `json:"total,omitempty"`
	Parts []RunPart `json:"parts"`
	Body  *float64  `json:"body,omitempty"`
}

// RunPart is what one item of a run adds to it.
type RunPart struct {
	Item   string  `json:"item"`
	Length float64 `json:"length"`
}

// Elastic is the edges an elastic is sewn to, in all, and its own length.
type Elastic struct {
	Edges    *float64  `json:"edges,omitempty"`
	Length   *float64  `json:"length,omitempty"`
	Sections []Section `json:"sections,omitempty"`
}

// Section is a part of an elastic: what it lies along, and the least and the most of
// the elastic that it takes.
type Section struct {
	Along string     `json:"along"`
	Edges float64    `json:"edges"`
	Takes [2]float64 `json:"takes"`
}

// Bone is the line a bone lies along, and its own length.
type Bone struct {
	Along  *float64 `json:"along,omitempty"`
	Length *float64 `json:"length,omitempty"`
}
