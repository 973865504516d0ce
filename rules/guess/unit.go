package guess

import (
	"math"
	"slices"

	"understitch/model"
	"understitch/model/curve"
)

// TorsoGirths are the body measures that go round the trunk, whose size is known
// well enough to tell a wrong unit, in the names of ISO 8559-1.
func TorsoGirths() []string {
	return []string{"bust_girth", "underbust_girth", "upper_chest_girth", "chest_girth", "waist_girth", "high_hip_girth", "hip_girth"}
}

// OtherUnit is the unit in which a length was most likely meant, when read in that
// it lies in a range: Meant is what it then is. The name is empty where none does.
func OtherUnit(length float64, read model.Unit, meant model.Range) (name string, mm float64) {
	for _, u := range model.Units() {
		if v := length / read.Millimetre * u.Millimetre; u != read && meant.Beyond(v) == 0 {
			return UnitName(u), v
		}
	}
	return "", 0
}

// UnitName is the unit's name in words, for a message.
func UnitName(u model.Unit) string {
	return map[model.Unit]string{model.Inch: "inches", model.Centimetre: "centimetres", model.Millimetre: "millimetres"}[u]
}

// FarOff is the one point of a drawn piece that lies far from all others.
type FarOff struct {
	At    curve.Point
	Edge  *model.Edge // the edge that has it, or starts at it
	Times float64     // how many times as large the piece is with it as without it
}

// fewestPoints is how many points a piece must have for one of them to be odd: a
// godet has its point far from its hem by right.
const fewestPoints = 6

// FarPoint finds the point of a drawn piece without which it would be smallest. There
// is none on a piece of few points.
func FarPoint(p *model.Piece) (FarOff, bool) {
	var points []curve.Point
	var owners []*model.Edge
	for _, e := range p.Edges {
		if !e.Drawn() {
			return FarOff{}, false
		}
		for _, s := range e.Path.Segments() {
			points, owners = append(points, s.Start()), append(owners, e)
		}
	}
	if len(points) < fewestPoints {
		return FarOff{}, false
	}
	// Only without one of the two that lie farthest apart is it any smaller.
	whole, first, second := curve.FarthestApart(points)
	var best FarOff
	for _, i := range []int{first, second} {
		rest, _, _ := curve.FarthestApart(slices.Delete(slices.Clone(points), i, i+1))
		if rest > 0 && whole/rest > best.Times {
			best = FarOff{points[i], owners[i], whole / rest}
		}
	}
	return best, best.Edge != nil
}

// Confirmed reports whether an edge that has the point agrees in length with what
// it is laid on, within near: then the point is meant.
func Confirmed(g *model.Garment, f FarOff, near float64) bool {
	with := []*model.Edge{f.Edge}
	if f.At == f.Edge.Path.Start() {
		with = append(with, f.Edge.Neighbour(false))
	}
	for _, e := range with {
		for _, l := range LaidOn(g, e) {
			longer, _ := l.Longer()
			if l.Join != nil {
				longer = l.Join.Ease.Beyond(longer)
			}
			if math.Abs(longer) <= near {
				return true
			}
		}
	}
	return false
}

// FarLevel is how far a level lies above or below all pieces that are drafted in
// the common frame, as a share of their whole height; nothing where it crosses
// their height. It stands where a piece is drawn and the level has a height.
func FarLevel(g *model.Garment, l *model.Level) (float64, bool) {
	top, low := math.Inf(1), math.Inf(-1)
	for _, p := range g.Pieces() {
		if region, err := p.Region(); err == nil && !p.OwnLevels {
			top, low = min(top, region.Bounds().Min.Y), max(low, region.Bounds().Max.Y)
		}
	}
	if !(low > top) || !model.Known(l.Y) {
		return 0, false
	}
	return math.Abs(model.Range{Low: top, High: low}.Beyond(l.Y)) / (low - top), true
}
