package sewing

import "understitch/model"

// SectionTakes is how much of an elastic one of its sections takes, in millimetres.
type SectionTakes struct {
	Section model.Section
	Edges   float64 // what it lies along, both halves
	Takes   model.Range
}

// Along names what the section lies along, as the spec does.
func (s SectionTakes) Along() string {
	var names []string
	for _, st := range s.Section.Along {
		names = append(names, st.String())
	}
	return Listed(names)
}

// Sections are what the sections of an elastic take, and what they take in all. An
// elastic that goes on in the other half has each section there too.
func Sections(g *model.Garment, e *model.Elastic) (parts []SectionTakes, all model.Range, err error) {
	if len(e.Sections) == 0 {
		return nil, model.Range{}, nil
	}
	whole, err := WholeOf(g, e.Edges)
	if err != nil {
		return nil, model.Range{}, err
	}
	times := 1.0
	if whole.Halves {
		times = 2
	}
	for _, s := range e.Sections {
		length := 0.0
		for _, st := range s.Along {
			l, err := st.SewnLength()
			if err != nil {
				return nil, model.Range{}, err
			}
			length += l * times
		}
		takes := model.Range{Low: s.Ratio.Low * length, High: s.Ratio.High * length}
		parts = append(parts, SectionTakes{s, length, takes})
		all.Low, all.High = all.Low+takes.Low, all.High+takes.High
	}
	return parts, all, nil
}
