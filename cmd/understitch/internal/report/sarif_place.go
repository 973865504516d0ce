package report

import (
	"bytes"
	"net/url"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"understitch/model"
)

// sourceRoot is the name SARIF has by custom for the folder that relative paths
// start from.
const sourceRoot = "%SRCROOT%"

// sarifPlaces turns places in specs into those of SARIF: files into URIs that
// are listed once, and columns, which here count characters as an editor shows
// them, into UTF-16 code units. Those readers count for whom SARIF is written,
// whatever columnKind says.
type sarifPlaces struct {
	source func(file string) []byte // nil where no texts are at hand
	index  map[string]int           // of the files, in order of their names
	files  []string
	starts map[string][]int // where each line of a file begins
}

func newSarifPlaces(d *Document) *sarifPlaces {
	p := &sarifPlaces{source: d.Source, index: map[string]int{}, starts: map[string][]int{}}
	for _, g := range d.Garments {
		g.files(func(file string) {
			if _, known := p.index[file]; !known && file != "" {
				p.index[file] = 0
				p.files = append(p.files, file)
			}
		})
	}
	slices.Sort(p.files)
	for i, file := range p.files {
		p.index[file] = i
	}
	return p
}

// files names every file that something about a garment points into.
func (g *Garment) files(visit func(string)) {
	visit(g.File)
	one := func(f Finding) {
		visit(f.Range.File)
		for _, r := range f.Related {
			visit(r.Place.File)
		}
		if f.Mend != nil {
			for _, e := range f.Mend.Edits {
				visit(e.Place.File)
			}
		}
	}
	for _, f := range g.Findings {
		one(f)
	}
	for _, w := range g.Waived {
		one(w.Finding)
		visit(w.Waiver.Range.File)
	}
	for _, d := range g.Diagnostics {
		visit(d.Place.File)
	}
}

// uri is the address of a file: relative to where the program was started, or
// with a scheme where the path is absolute.
func (p *sarifPlaces) uri(file string) sarifURI {
	u := fileURI(file)
	if i, ok := p.index[file]; ok {
		u.Index = &i
	}
	return u
}

func fileURI(file string) sarifURI {
	file = filepath.ToSlash(file)
	parts := strings.Split(file, "/")
	for i, part := range parts {
		// A colon in the first part would make it look like a scheme.
		parts[i] = strings.ReplaceAll(url.PathEscape(part), ":", "%3A")
	}
	escaped := strings.Join(parts, "/")
	switch {
	case path.IsAbs(file):
		return sarifURI{URI: "file://" + escaped}
	case filepath.IsAbs(file): // with the letter of a drive
		return sarifURI{URI: "file:///" + escaped}
	}
	return sarifURI{URI: escaped, Base: sourceRoot}
}

func (p *sarifPlaces) physical(at model.Place) *sarifPhysical {
	if at.File == "" {
		return nil
	}
	out := &sarifPhysical{Artifact: p.uri(at.File)}
	if at.Start.Line > 0 {
		region := p.region(at)
		out.Region = &region
	}
	return out
}

func (p *sarifPlaces) region(at model.Place) sarifRegion {
	return sarifRegion{at.Start.Line, p.column(at.File, at.Start), at.End.Line, p.column(at.File, at.End)}
}

// column counts UTF-16 code units up to a position. Where the text is not at
// hand the count of characters stands: it is the same but for rare letters.
func (p *sarifPlaces) column(file string, at model.Pos) int {
	if p.source == nil {
		return at.Column
	}
	src := p.source(file)
	starts, known := p.starts[file]
	if !known {
		starts = lineStarts(src)
		p.starts[file] = starts
	}
	if at.Line < 1 || at.Line > len(starts) {
		return at.Column
	}
	from, to := starts[at.Line-1], len(src)
	if at.Line < len(starts) {
		to = starts[at.Line]
	}
	text := src[from:to]
	// Of a report that was read back no bytes are known.
	if at.Byte <= to && (at.Byte > from || at.Column == 1) {
		text = text[:max(at.Byte-from, 0)]
	} else {
		text = firstRunes(text, at.Column-1)
	}
	units := 0
	for _, r := range string(text) {
		units += max(utf16.RuneLen(r), 1)
	}
	return units + 1
}

func lineStarts(src []byte) []int {
	starts := []int{0}
	for at := 0; ; {
		n := bytes.IndexByte(src[at:], '\n')
		if n < 0 {
			return starts
		}
		at += n + 1
		starts = append(starts, at)
	}
}

func firstRunes(text []byte, n int) []byte {
	at := 0
	for ; n > 0 && at < len(text); n-- {
		_, size := utf8.DecodeRune(text[at:])
		at += size
	}
	return text[:at]
}
