package plugin

import (
	"bytes"
	"cmp"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"understitch/model"
	"understitch/model/measured"
)

// Version is the version of the protocol: of the lines that a plugin reads and
// writes. New figures may come into the table without a new version.
const Version = 1

// words are the first words of the addresses of what the measurements' maps
// hold, by the map's name in the document: those of layers, pieces and edges
// have none, and those of darts and notches come behind their piece.
var words = map[string]string{
	"darts": "dart.", "notches": "notch.", "seams": "seam.", "shares": "share.", "nests": "nest.",
	"closures": "closure.", "runs": "measure.", "elastics": "elastic.", "bones": "bone.",
}

// Table writes all figures of a garment, in the size at hand, as the lines that a
// plugin reads: the measurements' document laid flat. Each line is an address,
// the name of a figure, and its value, parted by tabs. Lengths are in
// millimetres, areas in square millimetres, numbers without an exponent. The
// lines come in one order for one garment, and number tells this table from those
// before it.
func Table(number int, g *model.Garment) []byte {
	t := table{}
	t.line("table", strconv.Itoa(Version), strconv.Itoa(number))
	t.line("garment", "name", g.Name)
	t.line("garment", "size", g.Size)
	t.line("garment", "unit", g.Unit.Name)
	for _, name := range slices.Sorted(maps.Keys(g.Body)) {
		t.figure("body", name, g.Body[name])
	}
	t.things("", reflect.ValueOf(measured.Of(g)))
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
	_, _ = tabbed.WriteString(t, value) // a buffer takes everything
	t.WriteByte('\n')
}

func (t *table) figure(address, figure string, value float64) {
	t.WriteString(address)
	t.WriteByte('\t')
	t.WriteString(figure)
	t.WriteByte('\t')
	t.Write(figureText(value))
	t.WriteByte('\n')
}

func figureText(v float64) []byte { return strconv.AppendFloat(make([]byte, 0, 24), v, 'f', -1, 64) }

// things writes what a struct of the document holds about the thing at an
// address: its figures first, then the things in it.
func (t *table) things(address string, s reflect.Value) {
	for i := range s.NumField() {
		if !isThings(s.Field(i)) && address != "" {
			t.value(address, nameOf(s.Type().Field(i)), s.Field(i))
		}
	}
	for i := range s.NumField() {
		f := s.Field(i)
		if !isThings(f) {
			continue
		}
		keys := f.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return cmp.Compare(a.String(), b.String()) })
		for _, k := range keys {
			name := words[nameOf(s.Type().Field(i))] + k.String()
			if address != "" {
				name = address + "." + name
			}
			t.things(name, f.MapIndex(k))
		}
	}
}

// isThings tells a map of things from one of figures.
func isThings(v reflect.Value) bool {
	return v.Kind() == reflect.Map && v.Type().Elem().Kind() == reflect.Struct
}

// value writes a figure, or figures of one name: those at levels are called
// NAME.LEVEL, those of a list NAME.1, NAME.2 and so on.
func (t *table) value(address, figure string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			t.value(address, figure, v.Elem())
		}
	case reflect.Float64:
		t.figure(address, figure, v.Float())
	case reflect.String:
		if v.Len() > 0 {
			t.line(address, figure, v.String())
		}
	case reflect.Bool:
		t.line(address, figure, strconv.FormatBool(v.Bool()))
	case reflect.Int:
		t.line(address, figure, strconv.FormatInt(v.Int(), 10))
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			t.value(address, within(figure, strconv.Itoa(i+1)), v.Index(i))
		}
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return cmp.Compare(a.String(), b.String()) })
		for _, k := range keys {
			t.value(address, within(figure, k.String()), v.MapIndex(k))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			t.value(address, within(figure, nameOf(v.Type().Field(i))), v.Field(i))
		}
	}
}

func within(figure, name string) string {
	switch {
	case figure == "":
		return name
	case name == "":
		return figure
	}
	return figure + "." + name
}

// nameOf is a field's name in the document; that of one whose own fields stand
// there in its place is "".
func nameOf(f reflect.StructField) string {
	if f.Anonymous {
		return ""
	}
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}
