package builtin_test

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/cmd/understitch/demo"
	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/ruletest"
)

// Where on the paper a garment is drafted, and which way round, says nothing
// about the garment.
func TestOutcomesDoNotDependOnTheFrame(t *testing.T) {
	engine, err := rules.New(builtin.Rules())
	require.NoError(t, err)
	settings, diags := engine.Settings(nil)
	require.Empty(t, diags)
	var garments []ruletest.Garment
	docs := documents(t)
	for _, name := range slices.Sorted(maps.Keys(docs)) {
		doc, size := docs[name], ""
		if sizes := doc.Sizes(); len(sizes) > 0 {
			size = sizes[len(sizes)-1]
		}
		garments = append(garments, ruletest.Garment{Name: name, Draft: func() *model.Garment {
			g, diags := doc.Garment(size)
			require.False(t, model.Errors(diags))
			return g
		}})
	}
	ruletest.SameInEveryFrame(t, engine, settings, garments, 4000, map[string]string{
		"waiver-current": "waivers are held against what was found once all sizes are checked",
	})
}

// documents are the demo's garments and every rule's examples.
func documents(t *testing.T) map[string]*spec.Document {
	out := map[string]*spec.Document{}
	read := func(name, src string, house *spec.House) {
		doc, diags := spec.Read(name, []byte(src), house)
		require.False(t, model.Errors(diags), "%s: %v", name, diags)
		out[name] = doc
	}
	files := demo.Files()
	text, err := fs.ReadFile(files, "house.hcl")
	require.NoError(t, err)
	house, diags := spec.ReadHouse("house.hcl", text)
	require.False(t, model.Errors(diags))
	require.NoError(t, fs.WalkDir(files, ".", func(p string, d fs.DirEntry, err error) error {
		if strings.HasSuffix(p, ".garment.hcl") {
			text, err := fs.ReadFile(files, p)
			require.NoError(t, err)
			read(path.Base(p), string(text), house)
		}
		return err
	}))
	for _, r := range builtin.Rules() {
		var own *spec.House
		if r.Doc.House != "" {
			own, diags = spec.ReadHouse("house.hcl", []byte(r.Doc.House))
			require.False(t, model.Errors(diags))
		}
		read(r.Name+" bad", r.Doc.Bad, own)
		read(r.Name+" good", r.Doc.Good, own)
	}
	return out
}
