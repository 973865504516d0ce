package plugin

import (
	"bytes"
	"maps"
	"slices"
	"strconv"
	"strings"

	"understitch/model"
	"understitch/rules/house"
)

// Version is the version of the protocol: of the lines that a plugin reads and
// writes. New figures may come into the table without a new version.
const Version = 1

// Table writes all figures of a garment, in the size at hand, as the lines that a
// plugin reads: what a rule of the house in text can read, laid flat. Each line is
// an address, the name of a figure, and its value, parted by tabs. Lengths are in
// millimetres, areas in square millimetres, numbers without an exponent. The
// lines come in one order for one garment, and number tells this table from those
// before it.
func Table(number int, g *model.Garment) []byte {
	t := table{}
	t.line("table", strconv.Itoa(Version), strconv.Itoa(number))
	t.line("garment", "unit", g.Unit.Name)
	for _, name := range slices.Sorted(maps.Keys(g.Body)) {
		t.line("body", name, decimal(g.Body[name]))
	}
	house.Figures(g, func(address, figure string, value any) {
		switch v := value.(type) {
		case float64:
			t.line(address, figure, decimal(v))
		case bool:
			t.line(address, figure, strconv.FormatBool(v))
		case string:
			t.line(address, figure, tabbed.Replace(v))
		}
	})
	t.WriteString("end\n")
	return t.Bytes()
}

type table struct{ bytes.Buffer }

var tabbed = strings.NewReplacer("\\", `\\`, "\t", `\t`, "\n", `\n`, "\r", `\r`)

func (t *table) line(address, figure, value string) {
	t.WriteString(address)
	t.WriteByte('\t')
	t.WriteString(figure)
	t.WriteByte('\t')
	t.WriteString(value)
	t.WriteByte('\n')
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
