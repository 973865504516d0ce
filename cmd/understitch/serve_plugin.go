package main

import (
	"errors"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"understitch/rules/plugin"
)

// servePlugin is the word by which the program starts itself to run a plugin.
const servePlugin = "serve-plugin"

func newServePlugin(w *world) *cobra.Command {
	return &cobra.Command{
		Use:    servePlugin,
		Short:  "runs a plugin for another process of this program",
		Hidden: true,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return errors.New(servePlugin + " is for understitch itself")
			}
			return plugin.Serve(w.stdin, w.stdout)
		},
	}
}

// pluginRunner runs plugins in processes of this very program; nil where its file
// cannot be told.
func pluginRunner() *plugin.Runner {
	program, err := os.Executable()
	if err != nil {
		return nil
	}
	r := &plugin.Runner{Program: program, Args: []string{os.Args[0], servePlugin}}
	if cache, err := os.UserCacheDir(); err == nil {
		r.Cache = filepath.Join(cache, "understitch", "plugins")
	}
	return r
}
