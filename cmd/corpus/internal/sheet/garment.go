package sheet

import "strings"

// Garment is a whole garment.
type Garment struct {
	Name, Title, Remark string
	Unit                string // "mm", "cm" or "in"
	Sizes               []string
	Base                int    // the base size, by its place in Sizes
	HouseSizes          bool   // the size blocks stand in the house file
	Bodies              []Body // one for each size, or one
	Figs                []*Fig
	Levels              []*Level
	Fabrics             []*Fabric
	Layers              []*Layer
	Seams               []*Seam
	Shares              []*Share
	Insides             []*Inside
	Alters              []*Alter
	Tapes               []*FastenerTape
	Closures            []*Closure
	Elastics            []*Elastic
	Bones               []*Bone
	Measures            []*Measure
	Waivers             []Waiver
}

// Body is one wearer's measures, in mm, in the order they are written.
type Body []Figure

// Figure is a figure by name.
type Figure struct {
	Name string
	MM   float64
}

// Level is a line across the body.
type Level struct {
	Name string
	Y    *Num // nil on paper
	Body string
}

// Fabric is a cloth.
type Fabric struct {
	Name                    string
	Thickness               float64
	Across, Along           float64 // stretch, percent
	ShrinkAcross, ShrinkLen float64 // percent
}

// Range is a range of lengths; a nil end is open.
type Range struct{ Low, High *float64 }

// Between is a range with two ends, in mm.
func Between(low, high float64) Range { return Range{&low, &high} }

// From is a range without an upper end.
func From(low float64) Range { return Range{Low: &low} }

// LevelRange is a range at a level.
type LevelRange struct {
	Level string
	Range Range
}

// Layer is one layer.
type Layer struct {
	Name, Side, Fabric string
	Ease               []LevelRange
	Pieces             []*Piece
}

// Piece is one piece.
type Piece struct {
	Name      string
	Cut       int
	Mirrored  string // "true", "false" or "" for what the number says
	Fold      string
	Drawn     string
	Allowance *float64
	Grain     []Pt
	Levels    []Figure // its own; nil for the garment's
	NoLevels  bool
	Width     []LevelNum
	Edges     []*Edge
	Darts     []*Dart
	Notches   []*Notch
}

// LevelNum is a length at a level.
type LevelNum struct {
	Level string
	At    Num
}

// The ways an edge is drawn.
const (
	Line   = "line"
	Curve  = "curve"
	Smooth = "smooth"
	Tape   = "length"
)

// Edge is one edge. At tells which of its points lies at a level.
type Edge struct {
	Name, Form   string
	Pts          []Pt
	Length       Num
	Allowance    *float64
	Finish, Role string
	CutLine      []Pt // the same form
	At           map[string]int
}

// Dart is a dart on an edge (On) or inside a piece (Centre).
type Dart struct {
	Name, On string
	At       Num
	Intake   Num
	Tip      *Pt
	Centre   *Pt
	Up, Down float64
}

// Notch is a notch: at a distance, a level or a point.
type Notch struct {
	Name, On string
	At       *Num
	Level    string
	Point    *Pt
	Kind     string
	Depth    float64 // 0 for none stated
}

// Stretch is an edge or, with both ends named, a part of it.
type Stretch struct{ Edge, From, To string }

// Whole are whole edges.
func Whole(addresses ...string) []Stretch {
	var out []Stretch
	for _, a := range addresses {
		out = append(out, Stretch{Edge: a})
	}
	return out
}

// Seam joins two sides.
type Seam struct {
	Name string
	A, B []Stretch
	Ease *Range
}

// Share is what two layers share.
type Share struct {
	Name         string
	Outer, Inner []Stretch
	Match        string
	Ease         *Range // of an eased share
}

// Inside is an inner piece in an outer one.
type Inside struct {
	Name, Outer, Inner, Align string
	Clearance                 []LevelRange
}

// Alter is an alteration.
type Alter struct {
	Name   string
	Edges  []string
	Inward []Figure
}

// FastenerTape is a tape with fasteners.
type FastenerTape struct {
	Name, Kind         string
	Pitch, Head, Clear float64
	Width              []float64
}

// Closure is a closure.
type Closure struct {
	Name, Kind, Tape, OtherTape    string
	Row                            int
	A, B                           Stretch
	From, To                       string
	Stock, Buttons                 []float64
	Lap, Allowance                 float64
	Diameter, Thickness, Extension float64
}

// Elastic is an elastic.
type Elastic struct {
	Name      string
	Edges     []Stretch
	Length    Num
	Low, High float64
}

// Bone is a bone.
type Bone struct {
	Name   string
	Along  Stretch
	Length float64
}

// Measure is a run of the tape.
type Measure struct {
	Name     string
	Along    []Stretch // a closure stands as its address
	From, To string
	Against  string
	Ease     Range
}

// Waiver accepts a finding.
type Waiver struct{ Rule, At, Reason string }

// Piece finds a piece by its address, or nil.
func (g *Garment) Piece(address string) *Piece {
	layer, name, _ := strings.Cut(address, ".")
	for _, l := range g.Layers {
		if l.Name != layer {
			continue
		}
		for _, p := range l.Pieces {
			if p.Name == name {
				return p
			}
		}
	}
	return nil
}

// Edge finds an edge by its address, or nil.
func (g *Garment) Edge(address string) (*Piece, *Edge) {
	i := strings.LastIndexByte(address, '.')
	p := g.Piece(address[:i])
	if p == nil {
		return nil, nil
	}
	return p, p.Edge(address[i+1:])
}

// Edge finds an edge by its name, or nil.
func (p *Piece) Edge(name string) *Edge {
	for _, e := range p.Edges {
		if e.Name == name {
			return e
		}
	}
	return nil
}

// Layer finds a layer, or nil.
func (g *Garment) Layer(name string) *Layer {
	for _, l := range g.Layers {
		if l.Name == name {
			return l
		}
	}
	return nil
}
