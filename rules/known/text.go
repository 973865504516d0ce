package known

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
)

// Version is the version of the file's form.
const Version = 1

// header is the first line of a known file.
type header struct {
	Known   string `json:"known"`
	Version int    `json:"version"`
}

// about is what the first line says the file is.
const about = "findings that understitch check accepts until they get worse"

// Read reads a known file. Errors name the line.
func Read(name string, src []byte) (*File, error) {
	k := Empty(name)
	headed := false
	for i, line := range strings.Split(strings.TrimPrefix(string(src), "\ufeff"), "\n") {
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		if !headed {
			var h header
			if err := decode(line, &h); err != nil || h.Known == "" {
				return nil, fmt.Errorf("%s:%d: this is no file of known findings", name, i+1)
			}
			if h.Version != Version {
				return nil, fmt.Errorf("%s:%d: version %d of known findings cannot be read; this is for version %d", name, i+1, h.Version, Version)
			}
			headed = true
			continue
		}
		var e Entry
		if err := decode(line, &e); err != nil {
			return nil, fmt.Errorf("%s:%d: %w", name, i+1, err)
		}
		e.line = i + 1
		if e.File == "" || e.Rule == "" || e.At == "" || e.Off != nil && (*e.Off < 0 || math.IsInf(*e.Off, 0)) {
			return nil, fmt.Errorf("%s:%d: a known finding has a file, a rule, an address and no negative value", name, i+1)
		}
		if first, twice := k.entries[e.key()]; twice {
			return nil, fmt.Errorf("%s:%d: this finding stands on line %d already", name, i+1, first.line)
		}
		k.entries[e.key()] = e
	}
	if !headed {
		return nil, fmt.Errorf("%s: the file is empty", name)
	}
	return k, nil
}

func decode(line string, into any) error {
	d := json.NewDecoder(strings.NewReader(line))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return errors.New("this line cannot be read: " + strings.TrimPrefix(err.Error(), "json: "))
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return errors.New("something is left over at the end of this line")
	}
	return nil
}

// Bytes are the file's text.
func (k *File) Bytes() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(header{about, Version}); err != nil {
		return nil, err
	}
	for _, e := range k.Entries() {
		if err := enc.Encode(e); err != nil {
			return nil, err
		}
	}
	return b.Bytes(), nil
}
