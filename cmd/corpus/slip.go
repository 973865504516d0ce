package main

import (
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"

	"understitch/cmd/corpus/internal/slips"
)

// made is how many garments of the corpus slips are made in, beside the demo's.
const made = 80

// slip makes slips and prints what is found of them.
func slip(out io.Writer, single, two int, seed uint64, keep string) error {
	if single > 0 {
		list, err := slips.Run(slips.Size{Slips: single, Garments: made, Seed: seed})
		if err != nil {
			return err
		}
		slips.Print(out, list)
		for i, o := range list {
			if keep != "" && o.Misses() {
				if err := keepSpec(keep, i, o.File, o.Text); err != nil {
					return err
				}
			}
		}
	}
	if two > 0 {
		list, err := slips.Pairs(slips.Size{Slips: two, Garments: made, Seed: seed})
		if err != nil {
			return err
		}
		slips.PrintPairs(out, list)
		for i, o := range list {
			if keep != "" && !o.Both {
				if err := keepSpec(keep, i, o.File, o.Text); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// keepSpec writes a spec to the folder of its house.
func keepSpec(dir string, i int, file string, text []byte) error {
	dir = filepath.Join(dir, path.Dir(file))
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	house, err := slips.House(path.Dir(file))
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, "house.hcl"), house, 0o644); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, fmt.Sprintf("%05d-%s", i, path.Base(file))), text, 0o644)
}
