// Command corpus writes a wardrobe of garments in which faults are planted, and
// says of each which rule must find it at what; with --check it runs the rules
// over the wardrobe and counts what they found.
//
//	go run ./cmd/corpus --garments 2000 --sizes 4 --faults 1 --seed 1 DIR
//	go run ./cmd/corpus --slips 2000 --seed 1
//	go run ./cmd/corpus --slips-two 1000 --seed 1
//	go run ./cmd/corpus --laws 40 --seed 1
//	go run ./cmd/corpus --cost PROGRAM DIR
//
// DIR then holds a house.hcl, the garments, and expected.json. The same flags
// write the same bytes. See docs/corpus.md for what is planted and the figures.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"understitch/cmd/corpus/internal/cost"
	"understitch/cmd/corpus/internal/plan"
	"understitch/cmd/corpus/internal/tally"
	"understitch/cmd/corpus/internal/wardrobe"
)

func main() {
	if err := run(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		fmt.Fprintln(os.Stderr, "corpus:", err)
		os.Exit(2)
	}
}

func run(args []string, out, errs io.Writer) error {
	flags := flag.NewFlagSet("corpus", flag.ContinueOnError)
	flags.SetOutput(errs)
	flags.Usage = func() {
		fmt.Fprintln(errs, "usage: corpus [flags] DIR")
		flags.PrintDefaults()
	}
	var s plan.Size
	flags.IntVar(&s.Garments, "garments", 200, "how many garments")
	flags.IntVar(&s.Sizes, "sizes", 3, "at most so many sizes a garment")
	flags.Float64Var(&s.Faults, "faults", 0.5, "the share of garments with a fault, from 0 to 1")
	flags.Uint64Var(&s.Seed, "seed", 1, "another seed, another wardrobe")
	check := flags.Bool("check", false, "run the rules over the wardrobe and count what they find")
	single := flags.Int("slips", 0, "make so many slips of one figure, unit or name, and count what is found of them")
	two := flags.Int("slips-two", 0, "make so many pairs of independent slips, and count where both are found")
	law := flags.Int("laws", 0, "grow each fault in so many garments, and change the house in a hundred times as many, to see whether the laws hold")
	keep := flags.String("keep", "", "write the specs of slips that miss the aim, or that break a law, to this folder")
	program := flags.String("cost", "", "tell what `PROGRAM` check costs on the frozen corpus, in times of HCL's parser alone; --garments takes the first so many of it")
	parse := flags.Bool("parse", false, "parse the specs of DIR and do nothing else")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *single > 0 || *two > 0 {
		return slip(out, *single, *two, s.Seed, *keep)
	}
	if *law > 0 {
		return holdToLaws(out, *law, s.Seed, *keep)
	}
	switch {
	case flags.NArg() != 1:
		return fmt.Errorf("one folder is to be named, to write to; %d are", flags.NArg())
	case s.Garments < 1 || s.Sizes < 1:
		return fmt.Errorf("there must be one garment and one size at least")
	case !(s.Faults >= 0 && s.Faults <= 1):
		return fmt.Errorf("the share of faults is to be from 0 to 1, not %v", s.Faults)
	}
	dir := flags.Arg(0)
	if *parse {
		return cost.Parse(dir)
	}
	if *program != "" {
		n := Frozen.Garments
		flags.Visit(func(f *flag.Flag) {
			if f.Name == "garments" {
				n = s.Garments
			}
		})
		return tellCost(out, dir, *program, n)
	}
	expected, err := write(dir, s)
	if err != nil || !*check {
		return err
	}
	cases, err := tally.Run(dir, expected)
	if err != nil {
		return err
	}
	tally.Of(cases).Print(out)
	return nil
}

// write writes the corpus and returns what is expected of it.
func write(dir string, s plan.Size) ([]tally.Expect, error) {
	files, err := plan.Corpus(s)
	if err != nil {
		return nil, err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	put := func(name, text string) error { return os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644) }
	if err := put("house.hcl", wardrobe.House().Text()); err != nil {
		return nil, err
	}
	var expected []tally.Expect
	for _, f := range files {
		if err := put(f.File, f.Text); err != nil {
			return nil, err
		}
		expected = append(expected, f.Expect)
	}
	list, err := json.MarshalIndent(expected, "", " ")
	if err != nil {
		return nil, err
	}
	return expected, put("expected.json", string(list)+"\n")
}
