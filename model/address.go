package model

// Addresses are how the spec and every report name a thing.

// Address of a layer: "shell".
func (l *Layer) Address() string { return l.Name }

// Address of a piece: "shell.front".
func (p *Piece) Address() string { return p.Layer.Name + "." + p.Name }

// Address of an edge: "shell.front.side".
func (e *Edge) Address() string { return e.Piece.Address() + "." + e.Name }

// Address of a dart or a pleat: "shell.front.dart.bust", "lining.back.pleat.cb".
func (d *Dart) Address() string { return d.Piece.Address() + "." + d.Word() + "." + d.Name }

// Address of a notch: "shell.front.notch.waist".
func (n *Notch) Address() string { return n.Piece.Address() + ".notch." + n.Name }

// Address of a level: "level.waist".
func (l *Level) Address() string { return "level." + l.Name }

// Address of a seam: "seam.side".
func (s *Seam) Address() string { return "seam." + s.Name }

// Address of a share: "share.top".
func (s *Share) Address() string { return "share." + s.Name }

// Address of an inside: "inside.front".
func (n *Inside) Address() string { return "inside." + n.Name }

// Address of a closure: "closure.gusset".
func (c *Closure) Address() string { return "closure." + c.Name }

// Address of an elastic: "elastic.leg".
func (e *Elastic) Address() string { return "elastic." + e.Name }

// Address of a bone: "bone.princess".
func (b *Bone) Address() string { return "bone." + b.Name }

// Address of a measure: "measure.crotch".
func (m *Measure) Address() string { return "measure." + m.Name }

// Address of the garment itself.
func (g *Garment) Address() string { return "garment" }

// String writes a stretch as the spec does: an edge's address, or the part of
// it between two marks.
func (s Stretch) String() string {
	if s.From.Kind == NoMark && s.To.Kind == NoMark {
		return s.Edge.Address()
	}
	return "part(" + s.Edge.Address() + ", " + s.From.Text + ", " + s.To.Text + ")"
}

// Thing is anything that a rule can look at and a report can point to.
type Thing interface {
	Address() string
	Where() Place
}

// Where the garment block stands.
func (g *Garment) Where() Place { return g.Place }

// Where the layer's block stands.
func (l *Layer) Where() Place { return l.Place }

// Where the piece's block stands.
func (p *Piece) Where() Place { return p.Place }

// Where the edge's block stands.
func (e *Edge) Where() Place { return e.Place }

// Where the dart's block stands.
func (d *Dart) Where() Place { return d.Place }

// Where the notch's block stands.
func (n *Notch) Where() Place { return n.Place }

// Where the level's block stands.
func (l *Level) Where() Place { return l.Place }

// Where the seam's block stands.
func (s *Seam) Where() Place { return s.Place }

// Where the share's block stands.
func (s *Share) Where() Place { return s.Place }

// Where the inside's block stands.
func (n *Inside) Where() Place { return n.Place }

// Where the closure's block stands.
func (c *Closure) Where() Place { return c.Place }

// Where the elastic's block stands.
func (e *Elastic) Where() Place { return e.Place }

// Where the bone's block stands.
func (b *Bone) Where() Place { return b.Place }

// Where the measure's block stands.
func (m *Measure) Where() Place { return m.Place }
