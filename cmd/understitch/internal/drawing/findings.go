package drawing

import (
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/curve"
	"understitch/model/layering"
)

// findings pins every finding to the panels in which what it is about lies, and
// returns those that lie nowhere.
func (d *drawer) findings(list []Finding) []Finding {
	about := d.about()
	var elsewhere []Finding
	for _, f := range list {
		if !d.pin(f, d.named(f, about[f.Subject])) {
			elsewhere = append(elsewhere, f)
		}
	}
	for _, b := range d.boards {
		b.settle()
	}
	return elsewhere
}

// pin marks a finding on every panel in which what it is about lies, with its
// figure; on the edges that it only has to do with, with its number alone where
// a panel of its own shows it better.
func (d *drawer) pin(f Finding, edges []string) bool {
	at, marks := names(f)
	found := false
	shown := slices.ContainsFunc(d.boards, func(b *board) bool { return b.Missing == "" && b.Subject == f.Subject })
	for _, b := range d.boards {
		if b.Missing != "" {
			continue
		}
		candidates := at
		if b.Subject == f.Subject || (len(edges) > 0 && b.Kind <= Alone) {
			candidates = slices.Concat(at, marks)
		}
		if s, ok := b.exact(f.Spot); ok {
			for _, e := range edges {
				b.trouble(f, b.spots[e].line)
			}
			b.tag(f, s, true)
			found = true
			continue
		}
		if s, ok := b.find(append(slices.Clone(candidates), f.Subject)); ok {
			if found && d.wide(f.Subject) {
				continue // a level or a layer is in many panels; once is enough
			}
			b.tag(f, s, true)
			found = true
			continue
		}
		if b.Kind > Alone {
			continue
		}
		for _, e := range edges {
			if s, ok := b.spots[e]; ok {
				b.tag(f, s, !shown && !found)
				found = true
			}
		}
	}
	return found
}

// named are those edges of a share that a finding names, by themselves or by a
// notch on them: the others are as they should be. A finding that names none of
// them is about all; so is one of a seam, whose two sides are one thing.
func (d *drawer) named(f Finding, edges []string) []string {
	if !slices.ContainsFunc(d.g.Shares, func(s *model.Share) bool { return s.Address() == f.Subject }) {
		return edges
	}
	_, marks := names(f)
	var out []string
	for _, p := range d.g.Pieces() {
		for _, e := range p.Edges {
			if !slices.Contains(edges, e.Address()) {
				continue
			}
			on := func(n *model.Notch) bool {
				return n.On == e && (slices.Contains(marks, n.Address()) || slices.Contains(f.Places, n.Place) || slices.Contains(f.Places, n.Given))
			}
			if slices.Contains(marks, e.Address()) || slices.Contains(f.Places, e.Place) || slices.ContainsFunc(p.Notches, on) {
				out = append(out, e.Address())
			}
		}
	}
	if len(out) == 0 {
		return edges
	}
	return out
}

// names are the places that a finding's key tells: levels of its subject, and
// the addresses of edges, notches and darts.
func names(f Finding) (at, marks []string) {
	for _, word := range strings.Fields(f.Key) {
		if strings.Count(word, ".") >= 2 {
			marks = append(marks, word)
		} else {
			at = append(at, f.Subject+"/"+word)
		}
	}
	return at, marks
}

func (b *board) find(names []string) (spot, bool) {
	for _, name := range names {
		if s, ok := b.spots[name]; ok {
			return s, true
		}
	}
	return spot{}, false
}

// exact is the place on a board at which a finding lies on a piece.
func (b *board) exact(at layering.Spot) (spot, bool) {
	frame, ok := b.frames[at.Piece]
	if !ok {
		return spot{}, false
	}
	s := spot{at: frame.Apply(at.At), away: curve.Point{X: 1}}
	if s.at.X < (b.room.Min.X+b.room.Max.X)/2 {
		s.away.X = -1
	}
	return s, true
}

// wide reports whether a subject is a layer or a level.
func (d *drawer) wide(subject string) bool {
	return strings.HasPrefix(subject, "level.") || slices.ContainsFunc(d.g.Layers, func(l *model.Layer) bool { return l.Address() == subject })
}

// about are the edges that seams, shares, closures and the like have to do with.
func (d *drawer) about() map[string][]string {
	out := map[string][]string{}
	add := func(thing model.Thing, stretches ...model.Stretch) {
		for _, s := range stretches {
			if e := s.Edge.Address(); !slices.Contains(out[thing.Address()], e) {
				out[thing.Address()] = append(out[thing.Address()], e)
			}
		}
	}
	for _, j := range d.g.Joins() {
		add(j.Thing, slices.Concat(j.Sides[0], j.Sides[1])...)
	}
	for _, s := range d.g.Shares {
		add(s, slices.Concat(s.Outer, s.Inner)...)
	}
	for _, e := range d.g.Elastics {
		add(e, e.Edges...)
	}
	for _, b := range d.g.Bones {
		add(b, b.Along)
	}
	for _, m := range d.g.Measures {
		for _, item := range m.Along {
			if item.Stretch != nil {
				add(m, *item.Stretch)
			}
		}
	}
	for _, a := range d.g.Alterations {
		for _, e := range a.Edges {
			out[a.Address()] = append(out[a.Address()], e.Address())
		}
	}
	return out
}

// tag pins a finding to a place. Findings at one place share a tag.
func (b *board) tag(f Finding, s spot, figure bool) {
	key := anchor(s.at)
	if i, ok := b.anchor[key]; ok && b.Marks[i].Severity == f.Severity {
		if !slices.Contains(b.Marks[i].Numbers, f.Number) {
			b.Marks[i].Numbers = append(b.Marks[i].Numbers, f.Number)
			b.Marks[i].Text = nil // several figures at one place are read in the list
		}
		return
	}
	m := Mark{Kind: Found, Subject: f.Subject, At: s.at, Dir: s.away, Sign: Tag, Reach: s.reach, Severity: f.Severity, Numbers: []string{f.Number}}
	if figure && !s.told && f.Figure != "" {
		m.Text = []string{f.Figure}
	}
	b.trouble(f, s.line)
	b.anchor[key] = len(b.Marks)
	b.put(m)
}

func anchor(p curve.Point) string { return model.Decimal(p.X, 1) + " " + model.Decimal(p.Y, 1) }

// trouble marks the line that a finding is about.
func (b *board) trouble(f Finding, line *curve.Path) {
	if line != nil && line.Length() > 0 {
		b.put(Mark{Kind: Trouble, Subject: f.Subject, Line: line, Severity: f.Severity, Numbers: []string{f.Number}})
	}
}
