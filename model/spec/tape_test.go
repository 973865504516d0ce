package spec

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A tape that cannot be made is refused where it says so; all else is for the rules
// to judge.
func TestTapeLayout(t *testing.T) {
	for _, c := range []struct {
		name, pitch, head string
		at, summary       string
	}{
		{"as tapes are", "mm(19)", "mm(9)", "", ""},
		{"metal that only leaves no gap for a cut", "mm(10)", "mm(9)", "", ""},
		{"metal as long as the pitch", "mm(10)", "mm(10)", "", ""},
		{"the finest pitch that is read", "mm(0.5)", "0", "", ""},
		{"a lost decimal point", "0.019", "0", "pitch", "tape hooks has a pitch of 0.2 mm"},
		{"almost nothing", "0.000001", "mm(9)", "pitch", "tape hooks has a pitch of 0 mm"},
		{"metal longer than the pitch", "mm(1.9)", "mm(9)", "head", "tape hooks has 9 mm of metal at each fastener, which is longer than its pitch of 1.9 mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := with("#end", "tape \"hooks\" {\n  kind  = \"hook-and-eye\"\n  pitch = "+c.pitch+"\n  head  = "+c.head+"\n  clear = mm(0.2)\n}")
			diags := everything(src, nil)
			if c.summary == "" {
				require.Empty(t, diags)
				return
			}
			require.Len(t, diags, 1)
			require.Equal(t, c.summary, diags[0].Summary)
			require.NotEmpty(t, diags[0].Detail)
			line := strings.Split(src, "\n")[diags[0].Place.Start.Line-1]
			require.True(t, strings.HasPrefix(line, "  "+c.at), line)
			require.Equal(t, 11, diags[0].Place.Start.Column)
		})
	}
}
