package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"understitch/model"
	"understitch/rules"
)

// writeGitHub writes findings as the commands that a GitHub workflow takes from
// its log to mark the lines of a change. The verdict stands before them, for who
// reads the log.
func writeGitHub(w io.Writer, d *Document, _ Look) error {
	out := bufio.NewWriter(w)
	if len(d.Garments) > 0 {
		fmt.Fprintln(out, tame(shout(d.Verdict())))
	}
	d.diagnostics(func(_ *Garment, diag diagnostic) {
		annotate(out, diag.Severity, diag.Place, "not read", sentence(diag))
	})
	for _, g := range d.Garments {
		for _, f := range g.Findings {
			annotate(out, f.Severity, f.Range, f.Rule+": "+f.Subject, append([]string{f.Message}, g.particulars(f)...)...)
		}
	}
	return out.Flush()
}

func annotate(w *bufio.Writer, severity string, at model.Place, title string, said ...string) {
	if severity == rules.Note.String() {
		severity = "notice"
	}
	var properties []string
	add := func(name, value string) {
		properties = append(properties, name+"="+tame(propertyEscapes.Replace(value)))
	}
	if at.File != "" {
		add("file", at.File)
	}
	if at.Start.Line > 0 {
		last := at.End
		if last.Line > at.Start.Line && last.Column <= 1 {
			last.Line-- // up to the very start of a line is all of the one before
		}
		add("line", fmt.Sprint(at.Start.Line))
		add("endLine", fmt.Sprint(max(last.Line, at.Start.Line)))
		if at.End.Line == at.Start.Line { // columns hold within one line only
			add("col", fmt.Sprint(at.Start.Column))
			add("endColumn", fmt.Sprint(max(last.Column-1, at.Start.Column)))
		}
	}
	add("title", title)
	for i, s := range said {
		said[i] = tame(dataEscapes.Replace(s))
	}
	fmt.Fprintf(w, "::%s %s::%s\n", severity, strings.Join(properties, ","), strings.Join(said, "%0A"))
}

// What the agent takes back: in a message the percent sign and line ends, in a
// property also what would end it. (GitHub, "Workflow commands for GitHub
// Actions", and the agent's own toolkit.)
var (
	dataEscapes     = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A")
	propertyEscapes = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C")
)
