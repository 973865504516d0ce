// Package modeltest builds garments for the tests of the packages that measure
// them.
package modeltest

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/model/spec"
)

// Build reads a garment without sizes from the text of its spec.
func Build(t testing.TB, src string) *model.Garment {
	t.Helper()
	doc, diags := spec.Read("test.garment.hcl", []byte(src), nil)
	require.Empty(t, diags)
	g, diags := doc.Garment("")
	require.Empty(t, diags)
	return g
}

// Edge finds an edge by its address.
func Edge(t testing.TB, g *model.Garment, address string) *model.Edge {
	t.Helper()
	for _, e := range g.Edges() {
		if e.Address() == address {
			return e
		}
	}
	require.Fail(t, "no edge "+address)
	return nil
}
