package faults

import "understitch/cmd/corpus/internal/sheet"

// backDart is the dart of the shell's back, by which a layer is made larger or smaller
// round without any seam being touched.
func (p *Planter) backDart() (*sheet.Dart, bool) {
	shell := p.Layer("shell")
	if p.Layer("foundation") == nil {
		return nil, false
	}
	return shell.Pieces[len(shell.Pieces)-1].Darts[0], true
}

func shellTight(p *Planter) (string, bool) {
	d, ok := p.backDart()
	if !ok {
		return "", false
	}
	// Each of the two front panels has so much room, and the back as much and 4 mm.
	front := func(layer string) float64 {
		_, e := p.Edge(layer + ".centre-front.princess")
		x, _ := base(e.Pts[e.At["waist"]])
		return x
	}
	d.Intake = d.Intake.Plus(3*(front("shell")-front("foundation")) + 4 + p.by(1, 3))
	return "level.waist", true
}

func shellLoose(p *Planter) (string, bool) {
	d, ok := p.backDart()
	if !ok {
		return "", false
	}
	d.Intake = d.Intake.Plus(-p.by(18, 21))
	return "foundation", true
}
