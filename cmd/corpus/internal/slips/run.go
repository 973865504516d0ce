package slips

import (
	"math/rand/v2"

	"understitch/cmd/corpus/internal/tally"
)

// One is a slip that was tried.
type One struct {
	File string
	Slip
	Text    []byte
	Refused bool // by the reader: it is told, but not by a rule
	Raw     int  // findings that are new with it, notes and consequences too
	Found   int  // of these the errors and warnings in force
	Named   bool // one of them points at what slipped
	Rules   string
}

// Size says how many slips are to be made, and where.
type Size struct {
	Slips    int
	Garments int // of the corpus, beside the demo's
	Seed     uint64
}

// batch is how many slips are tried at a time.
const batch = 32

// Run makes slips until so many are of account, and gives all that were made.
func Run(size Size) ([]One, error) {
	c, err := newChecker(size.Garments, size.Seed)
	if err != nil {
		return nil, err
	}
	var out []One
	for of, next := 0, 0; of < size.Slips && next < 20*size.Slips+1000; next += batch {
		some := make([]One, batch)
		tally.Parallel(batch, func(i int) { some[i] = c.one(rand.New(rand.NewPCG(size.Seed, uint64(next+i)))) })
		for _, o := range some {
			if of == size.Slips {
				break
			}
			if out = append(out, o); o.counts() {
				of++
			}
		}
	}
	return out, nil
}

// counts reports whether the rules say anything of a slip.
func (o One) counts() bool { return !o.Refused && o.Raw > 0 }

// pick draws a garment, one time in two from the demo.
func (c *checker) pick(r *rand.Rand) *source {
	list := c.made
	if r.IntN(2) == 0 {
		list = c.demos
	}
	return list[r.IntN(len(list))]
}

// one draws a slip and tries it.
func (c *checker) one(r *rand.Rand) One {
	s, slip := c.draw(drawKind, r)
	v := c.judge(s, slip)
	return One{File: s.file, Slip: slip, Text: s.with(slip), Refused: v.refused, Raw: len(v.raw), Found: len(v.inForce),
		Named: v.names(slip.of, s.file), Rules: v.rules()}
}

// draw draws a kind of slip, and garments until one can have it; where none of many
// can, another kind.
func (c *checker) draw(kind func(*rand.Rand) string, r *rand.Rand) (*source, Slip) {
	for {
		k := kind(r)
		for range 300 {
			s := c.pick(r)
			if slip, ok := s.draw(k, r); ok {
				return s, slip
			}
		}
	}
}

// Misses reports whether a slip misses the aim: one finding, and what slipped named.
func (o One) Misses() bool { return o.counts() && (o.Found != 1 || !o.Named) }
