package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// update writes the reports that the scripts compare with anew.
var update = flag.Bool("update", false, "write the expected output of the scripts anew")

// TestMain lets the scripts run this very program under its own name.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"understitch": main})
}

// TestScripts runs the scripts in testdata/script: what is printed, where, and
// the exit status. Beside the usual commands they have
//
//	status N ARGS...      run understitch and assert its exit status
//	schema NAME FILE      hold a JSON file (or stdout) against docs/NAME.schema.json,
//	                      or, where NAME is sarif, against that of the standard
//	sparse FILE MB        make a file of that size that takes no room
//	nested FILE N         make a spec with so many brackets inside one another
//	gotool [VAR=VALUE...] ARGS...      run the Go tool in the script's folder
//	pin HOUSE NAME FILE [LINE...]      name a plugin in a house file
//	narrow FILE N         assert that no line takes more columns than that
//	short FILE N          assert that the file has no more lines than that
//	terminal FILE COMMAND...           run a command on a terminal; FILE gets what it shows
func TestScripts(t *testing.T) {
	docs, err := filepath.Abs("../../docs")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Setup: func(env *testscript.Env) error {
			env.Setenv("COLUMNS", "80")
			env.Setenv("XDG_CACHE_HOME", filepath.Join(env.WorkDir, ".cache")) // of compiled plugins
			env.Setenv("TESTDATA", filepath.Join(filepath.Dir(docs), "cmd", "understitch", "internal", "report", "testdata"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status":   scriptStatus,
			"sparse":   scriptSparse,
			"nested":   scriptNested,
			"narrow":   scriptNarrow,
			"short":    scriptShort,
			"terminal": scriptTerminal,
			"gotool":   scriptGo,
			"pin":      scriptPin,
			"schema":   func(ts *testscript.TestScript, neg bool, args []string) { scriptSchema(ts, neg, args, docs) },
		},
		Condition: func(name string) (bool, error) {
			if name == "root" { // whom no file's permissions stop
				return os.Geteuid() == 0, nil
			}
			return false, fmt.Errorf("unknown condition %q", name)
		},
	})
}

func scriptStatus(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: status N ARGS...")
	}
	err := ts.Exec("understitch", args[1:]...)
	var exit *exec.ExitError
	got := 0
	if errors.As(err, &exit) {
		got = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if strconv.Itoa(got) != args[0] {
		ts.Fatalf("the exit status is %d, not %s", got, args[0])
	}
}

func scriptSparse(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: sparse FILE MB")
	}
	size, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	f, err := os.Create(ts.MkAbs(args[0]))
	ts.Check(err)
	ts.Check(f.Truncate(size << 20))
	ts.Check(f.Close())
}

func scriptNested(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: nested FILE N")
	}
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	text := "garment \"deep\" { unit = \"cm\" }\ndraft { a = " + strings.Repeat("(", n) + "1" + strings.Repeat(")", n) + " }\n"
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o600))
}

func scriptNarrow(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: narrow FILE N")
	}
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	for line := range strings.Lines(ts.ReadFile(args[0])) {
		if columns := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); columns > n {
			ts.Fatalf("this line takes %d columns, more than %d: %s", columns, n, line)
		}
	}
}

func scriptShort(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: short FILE N")
	}
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	if lines := strings.Count(ts.ReadFile(args[0]), "\n"); lines > n {
		ts.Fatalf("%s has %d lines, more than %d", args[0], lines, n)
	}
}

func scriptSchema(ts *testscript.TestScript, neg bool, args []string, docs string) {
	if len(args) != 2 {
		ts.Fatalf("usage: [!] schema NAME FILE")
	}
	file := filepath.Join(docs, args[0]+".schema.json")
	if args[0] == "sarif" {
		file = filepath.Join(ts.Getenv("TESTDATA"), "sarif-2.1.0-rtm.5.json")
	}
	compiled, err := jsonschema.NewCompiler().Compile(file)
	ts.Check(err)
	value, err := jsonschema.UnmarshalJSON(strings.NewReader(ts.ReadFile(args[1])))
	ts.Check(err)
	switch err := compiled.Validate(value); {
	case neg && err == nil:
		ts.Fatalf("%s suits the schema %s", args[1], args[0])
	case !neg && err != nil:
		ts.Fatalf("%s does not suit the schema %s: %v", args[1], args[0], err)
	}
}
