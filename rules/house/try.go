package house

import (
	"fmt"

	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
)

// Trial is how one example of a rule came out.
type Trial struct {
	Rule  string
	Good  bool        // the rule must find nothing in it; else it must find something
	Name  string      // of the example, as messages have it
	Place model.Place // where the house states it
	Fault string      // what is not as it must be; "" for a trial that went well
}

// Judge judges a garment in one size by one rule.
type Judge func(*model.Garment) ([]rules.Outcome, error)

// Try runs a rule of a house on the examples that it carries, by itself. read
// gives the text of a file, named from the house's folder.
func Try(h *spec.House, stated *spec.Require, r *rules.Rule, read func(name string) ([]byte, error)) []Trial {
	judge := func(g *model.Garment) ([]rules.Outcome, error) {
		engine, err := rules.New([]*rules.Rule{r})
		if err != nil {
			return nil, err
		}
		settings, _ := engine.Settings(nil)
		return engine.Check(g, settings), nil
	}
	return Examples(h, r.Name, stated.Good, stated.Bad, judge, read)
}

// Examples tries whatever judges garments under a rule's name on good and bad
// examples.
func Examples(h *spec.House, rule string, good, bad []spec.Text, judge Judge, read func(name string) ([]byte, error)) []Trial {
	var out []Trial
	for _, x := range []struct {
		list []spec.Text
		good bool
	}{{good, true}, {bad, false}} {
		for i, e := range x.list {
			t := Trial{Rule: rule, Good: x.good, Name: e.Text, Place: spec.PlaceOf(e.Range)}
			src := []byte(e.Text)
			if inline(e.Text) {
				t.Name = fmt.Sprintf("%s, %s example %d", rule, sort(x.good), i+1)
			} else {
				var err error
				if src, err = read(e.Text); err != nil {
					t.Fault = err.Error()
					out = append(out, t)
					continue
				}
			}
			t.Fault = tried(h, judge, t, src)
			out = append(out, t)
		}
	}
	return out
}

func sort(good bool) string {
	if good {
		return "good"
	}
	return "bad"
}

// tried tells what is not as it must be with one example.
func tried(h *spec.House, judge Judge, t Trial, src []byte) string {
	doc, diags := spec.Read(t.Name, src, h)
	if model.Errors(diags) {
		return unread(diags)
	}
	sizes := doc.Sizes()
	if len(sizes) == 0 {
		sizes = []string{""}
	}
	var outcomes []rules.Outcome
	for _, size := range sizes {
		g, diags := doc.Garment(size)
		if model.Errors(diags) {
			return unread(diags)
		}
		came, err := judge(g)
		if err != nil {
			return err.Error()
		}
		outcomes = append(outcomes, came...)
	}
	return verdict(rules.Gather(outcomes), t.Good)
}

func unread(diags []model.Diagnostic) string {
	for _, d := range diags {
		if d.Severity == "error" {
			return fmt.Sprintf("it cannot be read: line %d: %s", d.Place.Start.Line, d.Summary)
		}
	}
	return ""
}

func verdict(came rules.Result, good bool) string {
	switch {
	case good && len(came.Findings) > 0:
		f := came.Findings[0]
		return fmt.Sprintf("it is to be good, and the rule finds a fault at %s: %s", f.Subject, f.Message)
	case good && len(came.NotPossible) > 0:
		f := came.NotPossible[0]
		return fmt.Sprintf("it is to be good, and the rule cannot judge %s: %s", f.Subject, f.Reason)
	case good && came.Passed == 0:
		return "it is to be good, and the rule looks at nothing in it"
	case !good && len(came.Findings) == 0 && len(came.NotPossible) > 0:
		f := came.NotPossible[0]
		return fmt.Sprintf("it is to be bad, and the rule cannot judge %s: %s", f.Subject, f.Reason)
	case !good && len(came.Findings) == 0:
		return "it is to be bad, and the rule finds nothing in it"
	}
	return ""
}

// Untried gives a warning for each rule of a house that lacks a good or a bad
// example.
func Untried(h *spec.House) []model.Diagnostic {
	var out []model.Diagnostic
	for _, r := range h.Requires() {
		missing := ""
		switch {
		case len(r.Good) == 0 && len(r.Bad) == 0:
			missing = "no examples"
		case len(r.Good) == 0:
			missing = "no good example"
		case len(r.Bad) == 0:
			missing = "no bad example"
		default:
			continue
		}
		out = append(out, model.Diagnostic{
			Severity: "warning", Place: spec.PlaceOf(r.Header),
			Summary: fmt.Sprintf("the rule %s has %s", r.Name, missing),
			Detail:  "State a small spec, or the path of one, as good and as bad; understitch try-rules then shows that the rule finds what it should.",
		})
	}
	return out
}
