package builtin

import (
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/rules"
)

// Each rule is complete and stands in the list once, and every list is a fresh
// one that a caller may do with as it likes.
func TestRules(t *testing.T) {
	engine, err := rules.New(Rules())
	require.NoError(t, err)
	for _, name := range []string{
		"shared-edge", "inner-within-outer", "dart-answer", "layer-girth",
		"turn-of-cloth", "suppression", "hem-drop", "layer-stretch", "shrink-match",
		"seam-walk", "seam-true", "ease-side", "grain-match", "dart-legs", "fold-straight", "edge-unused",
		"notch-match", "notch-on-line", "notch-depth", "notch-spacing", "notch-unique",
		"allowance-match", "allowance-standard", "allowance-closure", "allowance-fold", "allowance-drawn", "allowance-room",
		"tape-cut", "closure-edges", "tape-measure", "body-ease",
		"tape-pair", "zip-length", "button-spacing", "body-plausible", "elastic-ratio", "bone-length",
		"outline-closed", "outline-crossing", "alteration-partner", "mirror-pair", "size-step", "unit-slip", "waiver-current",
	} {
		require.NotNil(t, engine.Rule(name), name)
	}
	list := Rules()
	list[0] = nil
	require.NotNil(t, Rules()[0])
}

// The families stand together, in the order in which a cutter meets them.
func TestFamilies(t *testing.T) {
	var families []string
	of := map[string]string{}
	for _, r := range Rules() {
		of[r.Name] = r.Family
		if n := len(families); n == 0 || families[n-1] != r.Family {
			families = append(families, r.Family)
		}
	}
	require.Equal(t, []string{"layers", "seams", "notches", "allowances", "closures", "body", "draft", "waivers"}, families)
	require.Equal(t, "draft", of["grain-match"])
	require.Equal(t, "body", of["body-ease"])
}
