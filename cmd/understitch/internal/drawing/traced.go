package drawing

import (
	"strings"

	"understitch/model"
	"understitch/model/sewing"
)

// tracedText says which edges of a piece are traced, and from where; "" where none
// is: "neck and side are traced from shell.front".
func tracedText(p *model.Piece) string {
	var from []string
	edges := map[string][]string{}
	for _, e := range p.Edges {
		of := e.TracedFrom()
		if of == nil {
			continue
		}
		source := of.Piece.Address()
		if of.Name != e.Name {
			source = of.Address()
		}
		if edges[source] == nil {
			from = append(from, source)
		}
		edges[source] = append(edges[source], e.Name)
	}
	var out []string
	for _, source := range from {
		is := " is"
		if len(edges[source]) > 1 {
			is = " are"
		}
		out = append(out, sewing.Listed(edges[source])+is+" traced from "+source)
	}
	return strings.Join(out, "; ")
}
