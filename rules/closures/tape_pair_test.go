package closures

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTapePair(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		found  map[string]float64
		passed int
	}{
		{"a tenth over twenty gaps", nil, map[string]float64{"pitch": 2}, 0},
		{"less than a hundredth over twenty gaps", []string{"19.1", "19.009"}, nil, 2},
		{"shorter: one gap, a tenth", []string{"40]", "4]"}, nil, 2},
		{"the pitch the smaller", []string{"19.1", "18.9"}, map[string]float64{"pitch": 2}, 0},
		{"one tape for both", []string{"other_tape = tape.eyes", "other_tape = tape.hooks"}, nil, 0},
		{"no other tape", []string{"  other_tape = tape.eyes\n", ""}, nil, 0},
		{"hooks on snaps", []string{"kind  = \"hook-and-eye\"\n  pitch = mm(19)", "kind  = \"snap\"\n  pitch = mm(19)"}, map[string]float64{"": 0}, 0},
		{"in step, but with more metal", []string{"pitch = mm(19.1)\n  head  = mm(8)", "pitch = mm(19)\n  head  = mm(14.5)"}, map[string]float64{"cut": 400}, 1},
		{"in step, but all metal", []string{"pitch = mm(19.1)\n  head  = mm(8)", "pitch = mm(19)\n  head  = mm(18)"}, map[string]float64{"cut": 400}, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, TapePair, change(t, tapePairBad, c.change...))
			requireFound(t, c.found, result)
			require.Equal(t, c.passed, result.Passed)
		})
	}
	require.Equal(t, "tape.hooks has a pitch of 19 mm and tape.eyes one of 19.1 mm: over the 21 hooks of closure.back they drift 2 mm apart; no more than "+
		"0.2 mm is allowed. Take both halves from one tape, or measure the pitches again.", look(t, TapePair, tapePairBad).Findings[0].Message)
}
