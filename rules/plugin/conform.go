package plugin

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/house"
)

// Trials is how a plugin came out when it was tried.
type Trials struct {
	Examples []house.Trial // the specs that it carries
	Faults   []string      // how it does not keep to the protocol; none where it does
}

// sample is the garment that a plugin is tried with beside its own examples. It
// has something of most kinds.
const sample = `garment "sample" { unit = "cm" }
body { waist_girth = 70 }
level "waist" { y = 10 }
layer "shell" {
  side = "outer"
  piece "front" {
    fold = centre
    edge "top" { line = [[0, 0], [20, 0]] }
    edge "side" { line = [[20, 0], [20, 20]] }
    edge "hem" { line = [[20, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
    dart "waist" {
      on     = top
      at     = 10
      intake = 3
      tip    = [10, 12]
    }
  }
  piece "back" {
    fold = centre
    edge "top" { line = [[0, 0], [20, 0]] }
    edge "side" { line = [[20, 0], [20, 20]] }
    edge "hem" { line = [[20, 20], [0, 20]] }
    edge "centre" { line = [[0, 20], [0, 0]] }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
`

// Try tries a plugin of a house: on the examples that it carries, and whether it
// keeps to the protocol where a check would not show it. read gives the text of a
// file, named from the house's folder.
func Try(r *Runner, open Open, h *spec.House, p *spec.Plugin, read func(name string) ([]byte, error)) Trials {
	rule := Rule(p.Plugin)
	s := NewSet(r, open, []*model.Plugin{p.Plugin}, []*rules.Rule{rule})
	defer s.Close()
	t := trying{host: s.hosts[0]}
	if broken := t.host.ready(); broken != nil {
		return Trials{Faults: []string{broken.Summary}}
	}
	var out Trials
	var seen []*model.Garment
	out.Examples = house.Examples(h, p.Name, p.Good, p.Bad, func(g *model.Garment) ([]rules.Outcome, error) {
		seen = append(seen, g)
		return t.host.look(g, rules.Error)
	}, read)
	doc, diags := spec.Read("sample.garment.hcl", []byte(sample), nil)
	if g, more := doc.Garment(""); len(diags)+len(more) == 0 {
		seen = append(seen, g)
	}
	for _, g := range seen {
		t.garment(g)
	}
	t.nothing()
	if t.host.anew > 0 {
		t.fault("it does not last from one garment to the next: it was begun anew %d times", t.host.anew)
	}
	out.Faults = t.faults
	return out
}

// trying asks a plugin what a check would not.
type trying struct {
	host   *host
	faults []string
}

func (t *trying) fault(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	for _, f := range t.faults {
		if f == text {
			return
		}
	}
	t.faults = append(t.faults, text)
}

// garment asks several times about one garment, in ways that must come out the
// same.
func (t *trying) garment(g *model.Garment) {
	first, err := t.rows(g, nil)
	if err != nil {
		t.fault("of %s: %s", g.Name, whole(err))
		return
	}
	for _, x := range []struct {
		what   string
		change func([]byte) []byte
	}{
		{"asked again", nil},
		// A later version of this program may tell more; what a plugin does not know
		// it passes over.
		{"told of figures that it cannot know", func(table []byte) []byte {
			more := []byte("shell.front\tfigure-to-come\t12.5\nthing-to-come.name\tof\twords, and 1 more\nend\n")
			return append(bytes.TrimSuffix(table, []byte("end\n")), more...)
		}},
	} {
		again, err := t.rows(g, x.change)
		switch {
		case err != nil:
			t.fault("of %s, when %s: %s", g.Name, x.what, whole(err))
		case !reflect.DeepEqual(first, again):
			t.fault("of %s it says something else when %s", g.Name, x.what)
		}
	}
	t.host.rest() // the next one begins with an empty head
	if anew, err := t.rows(g, nil); err == nil && !reflect.DeepEqual(first, anew) {
		t.fault("of %s it says something else when it has not been asked about others before", g.Name)
	}
}

func (t *trying) rows(g *model.Garment, change func([]byte) []byte) ([]Row, error) {
	addresses := addressesOf(g)
	return t.host.rows(func(number int) []byte {
		table := Table(number, g)
		if change != nil {
			table = change(table)
		}
		return table
	}, func(address string) bool { return addresses[address] != nil })
}

// nothing asks about a garment of which nothing is known.
func (t *trying) nothing() {
	_, err := t.host.rows(func(number int) []byte {
		return fmt.Appendf(nil, "table\t%d\t%d\nend\n", Version, number)
	}, func(address string) bool { return address == "garment" })
	if err != nil {
		t.fault("of a garment without figures: %s", whole(err))
	}
}

// whole is how a plugin failed with what it said.
func whole(err error) string {
	var f failure
	if errors.As(err, &f) && f.beside != "" {
		return f.what + "; " + f.beside
	}
	return err.Error()
}
