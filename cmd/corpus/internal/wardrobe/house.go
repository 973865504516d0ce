package wardrobe

import "understitch/cmd/corpus/internal/sheet"

// House is the house file of the wardrobe.
func House() *sheet.House {
	h := &sheet.House{
		Name: "harbour-lane",
		Allowances: []sheet.Figure{{Name: "default", MM: 12}, {Name: "enclosed", MM: 10}, {Name: "closure", MM: 20},
			{Name: "hem", MM: 30}, {Name: "rolled", MM: 10}, {Name: "casing", MM: 10}, {Name: "bound", MM: 6}},
		Tapes: []*sheet.FastenerTape{
			{Name: "snap-19", Kind: "snap", Pitch: 19, Head: 9, Clear: 1.5, Width: []float64{24}},
			{Name: "hook-and-eye-19", Kind: "hook-and-eye", Pitch: 19, Head: 8, Clear: 2, Width: []float64{32, 45, 58}},
		},
		Fabrics: []*sheet.Fabric{
			{Name: "stretch-velvet", Thickness: 1.1, Across: 60, Along: 35, ShrinkAcross: 1, ShrinkLen: 2},
			{Name: "power-knit", Thickness: 0.6, Across: 80, Along: 60, ShrinkAcross: 1, ShrinkLen: 1.5},
			{Name: "barathea", Thickness: 1.2, Across: 2, Along: 1, ShrinkAcross: 1, ShrinkLen: 1.5},
			{Name: "satin", Thickness: 0.4, Across: 1, Along: 1, ShrinkAcross: 0.5, ShrinkLen: 1},
			{Name: "coutil", Thickness: 0.7, Across: 1, Along: 1, ShrinkAcross: 0.5, ShrinkLen: 1},
			{Name: "lining", Thickness: 0.2, Across: 2, Along: 1, ShrinkAcross: 1, ShrinkLen: 1},
		},
	}
	for i, s := range HouseSizes {
		h.Sizes = append(h.Sizes, s)
		h.Bodies = append(h.Bodies, HouseBody(i))
	}
	return h
}
