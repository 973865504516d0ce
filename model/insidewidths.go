package model

// WidthsAtHeight are what both sides of an inside measure across at a height of their
// common frame, darts closed, in millimetres.
func (n *Inside) WidthsAtHeight(y float64) (outer, inner float64, err error) {
	a, err := n.Outer.widthAt(y)
	if err != nil {
		return 0, 0, err
	}
	b, err := n.Inner.widthAt(y)
	return a.Net, b.Net, err
}
