package layers

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Layers known by tape alone are compared by their lengths and notches.
func TestSharedEdgeOnPaper(t *testing.T) {
	paper := front("length = 20.3", "length = 12", "length = 20", "length = 12", strap)
	result := look(t, SharedEdge, change(t, yoke, liningFront, paper))
	requireKeyed(t, map[string]float64{"length": 3}, result.Findings)
	result = look(t, SharedEdge, change(t, yoke, liningFront, change(t, paper, "20.3", "20")))
	requireKeyed(t, nil, result.Findings)
	require.Equal(t, map[string]string{"shape shell.front.top": "lining.front has no drawing"}, reasons(result.NotPossible))
	require.Positive(t, result.Passed)
}

func TestSharedEdgeMessages(t *testing.T) {
	for _, c := range []struct {
		name   string
		change []string
		want   string
	}{
		{"length", []string{liningFront, front("length = 20.3", "length = 12", "length = 20", "length = 12", strap)},
			"share.top is 3 mm longer on lining (lining.front.top and lining.back.top, 40.3 cm) than on shell (shell.front.top and " +
				"shell.back.top, 40 cm); no more than 1 mm is allowed. It lies in one part, shell.front.top of 20 cm against lining.front.top of 20.3 cm. Draft both from one line, or say by match how they are meant to differ."},
		{"a notch moved", []string{liningFront, front("length = 20", "length = 12", "length = 20", "length = 12", change(t, strap, "at = 8", "at = 8.5"))},
			"lining.front.notch.strap lies 8.5 cm along share.top, and shell.front.notch.strap, which it is laid on, 8 cm: 5 mm off; " +
				"no more than 1 mm is allowed. To follow shell, put lining.front.notch.strap at 8 cm along lining.front.top."},
		{"a notch forgotten", []string{liningFront, front("length = 20", "length = 12", "length = 20", "length = 12", "")},
			"lining has no notch to lay on shell.front.notch.strap, 8 cm along share.top. Put a single one at 8 cm along lining.front.top, " +
				"or take that one out."},
		{"a corner", []string{liningFront, front(
			"line = [[0, 0], [20, 0]]", "line = [[20, 0], [20, 12]]", "line = [[20, 12], [1, 12]]", "line = [[1, 12], [0, 0]]", strap)},
			"the corners of share.top differ by 4.8 degrees: 90 degrees where shell.front.top meets centre, 85.2 degrees where " +
				"lining.front.top meets centre; no more than 2 degrees is allowed. Draw the edges that run into it alike on both layers."},
	} {
		t.Run(c.name, func(t *testing.T) {
			result := look(t, SharedEdge, change(t, yoke, c.change...))
			require.Len(t, result.Findings, 1)
			require.Equal(t, c.want, result.Findings[0].Message)
		})
	}
}

// A notch given by a distance can be moved by one figure of the file.
func TestSharedEdgeMend(t *testing.T) {
	src := change(t, yoke, liningFront, change(t, liningFront, "at = 8", "at = 8.5"))
	result := look(t, SharedEdge, src)
	require.Len(t, result.Findings, 1)
	mend := result.Findings[0].Mend
	require.NotNil(t, mend)
	require.False(t, mend.Safe)
	require.Len(t, mend.Edits, 1)
	at := mend.Edits[0].Place
	mended := src[:at.Start.Byte] + mend.Edits[0].Text + src[at.End.Byte:]
	require.Equal(t, yoke, mended)
	require.Empty(t, look(t, SharedEdge, mended).Findings)

	sized := change(t, src, `unit = "cm"`, "\n  unit = \"cm\"\n  sizes = [\"36\"]\n", "layer", "size \"36\" {}\nlayer")
	result = look(t, SharedEdge, sized)
	require.Len(t, result.Findings, 1)
	require.Nil(t, result.Findings[0].Mend, "one figure may not serve every size")
}

// A notch that lies where no notch belongs is the one to move, on either layer;
// one that lies off its line is left to the rule about that.
func TestSharedNotchToMove(t *testing.T) {
	// The shell's notch at the corner, in the first "strap" of the yoke.
	src := change(t, yoke, "  piece \"front\" {\n    edge \"top\"    { line = [[0, 0], [20, 0]] }\n    edge \"side\"   { line = [[20, 0], [20, 12]] }\n    edge \"hem\"    { line = [[20, 12], [0, 12]] }\n    edge \"centre\" { line = [[0, 12], [0, 0]] }\n"+
		strapAt8+"  piece \"back\"", "  piece \"front\" {\n    edge \"top\"    { line = [[0, 0], [20, 0]] }\n    edge \"side\"   { line = [[20, 0], [20, 12]] }\n    edge \"hem\"    { line = [[20, 12], [0, 12]] }\n    edge \"centre\" { line = [[0, 12], [0, 0]] }\n"+
		change(t, strapAt8, "at = 8", "at = 0.8")+"  piece \"back\"")
	found := look(t, SharedEdge, src).Findings
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "To follow lining, put shell.front.notch.strap at 8 cm along shell.front.top.")
	require.Equal(t, "8", found[0].Mend.Edits[0].Text)
}

// A share that names the wrong edges, or the right ones in a wrong order, is one
// finding; and a piece that is cut too few times is one over all its shares.
func TestSharedEdgeOneCause(t *testing.T) {
	const inner = "inner = [lining.front.top, lining.back.top]"
	longer := strings.NewReplacer("[40, 0]", "[42, 0]", "[40, 12]", "[42, 12]").Replace(yoke)
	for _, c := range []struct{ name, src, says string }{
		{"an edge of the other layer", change(t, yoke, inner, "inner = [lining.front.top, shell.back.top]"),
			"share.top names shell.back.top on both its sides. Name the edge of the other layer that is laid on it."},
		{"in another order", change(t, longer, inner, "inner = [lining.back.top, lining.front.top]"),
			"in the order lining.front.top and lining.back.top they do. List both sides in one order."},
		{"a piece cut once, in two shares", change(t, yoke, liningHead, liningHead+"    cut = 2\n") +
			"\nshare \"hem\" {\n  outer = [shell.front.hem, shell.back.hem]\n  inner = [lining.front.hem, lining.back.hem]\n}\n",
			"lining has the edges of share.top 1.5 as often as shell"},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := look(t, SharedEdge, c.src).Findings
			require.Len(t, found, 1)
			require.Contains(t, found[0].Message, c.says)
		})
	}
}
