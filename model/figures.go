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

// keptAt is the kept figure for one key of several.
func keptAt[K comparable, T any](at *map[K]*kept[T], key K, compute func() (T, error)) (T, error) {
	if *at == nil {
		*at = map[K]*kept[T]{}
	}
	k := (*at)[key]
	if k == nil {
		k = &kept[T]{}
		(*at)[key] = k
	}
	return k.get(compute)
}

// heights are two heights of a draft, the upper first.
type heights struct{ top, bottom float64 }

// The kept figures of a garment, a piece and an edge.
type (
	garmentFigures struct {
		joins    []*Join
		joinOf   map[Thing]*Join
		grains   kept[[]GrainPair]
		partners map[*Edge][]*Edge
		uses     map[*Edge][]Use
		apart    map[*Edge]float64
		laidOn   map[*Edge][]*Edge
		laying   map[*Edge]*laying
		meetings map[*Notch][]NotchMeeting
	}
	pieceFigures struct {
		region kept[*curve.Region]
		cut    kept[[]*curve.Path]
		widths map[*Level]*kept[Width]
	}
	insideFigures struct {
		least   map[heights]*kept[Least]
		outside map[heights]*kept[curve.Bound]
	}
	edgeFigures struct {
		mouths kept[[]Mouth]
	}
)
