package wardrobe

import (
	"fmt"
	"math/rand/v2"

	"understitch/cmd/corpus/internal/sheet"
)

// Kind is a kind of garment. Make builds one; what it leaves open chance settles.
type Kind struct {
	Name string
	Make func(m *Maker)
}

// Kinds are all kinds, in a fixed order.
func Kinds() []Kind {
	return []Kind{
		{"skirt", skirt}, {"bodice", bodice}, {"body", bodysuit}, {"coat", coat}, {"gown", gown},
		{"paper-skirt", paperSkirt}, {"paper-coat", paperCoat}, {"petticoat", petticoat}, {"jacket", jacket},
	}
}

// Maker builds one garment.
type Maker struct {
	*rand.Rand
	*sheet.Garment
	body map[string]measure
}

type measure struct{ base, step float64 }

// Make builds a garment of a kind, called name, in up to so many sizes.
func Make(k Kind, name string, sizes int, r *rand.Rand) *sheet.Garment {
	m := &Maker{Rand: r, Garment: &sheet.Garment{Name: name}, body: map[string]measure{}}
	m.Unit = []string{"mm", "cm", "in"}[r.IntN(3)]
	m.sized(1 + r.IntN(max(sizes, 1)))
	k.Make(m)
	m.wearers()
	m.cutLines()
	if m.IntN(4) == 0 {
		m.stated()
	}
	return m.Garment
}

// sized settles the sizes and the bodies they are for, round one wearer.
func (m *Maker) sized(n int) {
	bust := float64(840 + 10*m.IntN(9))
	if m.IntN(3) == 0 && n > 1 {
		m.HouseSizes = true
		bust = houseBust
	}
	if n > 1 {
		first := 0
		if m.HouseSizes {
			n = min(n, len(HouseSizes))
			first = m.IntN(len(HouseSizes) - n + 1)
		}
		for i := range n {
			if m.HouseSizes {
				m.Sizes = append(m.Sizes, HouseSizes[first+i])
			} else {
				m.Sizes = append(m.Sizes, fmt.Sprint(34+2*i))
			}
		}
		m.Base = m.IntN(n)
		if m.HouseSizes {
			bust += 40 * float64(first+m.Base)
		}
	}
	if !m.HouseSizes {
		bust += 40 * float64(m.Base) // the smallest size is as large as one wearer
	}
	for _, f := range bodyOf(bust) {
		m.body[f.Name] = measure{f.MM, 40}
	}
	m.body["total_crotch_length"] = measure{m.body["total_crotch_length"].base, 12}
	m.body["height"] = measure{m.body["height"].base, 20}
}

// HouseSizes are the sizes that stand in the house file.
var HouseSizes = []string{"36", "38", "40", "42", "44"}

const houseBust = 840

// HouseBody is the body of a house size.
func HouseBody(i int) sheet.Body { return bodyOf(houseBust + 40*float64(i)) }

// bodyOf is a body of invented measures that grow with its bust.
func bodyOf(bust float64) sheet.Body {
	sizes := (bust - houseBust) / 40
	return sheet.Body{
		{Name: "bust_girth", MM: bust}, {Name: "underbust_girth", MM: bust - 130}, {Name: "chest_girth", MM: bust + 10},
		{Name: "waist_girth", MM: bust - 180}, {Name: "high_hip_girth", MM: bust - 40}, {Name: "hip_girth", MM: bust + 80},
		{Name: "total_crotch_length", MM: 600 + 12*sizes}, {Name: "height", MM: 1660 + 20*sizes},
	}
}

// wearers writes out the bodies of all sizes.
func (m *Maker) wearers() {
	n := max(len(m.Sizes), 1)
	for i := range n {
		var b sheet.Body
		for _, f := range bodyOf(m.body["bust_girth"].base) {
			grown := m.body[f.Name]
			b = append(b, sheet.Figure{Name: f.Name, MM: grown.base + float64(i-m.Base)*grown.step})
		}
		m.Bodies = append(m.Bodies, b)
	}
}

// fig is a figure drafted from a share of a body measure.
func (m *Maker) fig(name, of string, share, more float64) sheet.Num {
	b := m.body[of]
	f := &sheet.Fig{Name: name, Base: b.base/share + more, Step: b.step / share, Measure: of, Share: share, More: more}
	m.Figs = append(m.Figs, f)
	return sheet.Of(f)
}

// graded is a figure that grows by so much a size.
func (m *Maker) graded(name string, base, step float64) sheet.Num {
	f := &sheet.Fig{Name: name, Base: base, Step: step}
	m.Figs = append(m.Figs, f)
	return sheet.Of(f)
}

// some is a whole number of millimetres from low to high.
func (m *Maker) some(low, high int) float64 { return float64(low + m.IntN(high-low+1)) }

func (m *Maker) level(name string, y float64, body string) {
	at := sheet.N(y)
	m.Levels = append(m.Levels, &sheet.Level{Name: name, Y: &at, Body: body})
}
