package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules"
)

// The exit statuses.
const (
	statusClean    = 0
	statusFindings = 1
	statusTrouble  = 2 // something could not be read or checked
)

// status is an error that says nothing more: what there was to say has been
// said.
type status int

func (s status) Error() string { return fmt.Sprintf("exit status %d", int(s)) }

// runIn runs the program in a world and returns the exit status.
func runIn(ctx context.Context, args []string, w *world) int {
	root := newRoot(w)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	var s status
	switch {
	case err == nil && ctx.Err() == nil:
		return statusClean
	case errors.As(err, &s):
		return int(s)
	case ctx.Err() != nil: // also where nothing else went wrong: who stops a run does not get an answer by chance
		err = errors.New("stopped")
	}
	w.say("understitch: " + err.Error())
	return statusTrouble
}

func newRoot(w *world) *cobra.Command {
	root := &cobra.Command{
		Use:   "understitch",
		Short: "checks layered garments before cloth is cut",
		Long: `understitch checks a garment of several layers before cloth is cut: whether shared
edges are alike, whether the inner layer stays inside the outer one, whether seams
walk, notches meet and allowances agree, whether fasteners can be cut at the
length needed, and whether the whole suits the body.

A garment is one file, NAME.garment.hcl. Begin with "understitch demo", or with
"understitch check" in a folder of your own.

` + strings.Join(report.Wrap(report.Advice, 80), "\n"),
		SilenceUsage:  true,
		SilenceErrors: true,
		// A word that is no command is told in one line; without a word there is help.
		Args: func(cmd *cobra.Command, args []string) error { return unknownCommand(cmd, args) },
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetIn(w.stdin)
	root.SetOut(w.stdout)
	root.SetErr(w.stderr)
	root.SetFlagErrorFunc(flagTrouble)
	root.AddCommand(
		newCheck(w),
		newMerge(w),
		newMeasure(w),
		newOverlay(w),
		newRules(w),
		newExplain(w),
		newTryRules(w),
		newDemo(w),
		newNewPlugin(w),
		newServePlugin(w),
		newVersion(w),
	)
	return root
}

func unknownCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	for _, c := range cmd.Commands() {
		if !c.Hidden {
			names = append(names, c.Name())
		}
	}
	return fmt.Errorf("there is no command %q%s", args[0], orNearest(args[0], names, "; "+cmd.Name()+" --help lists them"))
}

// flagTrouble says what is wrong with a flag in one line.
func flagTrouble(cmd *cobra.Command, err error) error {
	var none *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var wrong *pflag.InvalidValueError
	switch {
	case errors.As(err, &none) && none.GetSpecifiedShortnames() == "":
		var names []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
		name := none.GetSpecifiedName()
		return fmt.Errorf("%s has no flag --%s%s", cmd.CommandPath(), name, orNearest("--"+name, dashed(names), "; "+cmd.CommandPath()+" --help lists them"))
	case errors.As(err, &none):
		return fmt.Errorf("%s has no flag -%s; %[1]s --help lists them", cmd.CommandPath(), none.GetSpecifiedName())
	case errors.As(err, &bare):
		return fmt.Errorf("--%s needs a value: %s", bare.GetFlag().Name, usage(bare.GetFlag()))
	case errors.As(err, &wrong):
		return fmt.Errorf("--%s %q: %s", wrong.GetFlag().Name, wrong.GetValue(), usage(wrong.GetFlag()))
	}
	return err
}

// usage is what a flag is for, without the marks for its help line.
func usage(f *pflag.Flag) string {
	_, text := pflag.UnquoteUsage(f)
	return text
}

func dashed(names []string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = "--" + n
	}
	return out
}

// orNearest asks whether the nearest known word was meant, or says something
// else where none is near.
func orNearest(word string, known []string, otherwise string) string {
	if near := rules.Nearest(word, known); near != "" {
		return fmt.Sprintf("; did you mean %q?", near)
	}
	return otherwise
}

// oneOf is a value that a flag takes from a list.
func oneOf(flag, value string, known []string) error {
	for _, k := range known {
		if value == k {
			return nil
		}
	}
	return fmt.Errorf("--%s %q is not known; it takes %s", flag, value, strings.Join(known, ", "))
}
