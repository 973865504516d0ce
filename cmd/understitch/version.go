package main

import (
	"fmt"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// release is the version of this source; a build from a tagged module knows
// its own better.
const release = "0.1.0"

func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return release
}

func newVersion(w *world) *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "says which version this is",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("version takes no more words, not %q", args[0])
			}
			return nil
		},
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintf(w.stdout, "understitch %s\n", version())
			return err
		},
	}
}
