package layers

import (
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/layering"
	"understitch/rules"
)

// outlineAlone compares pieces that lie at no level by their outlines; it reports
// whether it can: a share lays the inner piece on the outer, or both are drawn in one
// frame.
func (n *laying) outlineAlone() bool {
	inside := n.inside
	if n.several() || !inside.Outer.Drawn() || !inside.Inner.Drawn() || !layering.AtNoLevel(inside.Outer[0]) || !layering.AtNoLevel(inside.Inner[0]) {
		return false
	}
	say := rules.Say{Key: "outline", Place: inside.Place, Related: n.pieces()}
	out, doubt, err := n.aloneOutside()
	if err != nil {
		n.Cannot(err, say)
		return true
	}
	darts := 0.0
	for _, d := range inside.Inner[0].Darts {
		darts += d.Intake
	}
	meant := darts + doubt
	if outside := out.Wider.High; outside <= meant+n.Limit("beyond") && out.Longer > meant+n.Limit("beyond") {
		n.Cannot(fmt.Errorf("%s stands %s out over %s, which no share lays on it: whether it is meant to lie so is not known",
			inside.Inner.Address(), n.Show(out.Longer), out.Over.Address()), say)
		return true
	}
	say.Message = func() string {
		return fmt.Sprintf("%s stands %s out of %s; no more than %s is meant. Look how one is drawn on the other, and move the edge that stands out.",
			inside.Inner.Address(), n.Show(out.Wider.High), inside.Outer.Address(), n.Show(meant))
	}
	say.Account = outsideAccount(inside, 0, darts, doubt, out.Wider.High)
	n.Within(out.Wider.High, model.Range{Low: math.Inf(-1), High: meant}, "beyond", say)
	return true
}

// aloneOutside is how far the inner piece stands out anywhere, and how far that may be
// out by how it is laid.
func (n *laying) aloneOutside() (out layering.Beyond, most float64, err error) {
	doubt, err := n.lay()
	if err != nil {
		return out, 0, err
	}
	region, err := n.inside.Outer[0].Region()
	if err != nil {
		return out, 0, err
	}
	box := region.Bounds()
	most = math.Max(doubt(box.Min.Y), doubt(box.Max.Y))
	out, err = layering.OutsideAll(n.inside, n.Garment)
	return out, most, err
}
