package measuring

import (
	"maps"
	"math"
	"slices"

	"understitch/model"
	"understitch/model/sewing"
)

// Series is one figure of a garment at every size, in millimetres. Place is where
// the thing is stated that has it.
type Series struct {
	Name   string // as a message names it
	Values []float64
	Place  model.Place
	At     []model.Place // where the figure of each size is stated; nil for a length that is drafted
}

// BodySeries are the body measures that every size states, by name.
func BodySeries(sizes []*model.Garment) []Series {
	var out []Series
	for _, name := range slices.Sorted(maps.Keys(sizes[0].Body)) {
		s := Series{Name: name, Place: sizes[0].Place}
		for _, g := range sizes {
			v, ok := g.Body[name]
			if !ok {
				v = model.Unknown()
			}
			s.Values = append(s.Values, v)
			s.At = append(s.At, g.BodyAt[name])
		}
		for _, l := range sizes[0].Levels {
			if l.Measure == name {
				s.Place = l.Place
			}
		}
		out = append(out, s)
	}
	return known(out)
}

// LengthSeries are the main lengths of a garment at every size: both sides of
// every seam, and the girths of the layers at levels.
func LengthSeries(sizes []*model.Garment) []Series {
	var out []Series
	for i, s := range sizes[0].Seams {
		for side := range 2 {
			series := Series{Name: sewing.SideText(s.Sides[side]), Place: s.Join}
			for _, g := range sizes {
				length := model.Unknown()
				if a, b, err := sewing.Walks(g, g.JoinOf(g.Seams[i])); err == nil {
					length = []*sewing.Walk{a, b}[side].Length
				}
				series.Values = append(series.Values, length)
			}
			out = append(out, series)
		}
	}
	for i, layer := range sizes[0].Layers {
		for j, level := range sizes[0].Levels {
			series := Series{Name: "the girth of " + layer.Address() + " at the " + level.Name + " level", Place: layer.Place}
			for _, g := range sizes {
				girth, err := Girth(g, g.Layers[i], g.Levels[j])
				if err != nil {
					girth = model.Unknown()
				}
				series.Values = append(series.Values, girth)
			}
			out = append(out, series)
		}
	}
	return known(out)
}

// known leaves out the series that lack a figure at some size.
func known(list []Series) []Series {
	return slices.DeleteFunc(list, func(s Series) bool { return slices.ContainsFunc(s.Values, math.IsNaN) })
}

// Slip is a figure of one size that falls out of step with those around it.
type Slip struct {
	At    int     // the size, by its place in the series
	Meant float64 // what its neighbours suggest
	Off   float64 // how much larger it is; nothing where no figure stands out
}

// Slip finds the one figure that makes a series uneven. Unevenness is the sum of
// the second differences. Each figure in turn is taken to be what its
// neighbours suggest, the mean of the two beside it, or at an end the next step
// repeated; the one that makes the series most even is out of step, if no more
// than the share left of the unevenness remains. A grade that changes from one
// size on, as published tables have it, does not go away by that. At an
// end a change of grade looks the same as a slip; so there it must be larger than
// the usual step.
func (s Series) Slip(left float64) Slip {
	v := s.Values
	if len(v) < 4 {
		return Slip{}
	}
	best, least := Slip{}, math.Inf(1)
	for i := range v {
		meant := neighbours(v, i)
		even := slices.Clone(v)
		even[i] = meant
		if rest := unevenness(even); rest < least-1e-9 {
			best, least = Slip{i, meant, v[i] - meant}, rest
		}
	}
	if unevenness(v) <= 1e-9 || least > left*unevenness(v) {
		return Slip{}
	}
	if end := best.At == 0 || best.At == len(v)-1; end && math.Abs(best.Off) <= usualStep(v) {
		return Slip{}
	}
	return best
}

// Beside is what the figures beside one suggest for it; the series has three at least.
func (s Series) Beside(at int) float64 { return neighbours(s.Values, at) }

// Step is how much the figure grows from one size to the next.
func (s Series) Step(from int) float64 { return s.Values[from+1] - s.Values[from] }

// UsualStep is the median step of the series, taken without its sign, in millimetres.
func (s Series) UsualStep() float64 { return usualStep(s.Values) }

// neighbours is what the figures beside one suggest for it.
func neighbours(v []float64, i int) float64 {
	switch n := len(v); i {
	case 0:
		return 2*v[1] - v[2]
	case n - 1:
		return 2*v[n-2] - v[n-3]
	}
	return (v[i-1] + v[i+1]) / 2
}

func unevenness(v []float64) float64 {
	sum := 0.0
	for i := 1; i < len(v)-1; i++ {
		sum += math.Abs(v[i-1] - 2*v[i] + v[i+1])
	}
	return sum
}

// usualStep is the median step from size to size.
func usualStep(v []float64) float64 {
	var steps []float64
	for i := 1; i < len(v); i++ {
		steps = append(steps, math.Abs(v[i]-v[i-1]))
	}
	slices.Sort(steps)
	return steps[len(steps)/2]
}
