package guess

import (
	"math"

	"understitch/model"
	"understitch/model/layering"
)

// Misses reports whether a level lies above or below all the pieces of a layer that
// is drawn in one frame, and from which height to which they reach, in millimetres
// down the paper. A layer of which a piece is known by tape, or is drawn in a frame
// of its own, may reach it: then it is not known.
func Misses(g *model.Garment, layer *model.Layer, level *model.Level) (top, bottom float64, misses bool) {
	top, bottom = math.Inf(1), math.Inf(-1)
	for _, p := range layer.Pieces {
		if layering.AtNoLevel(p) {
			continue // it lies at no level
		}
		if p.OwnLevels || !p.Drawn() {
			return 0, 0, false
		}
		region, err := p.Region()
		if err != nil {
			return 0, 0, false
		}
		box := region.Bounds()
		top, bottom = math.Min(top, box.Min.Y), math.Max(bottom, box.Max.Y)
	}
	if !model.Known(level.Y) || top > bottom {
		return 0, 0, false
	}
	return top, bottom, level.Y < top-model.NearEnd || level.Y > bottom+model.NearEnd
}
