package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode"
)

func writeJSON(w io.Writer, d *Document, _ Look) error { return WriteJSON(w, d) }

// WriteJSON writes a value as indented JSON. Control characters that JSON
// itself would let through are escaped, so that names in a spec cannot steer
// the terminal it is printed on, nor order a CI agent about.
func WriteJSON(w io.Writer, v any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(harmless(b.Bytes()))
	return err
}

// harmless writes what stands in the quoted texts of a JSON document otherwise
// where, as it is, it could steer a terminal or a CI agent that reads the log.
func harmless(text []byte) []byte {
	text = bytes.ReplaceAll(text, []byte("##"), []byte(`#\u0023`))
	if bytes.IndexFunc(text, steers) < 0 {
		return text
	}
	var b bytes.Buffer
	for _, r := range string(text) {
		if steers(r) {
			fmt.Fprintf(&b, `\u%04x`, r) // they stand inside quoted text only
		} else {
			b.WriteRune(r)
		}
	}
	return b.Bytes()
}

// steers reports whether a character gives an order to a terminal instead of
// showing something: a control, or one that turns the direction of writing.
func steers(r rune) bool {
	return r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r))
}
