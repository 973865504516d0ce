package model

import "understitch/model/curve"

// kept holds a figure that is computed once, when first asked for.
type kept[T any] struct {
	done  bool
	value T
	err   error
}

func (k *kept[T]) get(compute func() (T, error)) (T, error) {
	if !k.done {
		k.value, k.err = compute()
		k.done = true
	}
	return k.value, k.err
}

// The kept figures of a garment, a piece and an edge.
type (
	garmentFigures struct {
		joins    []*Join
		partners map[*Edge][]*Edge
		uses     map[*Edge][]Use
		apart    map[*Edge]float64
	}
	pieceFigures struct {
		region kept[*curve.Region]
		cut    kept[[]*curve.Path]
		widths map[*Level]*kept[Width]
	}
	edgeFigures struct {
		mouths kept[[]Mouth]
	}
)
