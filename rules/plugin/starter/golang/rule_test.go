package main

import (
	"strings"
	"testing"
)

// The plugin is an ordinary program: its tests need neither understitch nor
// WebAssembly.
func TestJudge(t *testing.T) {
	const tables = "table\t1\t7\n" +
		"garment\tname\tbodice\n" +
		"shell.front.dart.bust\tintake\t46\n" +
		"shell.front.dart.waist\tintake\t30\n" +
		"end\n" +
		"table\t1\t8\n" +
		"garment\tname\tsash\n" +
		"end\n"
	const want = "plugin\t1\n" +
		"answer\t1\t7\n" +
		"dart-intake\twarning\tshell.front.dart.bust\t46\t40\tmm\tthis dart takes in 4.6 cm; from 4.0 cm on make two of it\n" +
		"dart-intake\tpassed\tshell.front.dart.waist\t30\t40\tmm\t\n" +
		"end\n" +
		"answer\t1\t8\n" +
		"end\n"
	var got strings.Builder
	if err := Serve(strings.NewReader(tables), &got, Judge); err != nil {
		t.Fatal(err)
	}
	if got.String() != want {
		t.Errorf("got\n%s\nwant\n%s", got.String(), want)
	}
}

func TestATableThatBreaksOff(t *testing.T) {
	for _, text := range []string{"table\t1\t7\ngarment\tname\tx\n", "table\t9\t7\nend\n", "nonsense\n"} {
		if err := Serve(strings.NewReader(text), &strings.Builder{}, Judge); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}
