package plugin

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"understitch/rules"
)

// A Row is one line of a plugin's answer: what it has to say about one thing.
type Row struct {
	Key      string // which of the plugin's rules it is
	Verdict  string // "error", "warning", "note", "passed" or "not-possible"
	Address  string
	Measured float64 // in Unit; Numeric tells whether there are figures
	Limit    float64
	Unit     rules.Unit
	Numeric  bool
	Message  string
}

// The verdicts that are no severities.
const (
	passed      = "passed"
	notPossible = "not-possible"
)

const (
	columns     = 7
	rowsMost    = 10_000
	messageMost = 1000
)

var units = []rules.Unit{rules.Millimetres, rules.Degrees, rules.Ratio, rules.Percent}

var untabbed = strings.NewReplacer(`\\`, "\\", `\t`, "\t", `\n`, "\n", `\r`, "\r")

// greeting is the first line of every plugin.
func greeting() string { return "plugin\t" + strconv.Itoa(Version) + "\n" }

// greeted judges a plugin's first line.
func greeted(line string) error {
	if line == greeting() {
		return nil
	}
	if version, ok := strings.CutPrefix(strings.TrimSpace(line), "plugin\t"); ok {
		return failure{fmt.Sprintf("it speaks version %q of the protocol, and this program speaks version %d", short(plain(version)), Version), ""}
	}
	return nonsense("its first line is %q, not \"plugin\", a tab and the version", short(plain(strings.TrimSpace(line))))
}

func nonsense(format string, args ...any) error {
	return failure{"its answer makes no sense: " + fmt.Sprintf(format, args...), ""}
}

// Answer reads what a plugin said to the table of a number. known tells which
// addresses the garment has. Anything that is not exactly as described makes the
// whole answer void: who cannot keep to the form may have the figures wrong too.
func Answer(text []byte, number int, known func(address string) bool) ([]Row, error) {
	if !utf8.Valid(text) {
		return nil, nonsense("it is not text in UTF-8")
	}
	lines := strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
	head := fmt.Sprintf("answer\t%d\t%d", Version, number)
	if lines[0] != head {
		return nil, nonsense("its first line is %q, not %q", short(plain(lines[0])), head)
	}
	last := len(lines) - 1
	if lines[last] != "end" {
		return nil, nonsense("its last line is not \"end\"")
	}
	if last-1 > rowsMost {
		return nil, nonsense("it has more than %d lines", rowsMost)
	}
	seen := make(map[[2]string]bool, last)
	var out []Row
	for i, line := range lines[1:last] {
		row, err := rowOf(line)
		switch {
		case err != nil:
		case !known(row.Address):
			err = fmt.Errorf("the garment has no %q", short(row.Address))
		case seen[[2]string{row.Key, row.Address}]:
			err = fmt.Errorf("%s was judged at %s before", row.Key, row.Address)
		}
		if err != nil {
			return nil, nonsense("line %d: %s", i+2, plain(err.Error()))
		}
		seen[[2]string{row.Key, row.Address}] = true
		out = append(out, row)
	}
	return out, nil
}

func rowOf(line string) (Row, error) {
	c := strings.Split(line, "\t")
	if len(c) != columns {
		return Row{}, fmt.Errorf("it has %d columns, not %d", len(c), columns)
	}
	r := Row{Key: c[0], Verdict: c[1], Address: c[2], Message: plain(untabbed.Replace(c[6]))}
	_, severity := rules.SeverityNamed(r.Verdict)
	switch {
	case !isKey(r.Key):
		return r, fmt.Errorf("%q cannot be the name of a rule", short(r.Key))
	case r.Verdict == rules.Off.String() || !severity && r.Verdict != passed && r.Verdict != notPossible:
		return r, fmt.Errorf("there is no verdict %q; there are error, warning, note, passed and not-possible", short(r.Verdict))
	case strings.TrimSpace(r.Message) == "" && r.Verdict != passed:
		return r, fmt.Errorf("a verdict of %s needs a message", r.Verdict)
	case len(r.Message) > messageMost:
		return r, fmt.Errorf("the message is longer than %d bytes", messageMost)
	}
	if c[3] == "" && c[4] == "" && c[5] == "" {
		return r, nil
	}
	r.Numeric = true
	var err error
	if r.Measured, err = figureOf(c[3]); err != nil {
		return r, err
	}
	if r.Limit, err = figureOf(c[4]); err != nil {
		return r, err
	}
	for _, u := range units {
		if c[5] == string(u) {
			r.Unit = u
			return r, nil
		}
	}
	return r, fmt.Errorf("there is no unit %q; there are mm, degrees, ratio and %%", short(c[5]))
}

func figureOf(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > 1e12 {
		return 0, fmt.Errorf("%q is not a figure", short(text))
	}
	return v, nil
}

// isKey tells whether a word can name a rule: a small letter, then small letters,
// digits, dots and hyphens.
func isKey(s string) bool {
	for i := range len(s) {
		c := s[i]
		if !(c >= 'a' && c <= 'z' || i > 0 && (c >= '0' && c <= '9' || bytes.IndexByte([]byte(".-_"), c) >= 0)) {
			return false
		}
	}
	return s != "" && len(s) <= 100
}
