// Package plan lays out a corpus: which garments it has, in which of them a fault
// is planted, and what must be found. The same figures and seed give the same
// corpus, file by file: a garment depends on its own number and the seed alone.
package plan

import (
	"fmt"
	"math"
	"math/rand/v2"

	"understitch/cmd/corpus/internal/faults"
	"understitch/cmd/corpus/internal/sheet"
	"understitch/cmd/corpus/internal/tally"
	"understitch/cmd/corpus/internal/wardrobe"
)

// Size says how large a corpus is to be.
type Size struct {
	Garments int
	Sizes    int     // at most so many sizes a garment
	Faults   float64 // the share of garments with a fault
	Seed     uint64
}

// File is one garment of the corpus as it is written, and what is expected of it.
type File struct {
	Text string
	tally.Expect
	Touched []string // the edges and pieces in which a fault was planted
}

// Corpus are the garments, in order.
func Corpus(s Size) ([]File, error) {
	list := faults.All(s.Sizes)
	out := make([]File, s.Garments)
	planted := 0
	for i := range out {
		var fault *faults.Fault
		if math.Floor(float64(i+1)*s.Faults+1e-9) > math.Floor(float64(i)*s.Faults+1e-9) {
			fault = &list[planted%len(list)]
			planted++
		}
		f, err := file(i, s, fault, 0)
		if err != nil {
			return nil, err
		}
		out[i] = f
	}
	return out, nil
}

// tries is how many garments are made until one has a place for the fault.
const tries = 400

// Grown is the nth garment with a fault, which is so far off. Another amount gives
// the same garment and the same fault but for that.
func Grown(n int, s Size, fault faults.Fault, amount float64) (File, error) {
	return file(n, s, &fault, amount)
}

func file(i int, s Size, fault *faults.Fault, amount float64) (File, error) {
	r := rand.New(rand.NewPCG(s.Seed, uint64(i)))
	kinds := wardrobe.Kinds()
	for range tries {
		kind := kinds[r.IntN(len(kinds))]
		if fault == nil {
			kind = kinds[i%len(kinds)]
		}
		name := fmt.Sprintf("%s-%05d", kind.Name, i)
		g := wardrobe.Make(kind, name, s.Sizes, r)
		e := tally.Expect{File: name + ".garment.hcl", Kind: kind.Name, Sizes: max(len(g.Sizes), 1)}
		drafted, apart := false, false
		var touched []string
		if fault != nil {
			p := &faults.Planter{Rand: r, Garment: g, Amount: amount}
			subject, ok := fault.Plant(p)
			if !ok {
				continue
			}
			drafted, apart, touched = p.Drafted, p.Apart, p.Touched
			e.Fault, e.Rule, e.Subject = fault.Name, fault.Rule, subject
			g.Remark = "Planted: " + fault.Name + "; " + fault.Rule + " at " + subject + "."
		}
		wardrobe.Lay(g, r, apart)
		hand := wardrobe.Hand(g, r)
		if drafted {
			hand.Style = sheet.Drafted
		}
		return File{g.Text(hand), e, touched}, nil
	}
	return File{}, fmt.Errorf("no garment has a place for %q", fault.Name)
}
