package sheet

import "strconv"

// House is what holds for every garment of a folder.
type House struct {
	Name       string
	Allowances []Figure
	Sizes      []string
	Bodies     []Body
	Tapes      []*FastenerTape
	Fabrics    []*Fabric
}

// Text writes the house file, in centimetres.
func (h *House) Text() string {
	w := &writer{g: &Garment{Unit: "cm", Tapes: h.Tapes}}
	w.line("# The standards of the Harbour Lane Playhouse, an invented theatre.")
	w.block("house "+strconv.Quote(h.Name), []string{`unit = "cm"`}, nil)
	for _, a := range h.Allowances {
		w.block("allowance "+strconv.Quote(a.Name), []string{"width = " + w.bare(a.MM)}, nil)
	}
	for i, s := range h.Sizes {
		w.block("size "+strconv.Quote(s), w.body(h.Bodies[i]), nil)
	}
	w.fasteners()
	for _, f := range h.Fabrics {
		w.fabric(f)
	}
	return w.String()
}
