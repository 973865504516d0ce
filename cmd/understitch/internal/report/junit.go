package report

import (
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"path/filepath"
	"strings"
)

// writeJUnit writes a suite of test cases for each garment, in the XML that CI
// servers read. A finding that forbids cutting is a failure and what could not
// be read is an error, so that the suite is red where the exit status is not 0;
// lesser findings pass with what they say as their output; what is accepted or
// was not possible is skipped. Checks that passed are counted in one case.
//
// There are no times in it: two runs give the same bytes.
func writeJUnit(w io.Writer, d *Document, _ Look) error {
	var all junitCounts
	for _, g := range d.Garments {
		all.add(countCases(junitCases(d, g)))
	}
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	enc := xml.NewEncoder(w)
	enc.Indent("", "  ")
	root := xml.StartElement{Name: xml.Name{Local: "testsuites"}, Attr: all.attributes("understitch")}
	if err := enc.EncodeToken(root); err != nil {
		return err
	}
	for _, g := range d.Garments {
		cases := junitCases(d, g)
		n := countCases(cases)
		suite := junitSuite{
			Name: tame(g.File), Tests: n.tests, Failures: n.failures, Errors: n.errors, Skipped: n.skipped,
			Properties: junitProperties(d, g), Cases: cases,
		}
		if err := enc.Encode(suite); err != nil {
			return err
		}
	}
	if err := enc.EncodeToken(root.End()); err != nil {
		return err
	}
	if err := enc.Flush(); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}

type junitSuite struct {
	XMLName    xml.Name        `xml:"testsuite"`
	Name       string          `xml:"name,attr"`
	Tests      int             `xml:"tests,attr"`
	Failures   int             `xml:"failures,attr"`
	Errors     int             `xml:"errors,attr"`
	Skipped    int             `xml:"skipped,attr"`
	Properties []junitProperty `xml:"properties>property"`
	Cases      []junitCase     `xml:"testcase"`
}

type junitProperty struct {
	Name  string `xml:"name,attr"`
	Value string `xml:"value,attr"`
}

type junitCase struct {
	Name    string        `xml:"name,attr"`
	Class   string        `xml:"classname,attr"`
	Checks  int           `xml:"assertions,attr,omitempty"`
	Skipped string        `xml:"skipped,omitempty"`
	Error   *junitOutcome `xml:"error"`
	Failure *junitOutcome `xml:"failure"`
	Output  string        `xml:"system-out,omitempty"`
}

type junitOutcome struct {
	Type    string `xml:"type,attr"`
	Message string `xml:"message,attr"`
	Text    string `xml:",chardata"`
}

type junitCounts struct{ tests, failures, errors, skipped int }

func (n *junitCounts) add(m junitCounts) {
	n.tests += m.tests
	n.failures += m.failures
	n.errors += m.errors
	n.skipped += m.skipped
}

func (n *junitCounts) attributes(name string) []xml.Attr {
	attr := func(name, value string) xml.Attr { return xml.Attr{Name: xml.Name{Local: name}, Value: value} }
	return []xml.Attr{
		attr("name", name), attr("tests", fmt.Sprint(n.tests)),
		attr("failures", fmt.Sprint(n.failures)), attr("errors", fmt.Sprint(n.errors)),
	}
}

func countCases(cases []junitCase) junitCounts {
	n := junitCounts{tests: len(cases)}
	for _, c := range cases {
		switch {
		case c.Failure != nil:
			n.failures++
		case c.Error != nil:
			n.errors++
		case c.Skipped != "":
			n.skipped++
		}
	}
	return n
}

func junitProperties(d *Document, g *Garment) []junitProperty {
	out := []junitProperty{{"verdict", tame(g.Verdict(d.Least).String())}}
	if g.Title != "" {
		out = append(out, junitProperty{"title", tame(g.Title)})
	}
	if len(g.Sizes) > 0 {
		out = append(out, junitProperty{"sizes", tame(strings.Join(g.Sizes, ", "))})
	}
	return out
}

// junitCases are the cases of one garment. Names are unique in it: servers take
// cases of one name for one case.
func junitCases(d *Document, g *Garment) []junitCase {
	var out []junitCase
	class := junitClass(g.File)
	named := map[string]int{}
	add := func(name string, c junitCase) {
		name = tame(name)
		if named[name]++; named[name] > 1 {
			name = fmt.Sprintf("%s (%d)", name, named[name])
		}
		c.Name, c.Class = name, class
		out = append(out, c)
	}
	if g.Passed > 0 {
		add("checks that passed", junitCase{Checks: g.Passed})
	}
	for _, diag := range g.Diagnostics {
		said := lines(sentence(diag), diag.Place.String())
		c := junitCase{Error: &junitOutcome{"not-read", tame(diag.Summary), said}}
		if diag.Severity != "error" {
			c = junitCase{Output: said}
		}
		add("the spec can be read", c)
	}
	for _, f := range g.Findings {
		said := lines(append([]string{f.Severity + ": " + f.Message}, append(g.particulars(f), f.Range.String())...)...)
		c := junitCase{Output: said}
		if d.forbids(f) {
			c = junitCase{Failure: &junitOutcome{f.Severity, tame(f.Message), said}}
		}
		add(f.Rule+" "+f.Subject, c)
	}
	for _, w := range g.Waived {
		add(w.Rule+" "+w.Subject, junitCase{Skipped: tame("accepted: " + w.Waiver.because())})
	}
	for _, n := range g.NotPossible {
		add(n.Rule+" "+n.Subject, junitCase{Skipped: tame("not possible: " + n.Reason)})
	}
	return out
}

// junitClass is the file as a class would be named: folders joined by dots, and
// no other dot, for servers group by them.
func junitClass(file string) string {
	file = filepath.ToSlash(file)
	dir, name := path.Split(file)
	name, _, _ = strings.Cut(name, ".")
	parts := strings.FieldsFunc(dir, func(r rune) bool { return r == '/' || r == '.' })
	return tame(strings.Join(append(parts, name), "."))
}

// lines joins texts, a line each.
func lines(texts ...string) string {
	for i, t := range texts {
		texts[i] = tame(t)
	}
	return strings.Join(texts, "\n")
}
