package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules/plugin"
)

func newNewPlugin(w *world) *cobra.Command {
	return &cobra.Command{
		Use:   "new-plugin DIR",
		Short: "writes a rule that is a program, to begin your own with",
		Long: `new-plugin writes a small rule that is a program into a new folder: in Go, with its
test, and the same rule in C. It is a working whole; docs/plugins.md goes on from
there.`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("new-plugin takes one folder, which it makes")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			dir := filepath.Clean(args[0])
			written, err := plugin.WriteStarter(dir)
			if err != nil {
				return err
			}
			for _, name := range written {
				if _, err := fmt.Fprintln(w.stdout, report.Clean(filepath.Join(dir, name))); err != nil {
					return err
				}
			}
			_, err = fmt.Fprintf(w.stdout, "\nREADME.md there says how it is tested, built and named in house.hcl.\n")
			return err
		},
	}
}
