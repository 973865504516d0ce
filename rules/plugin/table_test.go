package plugin

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"understitch/model/measured"
)

// The table's form is a promise to the plugins of houses: this is all of it. The
// shell has no girth, as its side is sewn to nothing; it is left out.
// Figures are closed forms of the garment in plugin_test.go.
func TestTable(t *testing.T) {
	got := string(Table(7, garment(t, "bodice", 3)))
	require.Equal(t, strings.ReplaceAll(`table>1>7
garment>unit>cm
body>waist_girth>700
garment>name>bodice
shell>side>outer
shell>order>0
shell.front>cut>1
shell.front>mirrored>false
shell.front>fold>centre
shell.front>drawn>stitch
shell.front>paper>false
shell.front>area>60000
shell.front>perimeter>1000
shell.front>width.top>170
shell.front.top>paper>false
shell.front.top>length>200
shell.front.top>sewn_length>170
shell.front.side>paper>false
shell.front.side>length>300
shell.front.side>sewn_length>300
shell.front.side>allowance>15
shell.front.hem>paper>false
shell.front.hem>length>200
shell.front.hem>sewn_length>200
shell.front.centre>paper>false
shell.front.centre>length>300
shell.front.centre>sewn_length>300
shell.front.centre>allowance>0
shell.front.notch.hip>on>side
shell.front.notch.hip>kind>single
shell.front.notch.hip>at>180
shell.front.notch.hip>x>200
shell.front.notch.hip>y>180
shell.front.dart.waist>on>top
shell.front.dart.waist>intake>30
shell.front.dart.waist>legs.1>120.93386622447825
shell.front.dart.waist>legs.2>120.93386622447825
level.top>y>0
end
`, ">", "\t"), got)
}

// Every figure of the measurements' document is in the table under some name, but for
// the parts of a run: their total is.
func TestTableHasTheWholeDocument(t *testing.T) {
	for _, file := range []string{"ball-gown", "rink-dress", "frock-coat", "quick-change-waistcoat", "paper-skirt"} {
		g := fromWardrobe(t, file)
		doc, err := json.Marshal(measured.Of(g))
		require.NoError(t, err)
		var whole map[string]any
		require.NoError(t, json.Unmarshal(doc, &whole))
		got := map[string]int{}
		for line := range strings.Lines(string(Table(1, g))) {
			c := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
			got[c[len(c)-1]]++
		}
		var want []string
		numbers(whole, &want)
		require.Greater(t, len(want), 10, file)
		for _, w := range want {
			got[w]--
			require.GreaterOrEqual(t, got[w], 0, "%s: %s is not in the table, or not as often", file, w)
		}
	}
}

// numbers are the numbers of a document as the table writes them.
func numbers(v any, into *[]string) {
	switch v := v.(type) {
	case map[string]any:
		for name, x := range v {
			if name != "parts" && name != "spread" { // lists without names, which a table has no address for
				numbers(x, into)
			}
		}
	case []any:
		for _, x := range v {
			numbers(x, into)
		}
	case float64:
		*into = append(*into, decimal(v))
	}
}

func TestWordsThatWouldBreakTheTable(t *testing.T) {
	g := garment(t, "bodice", 3)
	g.Size = "38\tend\nend\\"
	require.Contains(t, string(Table(1, g)), "\ngarment\tsize\t38\\tend\\nend\\\\\n")
}
