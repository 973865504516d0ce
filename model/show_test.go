package model

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestShowRange(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		name string
		unit Unit
		r    Range
		want string
	}{
		{"from nothing", Centimetre, Range{0, 20}, "0 to 2 cm"},
		{"larger on purpose", Centimetre, Range{-30, -10}, "-3 cm to -1 cm"},
		{"negative ease", Centimetre, Range{-40, 0}, "-4 cm to 0"},
		{"open above", Centimetre, Range{15, inf}, "at least 1.5 cm"},
		{"open below", Centimetre, Range{-inf, 4}, "at most 4 mm"},
		{"one figure", Millimetre, Exactly(12), "12 mm"},
		{"open on both sides", Inch, Range{-inf, inf}, "any"},
		{"inches", Inch, Range{0, 25.4}, "0 to 1 in"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, (&Garment{Unit: c.unit}).ShowRange(c.r))
		})
	}
}
