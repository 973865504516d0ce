package report

import (
	"io"
	"strings"

	"understitch/rules"
)

const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json"

// The kinds of notification, in the order in which the driver lists them.
var (
	notRead     = sarifReference{"not-read", 0}
	notPossible = sarifReference{"not-possible", 1}
)

// writeSARIF writes the findings as SARIF 2.1.0, result by result. Accepted
// findings are results that are suppressed, in the source or, where they stand
// in a file of known findings, outside it. What could not be
// read, and checks that were not possible, are notifications of the run: they
// are no faults of the garment, and viewers would show results as such.
func writeSARIF(w io.Writer, d *Document, _ Look) error {
	out := &sarif{newStream(w), newSarifPlaces(d), map[string]int{}}
	out.open("", "{")
	out.member("$schema", sarifSchema)
	out.member("version", "2.1.0")
	out.open("runs", "[")
	out.open("", "{")
	out.tool(d)
	out.open("invocations", "[")
	out.open("", "{")
	out.member("executionSuccessful", d.Summary.Unreadable == 0)
	out.notifications(d)
	out.close("}")
	out.close("]")
	out.member("originalUriBaseIds", map[string]sarifBase{
		sourceRoot: {sarifText{Text: "the folder in which understitch was started"}},
	})
	out.member("columnKind", "utf16CodeUnits")
	out.member("defaultEncoding", "utf-8")
	out.artifacts(d)
	out.open("results", "[")
	for _, g := range d.Garments {
		for _, f := range g.Findings {
			out.element(out.result(g, f))
		}
		for _, w := range g.Waived {
			out.element(out.waived(g, w))
		}
	}
	out.close("]")
	out.close("}")
	out.close("]")
	out.close("}")
	return out.end()
}

type sarif struct {
	*stream
	places *sarifPlaces
	rules  map[string]int // where a rule stands in the list of the driver
}

// tool describes the program and all rules that were judged by. A rule that is
// spoken of but not known, as in a report from elsewhere, is listed by its name
// alone.
func (s *sarif) tool(d *Document) {
	s.open("tool", "{")
	s.open("driver", "{")
	s.member("name", d.Tool.Name)
	s.member("version", Clean(d.Tool.Version))
	s.member("language", "en-GB")
	s.open("notifications", "[")
	s.element(sarifDescriptor{ID: notRead.ID, Short: &sarifText{Text: "Something in a file could not be read; the garment was not checked in full."}})
	s.element(sarifDescriptor{ID: notPossible.ID, Short: &sarifText{Text: "A check could not be made, for want of a figure."}})
	s.close("]")
	s.open("rules", "[")
	list := func(r sarifDescriptor) {
		if _, known := s.rules[r.ID]; !known {
			s.rules[r.ID] = len(s.rules)
			s.element(r)
		}
	}
	for _, r := range d.Rules {
		list(describe(r))
	}
	for _, g := range d.Garments {
		for _, f := range g.Findings {
			list(sarifDescriptor{ID: f.Rule})
		}
		for _, f := range g.Waived {
			list(sarifDescriptor{ID: f.Rule})
		}
		for _, f := range g.NotPossible {
			list(sarifDescriptor{ID: f.Rule})
		}
	}
	s.close("]")
	s.close("}")
	s.close("}")
}

// describe is a rule's documentation.
func describe(r *rules.Rule) sarifDescriptor {
	var plain, marked strings.Builder
	part := func(heading, text string) {
		plain.WriteString(heading + ": " + text + "\n\n")
		marked.WriteString("**" + heading + ".** " + text + "\n\n")
	}
	part("Why", r.Doc.Why)
	part("How it is reckoned", r.Doc.How)
	if r.Doc.Nothing != "" {
		part("When there is nothing to judge", r.Doc.Nothing)
	}
	part("What to do", r.Doc.Fix)
	for _, l := range r.Limits {
		plain.WriteString("Limit " + l.Name + ": " + LimitText(l) + ", " + l.Text + ". Source: " + l.Source + "\n")
		marked.WriteString("- `" + l.Name + "` = " + LimitText(l) + ": " + l.Text + ". Source: " + l.Source + "\n")
	}
	return sarifDescriptor{
		ID:      r.Name,
		Short:   &sarifText{Text: r.Doc.Title},
		Full:    &sarifText{Text: r.Doc.Why},
		Help:    &sarifText{strings.TrimSpace(plain.String()), strings.TrimSpace(marked.String())},
		Default: &sarifConfig{r.Severity.String()},
		Tags:    &sarifTags{[]string{r.Family}},
	}
}

