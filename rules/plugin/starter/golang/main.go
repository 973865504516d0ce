// A rule of the house as a program. It reads a table of a garment's figures from
// standard input and writes what it finds to standard output, one garment after
// another. The rule itself is in rule.go; protocol.go is the way in and out, and
// seldom needs a change.
package main

import (
	"fmt"
	"os"
)

func main() {
	if err := Serve(os.Stdin, os.Stdout, Judge); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
