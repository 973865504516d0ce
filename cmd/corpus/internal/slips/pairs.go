package slips

import (
	"math/rand/v2"
	"slices"
	"strings"

	"understitch/cmd/corpus/internal/tally"
	"understitch/rules"
)

// Pair is two slips of one spec that have nothing to do with each other.
type Pair struct {
	File  string
	Slips [2]Slip
	Text  []byte
	Alone [2]string // the rules that find each by itself
	Both  bool      // both are found
	Rules string    // the rules that find something of the two
}

// Pairs makes so many pairs of independent slips, each of which is found by itself.
func Pairs(size Size) ([]Pair, error) {
	c, err := newChecker(size.Garments, size.Seed)
	if err != nil {
		return nil, err
	}
	var out []Pair
	for next := 0; len(out) < size.Slips && next < 20*size.Slips+1000; next += batch {
		some := make([]*Pair, batch)
		tally.Parallel(batch, func(i int) { some[i] = c.pair(rand.New(rand.NewPCG(size.Seed+1, uint64(next+i)))) })
		for _, p := range some {
			if p != nil && len(out) < size.Slips {
				out = append(out, *p)
			}
		}
	}
	return out, nil
}

// pair draws two slips, or nil where they are not independent.
func (c *checker) pair(r *rand.Rand) *Pair {
	s, a := c.draw(figureKind, r)
	b, ok := s.draw(figureKind(r), r)
	if !ok || a.of.piece == b.of.piece {
		return nil
	}
	alone := [2]verdict{c.judge(s, a), c.judge(s, b)}
	for _, v := range alone {
		if v.refused || len(v.inForce) == 0 {
			return nil
		}
	}
	if meet(things(alone[0].raw), things(alone[1].raw)) {
		return nil
	}
	both := c.judge(s, a, b)
	return &Pair{File: s.file, Slips: [2]Slip{a, b}, Text: s.with(a, b), Alone: [2]string{alone[0].rules(), alone[1].rules()},
		Both: !both.refused && told(both, alone), Rules: both.rules()}
}

// figureKind draws a kind of slip that leaves the rest of the file alone.
func figureKind(r *rand.Rand) string {
	for {
		if k := drawKind(r); k != "unit of the file" {
			return k
		}
	}
}

// things are what findings are about.
func things(raw map[string]bool) map[string]bool {
	out := map[string]bool{}
	for k := range raw {
		out[strings.Fields(k)[1]] = true
	}
	return out
}

func meet(a, b map[string]bool) bool {
	for k := range a {
		if b[k] {
			return true
		}
	}
	return false
}

// told reports whether each of two slips has a finding in force of its own: one
// that it has when it is alone.
func told(both verdict, alone [2]verdict) bool {
	for _, v := range alone {
		if !slices.ContainsFunc(both.inForce, func(f *rules.Finding) bool { return v.finds(f) }) {
			return false
		}
	}
	return true
}

// finds reports whether a finding is among those in force.
func (v verdict) finds(f *rules.Finding) bool {
	return slices.ContainsFunc(v.inForce, func(g *rules.Finding) bool { return g.Rule == f.Rule && g.Subject == f.Subject })
}
