package spec

import (
	"bytes"
	"fmt"
	"regexp"

	"github.com/hashicorp/hcl/v2"
)

// What no spec needs. The parser follows nesting by recursion and has no bound
// of its own, so these are held before it sees the file.
const (
	maxBytes    = 4 << 20 // a garment of a hundred pieces is under 200 KB
	maxNesting  = 64      // brackets, braces, quoted text and ${ } inside one another
	maxSigns    = 256     // operators between two commas or line ends
	maxDigits   = 40      // of one number
	maxExponent = 3       // digits of a number's exponent
)

// guard looks over the bytes of a file before it is parsed and gives the first
// reason not to parse it, or nil. It follows just enough of the syntax to know
// what is text, comment and code: quoted text, heredocs, ${ } inside them. Where
// it and the parser could see a line end differently (quoted text that runs on,
// template directives) it refuses, so that nothing nests deeper for the parser
// than it does here. Loops pass in the files of a house only, whose rules may go
// over lists; that they do not nest deep and end soon is for package house.
func guard(name string, src []byte, root *shape) *fault {
	if len(src) > maxBytes {
		return &fault{at: hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos},
			summary: fmt.Sprintf("the file is larger than %d MB", maxBytes>>20), detail: "A spec of one garment is a few kilobytes."}
	}
	if i := badByte(src); i >= 0 {
		f := &fault{at: rangeAt(name, src, i, i+1), summary: "the file is not plain text in UTF-8",
			detail: "Save it as UTF-8 in the editor."}
		if src[i] == 0 {
			f.summary = "the file holds a zero byte, so it is not plain text"
		}
		return f
	}
	if !bytes.Contains(src, []byte{'\n'}) && bytes.Count(src, []byte{'\r'}) > 1 {
		return &fault{at: rangeAt(name, src, 0, 0), summary: "the lines of this file have line ends that are no longer in use",
			detail: "Save it in the editor with the line ends of Windows or Unix."}
	}
	s := scanner{src: src, name: name, root: root}
	s.run()
	if s.odd && !speclike.Match(src) {
		return noSpec(name)
	}
	return s.found
}

// fault is a diagnostic in the making.
type fault struct {
	at              hcl.Range
	summary, detail string
}

// speclike is a line that a spec or a house may hold.
var speclike = regexp.MustCompile(`(?m)^\s*(\w+\s*=|\w[\w-]*(\s+"[^"\n]*"?)?\s*[{(\[]|\w+\s+["“])`)

// noSpec is the fault of a file in which no line looks like one of a spec.
func noSpec(name string) *fault {
	return &fault{at: hcl.Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos},
		summary: "this file does not look like a spec",
		detail:  "A spec is plain text and begins with garment \"name\" { unit = \"cm\" }."}
}
