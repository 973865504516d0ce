//go:build !linux

package main

import "github.com/rogpeppe/go-internal/testscript"

func scriptTerminal(ts *testscript.TestScript, _ bool, _ []string) {
	ts.Fatalf("a terminal is made on Linux only; the script skips elsewhere")
}
