package layers

import (
	"errors"
	"fmt"
	"math"

	"understitch/model"
	"understitch/model/layering"
	"understitch/rules"
)

// joined judges, in each band of whose widths nothing was told, how far the inner
// pieces of an inside stand out of the outer ones, those of either side laid together
// along their seams. Where the seams do not lie flat, or not flat enough to tell,
// it says so.
func (n *laying) joined(bands []band) {
	if err := n.layJoined(); err != nil {
		n.Cannot(err, rules.Say{Key: "outline"})
		return
	}
	worst := 0.0
	for _, b := range bands {
		say := rules.Say{Key: "outline " + b.key(), Place: n.inside.Place, Related: n.pieces()}
		darts, err := n.dartsIn(b)
		if err != nil {
			n.Cannot(err, say)
			continue
		}
		y, _ := n.inside.Outer.LevelY(b.at())
		heights := layering.Heights{Upper: b.upper, Lower: b.lower, Beyond: math.Max(b.bottom-y, y-b.top)}
		var far, meant, doubt float64
		judged, left := false, error(nil)
		for _, part := range layering.OutsideJoined(n.inside, n.Garment, heights, n.Limit("flat")) {
			if part.Err == nil && part.Doubt > n.Limit("doubt") {
				part.Err = fmt.Errorf("%s a place may be %s out when the pieces are laid together along their seams, so there only the widths can be compared",
					b.where(), n.Show(part.Doubt))
			}
			if part.Err != nil {
				left = part.Err
				continue
			}
			allowed := math.Max(0, -b.low) + darts + part.Doubt
			if !judged || part.Outside.High-allowed > far-meant {
				far, meant, doubt = part.Outside.High, allowed, part.Doubt
			}
			judged = true
		}
		if left != nil {
			n.notFlat(b, left)
		}
		switch past := meant + n.Limit("beyond"); {
		case !judged, far > past && far <= worst+n.Limit("beyond"):
			continue // not to be told, or told in the band before
		case far > past:
			worst = math.Max(worst, far)
		}
		say.Account = outsideAccount(n.inside, b.low, darts, doubt, far)
		say.Message = func() string {
			return fmt.Sprintf("laid together along their seams, %s stand %s out of %s %s, where their widths agree; no more than %s is meant. "+
				"Look how one layer is drawn on the other, and move the edge that stands out.",
				n.inside.Inner.Address(), n.Show(far), n.inside.Outer.Address(), b.where(), n.Show(meant))
		}
		n.Within(far, model.Range{Low: math.Inf(-1), High: meant}, "beyond", say)
	}
}

// unsewn is how far beyond the end of the seams between them, in millimetres, pieces
// may reach without a word: a hem that dips (common practice, no source).
const unsewn = 20

// sewnBeyond is how far above or below a level the pieces can be taken as one, and
// says so where they reach farther.
func (n *laying) sewnBeyond(l *model.Level, above bool) float64 {
	sewn, cloth := layering.SewnBeyond(n.inside, n.Garment, l, above)
	if cloth-sewn > unsewn {
		b, word := band{upper: l}, "below"
		if above {
			b, word = band{lower: l}, "above"
		}
		off := ""
		if sewn > 1 {
			off = "farther than " + n.Show(sewn) + " "
		}
		n.Cannot(fmt.Errorf("%s%s the %s level not all of the pieces are sewn side by side, so there they cannot be laid together as one",
			off, word, l.Name), rules.Say{Key: "outline " + b.key() + ", farther off"})
	}
	return sewn
}

// notFlat says that the pieces cannot be laid together in part of a band.
func (n *laying) notFlat(b band, err error) {
	var curved *layering.NotFlat
	if errors.As(err, &curved) {
		err = fmt.Errorf("%s does not lie flat %s: the lines of its two sides part by %s when the pieces are laid together, so there only the widths can be compared",
			curved.Seam.Address(), b.where(), n.Show(curved.Off))
	}
	n.Cannot(err, rules.Say{Key: "outline " + b.key() + ", laid together"})
}

// layJoined finds whether an inside of several pieces can be laid at all: what holds
// for two pieces but their being drawn as the same part, which is asked of each.
func (n *laying) layJoined() error {
	_, err := layering.Frame(n.inside, n.Garment)
	if err == nil {
		_, err = n.shareDoubt()
	}
	return err
}
