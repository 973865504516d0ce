package builtin_test

import (
	"os"
	"path/filepath"
	"testing"

	"understitch/model"
	"understitch/model/measured"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
)

// The whole way of one garment in three parts, on the two largest of the
// wardrobe: reading it, computing its figures, judging it by all rules.
func benchEach(b *testing.B, run func(b *testing.B, dir, file string)) {
	const wardrobe = "../../cmd/understitch/demo"
	for _, name := range []string{"rink-dress", "frock-coat"} {
		b.Run(name, func(b *testing.B) { run(b, wardrobe, filepath.Join(wardrobe, name+".garment.hcl")) })
	}
}

func house(b *testing.B, dir string) *spec.House {
	b.Helper()
	h, diags := spec.LoadHouse(filepath.Join(dir, spec.HouseFile))
	if model.Errors(diags) {
		b.Fatal(diags)
	}
	return h
}

// size is the first size of a document, "" where it has none.
func size(doc *spec.Document) string {
	if sizes := doc.Sizes(); len(sizes) > 0 {
		return sizes[0]
	}
	return ""
}

func garment(b *testing.B, doc *spec.Document) *model.Garment {
	g, diags := doc.Garment(size(doc))
	if g == nil || model.Errors(diags) {
		b.Fatal(diags)
	}
	return g
}

func load(b *testing.B, file string, h *spec.House, src []byte) *spec.Document {
	doc, diags := spec.Read(file, src, h)
	if doc == nil {
		b.Fatal(diags)
	}
	return doc
}

func source(b *testing.B, file string) []byte {
	b.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		b.Fatal(err)
	}
	return src
}

// BenchmarkLoad parses a spec.
func BenchmarkLoad(b *testing.B) {
	benchEach(b, func(b *testing.B, dir, file string) {
		h, src := house(b, dir), source(b, file)
		b.SetBytes(int64(len(src)))
		for b.Loop() {
			load(b, file, h, src)
		}
	})
}

// BenchmarkBuild builds the garment in one size from a spec that was parsed.
func BenchmarkBuild(b *testing.B) {
	benchEach(b, func(b *testing.B, dir, file string) {
		doc := load(b, file, house(b, dir), source(b, file))
		for b.Loop() {
			garment(b, doc)
		}
	})
}

// BenchmarkFigures computes every figure of a garment that was built.
func BenchmarkFigures(b *testing.B) {
	benchEach(b, func(b *testing.B, dir, file string) {
		doc := load(b, file, house(b, dir), source(b, file))
		for b.Loop() {
			b.StopTimer() // figures are kept, so that each turn needs a garment of its own
			g := garment(b, doc)
			b.StartTimer()
			measured.Of(g)
		}
	})
}

// BenchmarkRules judges a garment that was built by all rules.
func BenchmarkRules(b *testing.B) {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		b.Fatal(err)
	}
	benchEach(b, func(b *testing.B, dir, file string) {
		h := house(b, dir)
		settings, _ := engine.Settings(h.Model())
		doc := load(b, file, h, source(b, file))
		for b.Loop() {
			b.StopTimer()
			g := garment(b, doc)
			b.StartTimer()
			engine.Check(g, settings)
		}
	})
}
