package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"understitch/cmd/understitch/internal/report"
	"understitch/rules/builtin"
)

func newMerge(w *world) *cobra.Command {
	var r reporting
	cmd := &cobra.Command{
		Use:   "merge REPORT…",
		Short: "joins the JSON reports of several runs into one",
		Long: `merge reads reports that were written by "check --format json", such as those of
the shares of a wardrobe (--shard), and writes them out as one, in any form. The
exit status is that of a single run over all of it. One report alone is written
out in another form. "-" reads a report from standard input.

Specs are not read again: a text report made here shows no lines of them.`,
		Example: `  understitch merge shard-1.json shard-2.json
  understitch merge shards/*.json --format junit --report sarif=report.sarif`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("merge takes the names of JSON reports")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, files []string) error {
			if err := r.valid(); err != nil {
				return err
			}
			var parts []report.Part
			for _, file := range files {
				src, err := w.read(file)
				if err != nil {
					return fmt.Errorf("%s: %s", file, readingTrouble(err))
				}
				doc, err := report.Read(src)
				if err != nil {
					return fmt.Errorf("%s: %w", file, err)
				}
				parts = append(parts, report.Part{Name: file, Document: doc})
			}
			doc, err := report.Merge(parts, report.Options{Version: version(), Least: r.least, Rules: builtin.Rules()})
			if err != nil {
				return err
			}
			return r.emit(w, doc, false)
		},
	}
	r.outputFlags(cmd.Flags())
	return cmd
}

// read reads a file, or standard input under the name "-".
func (w *world) read(file string) ([]byte, error) {
	if file == "-" {
		return io.ReadAll(w.stdin)
	}
	return os.ReadFile(file)
}
