package spec

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
)

func loadHouse(t testing.TB) *House {
	t.Helper()
	h, diags := LoadHouse("testdata/house.hcl")
	require.Empty(t, diags)
	return h
}

func loadDress(t testing.TB) *Document {
	t.Helper()
	d, diags := Load("testdata/rink-dress.garment.hcl", loadHouse(t))
	require.Empty(t, diags)
	return d
}

func dress(t testing.TB, size string) *model.Garment {
	t.Helper()
	g, diags := loadDress(t).Garment(size)
	require.Empty(t, diags)
	return g
}

func BenchmarkRead(b *testing.B) {
	src, err := os.ReadFile("testdata/rink-dress.garment.hcl")
	require.NoError(b, err)
	h := loadHouse(b)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		Read("rink-dress.garment.hcl", src, h)
	}
}

func BenchmarkGuard(b *testing.B) {
	src, err := os.ReadFile("testdata/rink-dress.garment.hcl")
	require.NoError(b, err)
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		guard("rink-dress.garment.hcl", src, garmentShape)
	}
}

func BenchmarkGarment(b *testing.B) {
	d := loadDress(b)
	b.ReportAllocs()
	for b.Loop() {
		d.Garment("40")
	}
}

func TestDress(t *testing.T) {
	require.Equal(t, "40", dress(t, "40").Size)
}
