package sheet

import (
	"math"
	"strconv"
)

// Text writes the garment as a spec.
func (g *Garment) Text(h Hand) string {
	w := &writer{g: g, h: h}
	if g.Remark != "" {
		w.line("# " + g.Remark)
	}
	w.head()
	for _, l := range g.Levels {
		var attrs []string
		if l.Y != nil {
			attrs = append(attrs, "y = "+w.num(*l.Y))
		}
		if l.Body != "" {
			attrs = append(attrs, "body = body."+l.Body)
		}
		w.block("level "+strconv.Quote(l.Name), attrs, nil)
	}
	for _, f := range g.Fabrics {
		w.fabric(f)
	}
	w.fasteners()
	for _, l := range g.Layers {
		w.layer(l)
	}
	w.joins()
	w.fittings()
	return w.String()
}

func plain(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }

func (w *writer) head() {
	g := w.g
	attrs := []string{"title = " + strconv.Quote(g.Title), "unit = " + strconv.Quote(g.Unit)}
	if len(g.Sizes) > 0 {
		text := ""
		for i, s := range g.Sizes {
			if i > 0 {
				text += ", "
			}
			text += strconv.Quote(s)
		}
		attrs = append(attrs, "sizes = ["+text+"]", "base_size = "+strconv.Quote(g.Sizes[g.Base]))
	}
	w.block("garment "+strconv.Quote(g.Name), attrs, nil)
	if !g.HouseSizes {
		for i, b := range g.Bodies {
			head := "body"
			if len(g.Sizes) > 0 {
				head = "size " + strconv.Quote(g.Sizes[i])
			}
			w.block(head, w.body(b), nil)
		}
	}
	if w.h.Style == Drafted && len(g.Figs) > 0 {
		var attrs []string
		for _, f := range g.Figs {
			attrs = append(attrs, f.Name+" = "+w.fig(f))
		}
		w.block("draft", attrs, nil)
	}
}

func (w *writer) body(b Body) []string {
	var attrs []string
	for _, f := range b {
		attrs = append(attrs, f.Name+" = "+w.bare(f.MM))
	}
	return attrs
}

// fig writes how a figure is drafted.
func (w *writer) fig(f *Fig) string {
	switch {
	case f.Measure != "":
		return "body." + f.Measure + " / " + plain(f.Share) + w.more(f.More)
	case f.Step != 0 && len(w.g.Sizes) > 1:
		return "graded(" + w.bare(f.Base) + ", " + w.bare(f.Step) + ")"
	}
	return w.bare(f.Base)
}

func (w *writer) layer(l *Layer) {
	attrs := []string{"side = " + strconv.Quote(l.Side)}
	if l.Fabric != "" {
		attrs = append(attrs, "fabric = fabric."+l.Fabric)
	}
	if len(l.Ease) > 0 {
		attrs = append(attrs, "ease = "+w.levelRanges(l.Ease))
	}
	w.block("layer "+strconv.Quote(l.Name), attrs, func() {
		for _, p := range l.Pieces {
			w.piece(p)
		}
	})
}

func (w *writer) fabric(f *Fabric) {
	w.block("fabric "+strconv.Quote(f.Name), []string{
		"thickness = mm(" + bare(f.Thickness, "mm") + ")",
		"stretch = { across = " + plain(f.Across) + ", along = " + plain(f.Along) + " }",
		"shrink = { across = " + plain(f.ShrinkAcross) + ", along = " + plain(f.ShrinkLen) + " }",
	}, nil)
}
