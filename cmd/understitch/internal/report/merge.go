package report

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"

	"understitch/rules"
)

// Part is one of the reports that are merged, and what it is called.
type Part struct {
	Name     string
	Document *Document
}

// Read reads a document back from its JSON form. What it may hold beyond what
// is known here is passed over, so that a newer program's reports of the same
// version can be read.
func Read(src []byte) (*Document, error) {
	var head struct {
		Version int
		Tool    Tool
	}
	err := json.Unmarshal(src, &head)
	var syntax *json.SyntaxError
	switch {
	case len(bytes.TrimSpace(src)) == 0 || errors.Is(err, io.ErrUnexpectedEOF):
		return nil, errors.New("the report is empty or cut off")
	case errors.As(err, &syntax):
		return nil, fmt.Errorf("this is not JSON, or it is cut off: byte %d: %w", syntax.Offset, err)
	case head.Tool.Name != "understitch":
		return nil, errors.New("this is not a report of understitch check --format json")
	case head.Version != Version:
		return nil, fmt.Errorf("this is a report of version %d; only version %d can be read", head.Version, Version)
	}
	d := &Document{}
	if err := json.Unmarshal(src, d); err != nil {
		return nil, fmt.Errorf("this is not a report of understitch check --format json: %w", err)
	}
	for _, g := range d.Garments {
		if g == nil || g.File == "" {
			return nil, errors.New("this is not a report of understitch check --format json: a garment has no file")
		}
		if err := g.restore(); err != nil {
			return nil, fmt.Errorf("%s: %w", g.File, err)
		}
	}
	return d, nil
}

// restore makes the lists that were left out, and refuses what no run writes.
func (g *Garment) restore() error {
	g.Sizes, g.Findings, g.Waived = list(g.Sizes), list(g.Findings), list(g.Waived)
	g.NotPossible, g.Closest, g.Diagnostics = list(g.NotPossible), list(g.Closest), list(g.Diagnostics)
	one := func(f *Finding) error {
		f.Sizes, f.Related = list(f.Sizes), list(f.Related)
		if severity, known := rules.SeverityNamed(f.Severity); !known || severity == rules.Off {
			return fmt.Errorf("a finding has the severity %q", f.Severity)
		}
		return nil
	}
	for i := range g.Findings {
		if err := one(&g.Findings[i]); err != nil {
			return err
		}
	}
	for i := range g.Waived {
		if err := one(&g.Waived[i].Finding); err != nil {
			return err
		}
	}
	return nil
}

// Merge joins documents into one, in the order that a single run has: by file.
// A garment that stands in several of them must be the same in all.
func Merge(parts []Part, o Options) (*Document, error) {
	d := &Document{Version: Version, Tool: Tool{"understitch", o.Version}, Garments: []*Garment{}, Least: o.Least, Rules: o.Rules}
	from := map[string]Part{}
	for _, p := range parts {
		for _, g := range p.Document.Garments {
			first, known := from[g.File]
			if !known {
				from[g.File] = p
				d.Garments = append(d.Garments, g)
				continue
			}
			if !reflect.DeepEqual(first.Document.garment(g.File), g) {
				return nil, fmt.Errorf("%s stands in %s and in %s, and not the same is said of it", g.File, first.Name, p.Name)
			}
		}
	}
	slices.SortStableFunc(d.Garments, func(a, b *Garment) int { return strings.Compare(a.File, b.File) })
	for _, g := range d.Garments {
		d.Summary.count(g)
	}
	return d, nil
}

func (d *Document) garment(file string) *Garment {
	for _, g := range d.Garments {
		if g.File == file {
			return g
		}
	}
	return nil
}
