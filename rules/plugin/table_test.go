package plugin

import (
	"encoding/json"
	"slices"
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
garment>name>bodice
garment>size>
garment>unit>cm
body>waist_girth>700
shell.front>area>60000
shell.front>perimeter>1000
shell.front>width.top>170
shell.front.centre>length>300
shell.front.centre>sewn_length>300
shell.front.centre>allowance>0
shell.front.hem>length>200
shell.front.hem>sewn_length>200
shell.front.side>length>300
shell.front.side>sewn_length>300
shell.front.side>allowance>15
shell.front.top>length>200
shell.front.top>sewn_length>170
shell.front.dart.waist>intake>30
shell.front.dart.waist>legs.1>120.93386622447825
shell.front.dart.waist>legs.2>120.93386622447825
shell.front.notch.hip>on>side
shell.front.notch.hip>at>180
shell.front.notch.hip>x>200
shell.front.notch.hip>y>180
end
`, ">", "\t"), got)
}

// Every figure of the measurements' document is in the table, and no other.
func TestTableIsTheWholeDocument(t *testing.T) {
	g := gown(t)
	doc, err := json.Marshal(measured.Of(g))
	require.NoError(t, err)
	var any map[string]any
	require.NoError(t, json.Unmarshal(doc, &any))
	var want, got []string
	numbers(any, &want)
	for line := range strings.Lines(string(Table(1, g))) {
		c := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		if len(c) == 3 && c[0] != "table" && c[0] != "garment" && c[0] != "body" {
			got = append(got, c[2])
		}
	}
	slices.Sort(want)
	slices.Sort(got)
	require.Greater(t, len(want), 200)
	require.Equal(t, want, got)
}

// numbers are the numbers and words of a document as the table writes them.
func numbers(v any, into *[]string) {
	switch v := v.(type) {
	case map[string]any:
		for _, x := range v {
			numbers(x, into)
		}
	case []any:
		for _, x := range v {
			numbers(x, into)
		}
	case float64:
		*into = append(*into, string(figureText(v)))
	case string:
		if v != "" {
			*into = append(*into, v)
		}
	}
}

func TestWordsThatWouldBreakTheTable(t *testing.T) {
	g := garment(t, "bodice", 3)
	g.Size = "38\tend\nend\\"
	require.Contains(t, string(Table(1, g)), "\ngarment\tsize\t38\\tend\\nend\\\\\n")
}