func (s *sarif) artifacts(d *Document) {
	garments := map[string]bool{}
	for _, g := range d.Garments {
		garments[g.File] = true
	}
	s.open("artifacts", "[")
	for _, file := range s.places.files {
		a := sarifArtifact{Location: fileURI(file), MIME: "text/plain"}
		if garments[file] {
			a.Roles = []string{"analysisTarget"}
		}
		s.element(a)
	}
	s.close("]")
}

func (s *sarif) notifications(d *Document) {
	s.open("toolExecutionNotifications", "[")
	d.diagnostics(func(g *Garment, diag diagnostic) {
		s.element(sarifNotification{
			Descriptor: notRead, Level: diag.Severity,
			Message: message(sentence(diag)), Locations: []sarifLocation{{Physical: s.places.physical(diag.Place)}},
		})
	})
	for _, g := range d.Garments {
		for _, n := range g.NotPossible {
			s.element(sarifNotification{
				Descriptor: notPossible, Rule: &sarifReference{n.Rule, s.rules[n.Rule]}, Level: rules.Note.String(),
				Message:   message(n.Subject + ": " + n.Reason),
				Locations: []sarifLocation{{Physical: &sarifPhysical{Artifact: s.places.uri(g.File)}, Logical: logical(n.Subject)}},
			})
		}
	}
	s.close("]")
}

func (s *sarif) result(g *Garment, f Finding) sarifResult {
	r := sarifResult{
		Rule: f.Rule, RuleIndex: s.rules[f.Rule], Level: f.Severity,
		Message:   message(strings.Join(append([]string{f.Message}, g.particulars(f)...), " ")),
		Locations: []sarifLocation{{Physical: s.places.physical(f.Range), Logical: logical(f.Subject)}},
		// The second is the one that code scanning tells alerts again by.
		Fingerprints: map[string]string{"understitch/v1": f.Fingerprint, "primaryLocationLineHash": f.Fingerprint},
		Suppressions: []sarifSuppression{},
		Properties:   sarifProperties{Garment: Clean(g.Name), Sizes: f.Sizes, WorstSize: f.WorstSize, Figure: f.Figure},
	}
	for i, other := range f.Related {
		text := message(other.Message)
		r.Related = append(r.Related, sarifLocation{ID: i + 1, Physical: s.places.physical(other.Place), Message: &text})
	}
	if f.Mend != nil {
		r.Properties.Mend = &sarifMend{Clean(f.Mend.Title), f.Mend.Safe}
		r.Fixes = s.fixes(f.Mend)
	}
	return r
}

func (s *sarif) waived(g *Garment, w Waived) sarifResult {
	r := s.result(g, w.Finding)
	kind := "inSource"
	if w.outside(g) {
		kind = "external"
	}
	r.Suppressions = []sarifSuppression{{
		Kind: kind, Status: "accepted", Justification: Clean(w.Waiver.because()),
		Location: &sarifLocation{Physical: s.places.physical(w.Waiver.Range)},
	}}
	return r
}

// fixes are the edits of a correction, file by file. A correction that only
// says what to do has none.
func (s *sarif) fixes(m *rules.Mend) []sarifFix {
	if len(m.Edits) == 0 {
		return nil
	}
	fix := sarifFix{Description: message(m.Title)}
	at := map[string]int{}
	for _, e := range m.Edits {
		i, known := at[e.Place.File]
		if !known {
			i = len(fix.Changes)
			at[e.Place.File] = i
			fix.Changes = append(fix.Changes, sarifChange{Artifact: s.places.uri(e.Place.File)})
		}
		c := &fix.Changes[i]
		c.Replacements = append(c.Replacements, sarifReplacement{s.places.region(e.Place), sarifContent{e.Text}})
	}
	return []sarifFix{fix}
}

func logical(subject string) []sarifLogical { return []sarifLogical{{Clean(subject)}} }

// message is a text as SARIF's messages have it: braces doubled, for they are
// places to fill in, and no brackets that would read as a link.
func message(text string) sarifText {
	return sarifText{Text: strings.NewReplacer("{", "{{", "}", "}}", "](", "] (").Replace(Clean(text))}
}
