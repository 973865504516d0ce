package measuring

import "understitch/model"

// Reach is what a layer measures round at a level when its cloth is stretched
// across as far as it goes, in millimetres: girth × (1 + stretch / 100), the
// stretch being a share of the length before loading (ASTM D6614, 3.1.1).
func Reach(g *model.Garment, l *model.Layer, level *model.Level) (float64, error) {
	round, err := Girth(g, l, level)
	if err != nil {
		return 0, err
	}
	switch {
	case l.Fabric == nil:
		return 0, model.Missingf("%s names no fabric", l.Address())
	case !model.Known(l.Fabric.StretchAcross):
		return 0, model.Missingf("fabric.%s does not state how far it stretches across", l.Fabric.Name)
	}
	return round * (1 + l.Fabric.StretchAcross/100), nil
}

// Boned reports whether a bone lies along an edge of the layer.
func Boned(g *model.Garment, l *model.Layer) bool {
	for _, b := range g.Bones {
		if b.Along.Edge.Piece.Layer == l {
			return true
		}
	}
	return false
}
