package body

// relation is how a length over the body follows from stature and hip girth, in
// millimetres: base + stature × height + hip × girth, with the standard
// deviation of what bodies differ from it.
type relation struct {
	names              []string // of the measure, the usual one first
	base, stature, hip float64
	standardDeviation  float64
}

// The relations are least squares over the 1,986 women of the 2012
// Anthropometric Survey of U.S. Army Personnel (Gordon et al., NATICK/TR-15/007,
// 2014): the crotch length from navel to back waist, R² 0.46, and the vertical trunk
// circumference, R² 0.73.
var relations = []relation{
	{[]string{"total_crotch_length"}, 52.0, 0.157, 0.307, 31},
	{[]string{"total_vertical_trunk_length", "trunk_girth"}, 171.9, 0.454, 0.634, 39},
}

// Likely is a measure held against what the rest of the body lets expect, in
// millimetres.
type Likely struct {
	Measure           string
	Stated, Expected  float64
	StandardDeviation float64 // of real bodies about what is expected
	Stature, Hip      float64 // what it was expected from
}

// Off is how many standard deviations the measure lies from what is expected,
// positive where it is longer.
func (l Likely) Off() float64 { return (l.Stated - l.Expected) / l.StandardDeviation }

// Likelihoods holds a body's crotch and trunk lengths against its stature and
// hip girth, as far as they are stated. A body whose stature or hip is not
// stated has none.
func Likelihoods(body map[string]float64) []Likely {
	stature, okStature := firstOf(body, "stature", "height")
	hip, okHip := firstOf(body, "hip_girth")
	if !okStature || !okHip {
		return nil
	}
	var out []Likely
	for _, r := range relations {
		for _, name := range r.names {
			if stated, ok := body[name]; ok {
				out = append(out, Likely{name, stated, r.base + r.stature*stature + r.hip*hip, r.standardDeviation, stature, hip})
			}
		}
	}
	return out
}

func firstOf(body map[string]float64, names ...string) (float64, bool) {
	for _, n := range names {
		if v, ok := body[n]; ok {
			return v, true
		}
	}
	return 0, false
}
