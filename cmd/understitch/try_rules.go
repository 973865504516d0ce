package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/model"
	"understitch/model/spec"
	"understitch/rules"
	"understitch/rules/builtin"
	"understitch/rules/house"
	"understitch/rules/inspect"
)

func newTryRules(w *world) *cobra.Command {
	return &cobra.Command{
		Use:   "try-rules [PATH…]",
		Short: "tries the rules of a house on the examples that they carry",
		Long: `try-rules finds the house files (` + spec.HouseFile + `) under the paths, or here, and tries each
rule that they state on its own examples: in a good one it must find nothing, in a
bad one something. A rule without examples is warned of. Of a plugin it also tells
whether it keeps to the protocol.

The exit status is 0 where all is as it must be, 1 where an example comes out
otherwise, and 2 where a house file cannot be read.`,
		Example: `  understitch try-rules
  understitch try-rules standards/` + spec.HouseFile,
		RunE: func(_ *cobra.Command, paths []string) error { return tryRules(w, orHere(paths)) },
	}
}

func tryRules(w *world, paths []string) error {
	engine, err := rules.New(builtin.Rules())
	if err != nil {
		return fmt.Errorf("the rules that are built in are not in order: %w", err)
	}
	files, err := houseFiles(paths)
	switch {
	case err != nil:
		return err
	case len(files) == 0:
		return fmt.Errorf("no file named %s under %s", spec.HouseFile, strings.Join(paths, ", "))
	}
	in := &inspect.Inspector{Engine: engine}
	t := trials{w: w}
	for _, file := range files {
		t.house(in, file)
	}
	if t.houses > 0 {
		t.total()
	}
	switch {
	case t.trouble:
		return status(statusTrouble)
	case t.wrong > 0 || t.unkept > 0:
		return status(statusFindings)
	}
	return nil
}

// houseFiles are the house files that are named, lie in the folders named, or,
// where there is none in one, hold for it.
func houseFiles(paths []string) ([]string, error) {
	var out []string
	for _, path := range paths {
		path = filepath.Clean(path)
		info, err := os.Stat(path)
		switch {
		case err != nil:
			return nil, fmt.Errorf("%s: %s", path, readingTrouble(err))
		case !info.IsDir() && filepath.Base(path) != spec.HouseFile:
			return nil, fmt.Errorf("%s: this is no house file: its name is not %s", path, spec.HouseFile)
		case !info.IsDir():
			out = append(out, path)
			continue
		}
		before := len(out)
		err = filepath.WalkDir(path, func(file string, entry fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return fmt.Errorf("%s: %s", file, readingTrouble(err))
			case file != path && strings.HasPrefix(entry.Name(), "."):
				return skipFolder(entry)
			case !entry.IsDir() && entry.Name() == spec.HouseFile:
				out = append(out, file)
			}
			return nil
		})
		if err != nil {
			return nil, err
		}
		if file, ok := spec.FindHouse(path); ok && len(out) == before {
			out = append(out, file)
		}
	}
	slices.Sort(out)
	return slices.Compact(out), nil
}

// trials tells how the examples came out, and counts them.
type trials struct {
	w             *world
	houses, rules int
	tried, wrong  int // examples
	unkept        int // plugins that do not keep to the protocol
	trouble       bool
}

func (t *trials) house(in *inspect.Inspector, file string) {
	s := in.Standards(filepath.Join(filepath.Dir(file), "-"+suffix))
	for _, d := range s.Faults {
		t.w.problem(d)
	}
	if model.Errors(s.Faults) || s.House == nil {
		t.trouble = true
		return
	}
	for _, d := range house.Untried(s.House) {
		t.w.problem(d)
	}
	t.houses++
	t.line(file, "")
	for _, stated := range s.House.Requires() {
		t.rules++
		t.came(stated.Name, house.Try(s.House, stated, s.Engine.Rule(stated.Name), beside(file)), nil, "")
	}
	for _, p := range s.House.Plugins() {
		t.plugin(file, s, p)
	}
}

// came tells how the examples of a rule came out. wrong is what was found wrong
// beside them, and right what is said where nothing was.
func (t *trials) came(name string, examples []house.Trial, wrong []string, right string) {
	good, bad, faults := 0, 0, len(wrong)
	for _, trial := range examples {
		t.tried++
		switch {
		case trial.Fault != "":
			wrong = append(wrong, trial.Place.String()+": "+trial.Fault)
		case trial.Good:
			good++
		default:
			bad++
		}
	}
	t.wrong += len(wrong) - faults
	text := fmt.Sprintf("%d good and %d bad as they must be", good, bad)
	switch {
	case good+bad == 0 && right == "":
		text = "not tried"
	case good+bad == 0:
		text = right
	case right != "":
		text += "; " + right
	}
	if len(wrong) > 0 {
		text = fmt.Sprintf("WRONG: %d of %d", len(wrong), good+bad+len(wrong))
	}
	t.line(fmt.Sprintf("  %-20s %s", name, text), "")
	for _, fault := range wrong {
		t.line("    ", fault)
	}
}

// beside reads files in the folder of a house file, and none outside it.
func beside(file string) func(name string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		folder, err := os.OpenRoot(filepath.Dir(file))
		if err != nil {
			return nil, errors.New(readingTrouble(err))
		}
		defer folder.Close()
		src, err := folder.ReadFile(filepath.FromSlash(name))
		switch {
		case err == nil:
			return src, nil
		case !filepath.IsLocal(filepath.FromSlash(name)):
			return nil, fmt.Errorf("%s lies outside the folder of the house file", name)
		}
		return nil, fmt.Errorf("%s: %s", name, readingTrouble(err))
	}
}

func (t *trials) total() {
	text := counted(t.rules, "rule") + ", no examples"
	if t.tried > 0 {
		text = fmt.Sprintf("%s, %s: %d as they must be, %d not", counted(t.rules, "rule"), counted(t.tried, "example"), t.tried-t.wrong, t.wrong)
	}
	if t.unkept > 0 {
		text += fmt.Sprintf("; %s not as the protocol has it", counted(t.unkept, "plugin"))
	}
	t.line(text, "")
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// line writes a line to standard output, long text wrapped behind the lead.
func (t *trials) line(lead, text string) {
	if text == "" {
		fmt.Fprintln(t.w.stdout, report.Clean(lead))
		return
	}
	for _, l := range report.Wrap(report.Clean(text), max(t.w.columns()-len(lead), 20)) {
		fmt.Fprintln(t.w.stdout, lead+l)
	}
}
