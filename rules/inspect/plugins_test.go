package inspect

import (
	"crypto/sha256"
	"fmt"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"understitch/model"
)

// Where a house's plugin fails, its garments are not checked in full, and
// whatever else there is to say of them is said; those of another house are
// untouched. What plugins do is tested in package plugin.
func TestAPluginThatFails(t *testing.T) {
	const module = "no module at all"
	in := inspector(t, fstest.MapFS{
		"shop/house.hcl": file(fmt.Sprintf("house \"h\" { unit = \"cm\" }\nplugin \"knits\" {\n  file = \"rules/knits.wasm\"\n  sha256 = \"%x\"\n}\n",
			sha256.Sum256([]byte(module)))),
		"shop/rules/knits.wasm":  file(module),
		"shop/skirt.garment.hcl": file(skirt("61")),
		"own/house.hcl":          file("house \"o\" { unit = \"cm\" }\n"),
		"own/gown.garment.hcl":   file(skirt("60")),
	})
	defer in.Close()
	list := []string{"shop/skirt.garment.hcl", "own/gown.garment.hcl"}
	reports, err := in.Files(t.Context(), list, Options{})
	require.NoError(t, err)
	require.False(t, reports[0].Complete())
	require.Len(t, reports[0].Diagnostics, 1, "once for both sizes")
	require.Equal(t, `shop/house.hcl:2:1: the plugin "knits" cannot be used: plugins cannot be run here`, reports[0].Diagnostics[0].Error())
	require.Len(t, reports[0].Result.Findings, 1)
	require.True(t, reports[1].Complete())
	require.False(t, model.Errors(reports[1].Diagnostics))

	reports, err = in.Files(t.Context(), list, Options{NoRules: true})
	require.NoError(t, err)
	require.True(t, reports[0].Complete(), "it is not asked where only figures are wanted")
}
