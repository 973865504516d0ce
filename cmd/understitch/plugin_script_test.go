package main

import (
	"crypto/sha256"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/require"
)

// scriptGo runs the Go tool, as whoever writes a plugin does: with variables of
// its own first, in the script's folder. The source of another folder of this
// module is named from ours.
func scriptGo(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: gotool [NAME=VALUE...] ARGS...")
	}
	env := append(os.Environ(), "GOFLAGS=", "GOWORK=off")
	for len(args) > 0 && strings.Contains(args[0], "=") {
		env, args = append(env, args[0]), args[1:]
	}
	cmd := exec.Command("go", args...)
	cmd.Env, cmd.Dir = env, ts.MkAbs(".")
	if slices.Contains(args, hostile) {
		cmd.Dir = ""
		cmd.Args[slices.Index(args, "-o")+2] = ts.MkAbs(args[slices.Index(args, "-o")+1])
	}
	out, err := cmd.CombinedOutput()
	ts.Logf("%s", out)
	ts.Check(err)
}

// hostile is the plugin that misbehaves as its garment's name tells it to.
const hostile = "../../rules/plugin/testdata/hostile"

// scriptPin names a plugin in a house file, with its sha256 and further lines.
func scriptPin(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 3 {
		ts.Fatalf("usage: pin HOUSE NAME FILE [LINE...]")
	}
	house := ts.ReadFile(args[0])
	sum := sha256.Sum256([]byte(ts.ReadFile(args[2])))
	block := fmt.Sprintf("plugin %q {\n  file   = %q\n  sha256 = \"%x\"\n  %s\n}\n", args[1], args[2], sum, strings.Join(args[3:], "\n  "))
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(house+block), 0o600))
}

// The steps of the page on plugins, and of the page that comes with a new one,
// are run by the script of a new plugin.
func TestThePluginPagesSteps(t *testing.T) {
	script, err := os.ReadFile("testdata/script/new_plugin.txtar")
	require.NoError(t, err)
	steps := 0
	for _, page := range []string{"../../docs/plugins.md", "../../rules/plugin/starter/README.md"} {
		text, err := os.ReadFile(page)
		require.NoError(t, err)
		for line := range strings.Lines(string(text)) {
			line = strings.TrimSpace(line)
			words := strings.Fields(line)
			if len(words) < 2 || !slices.Contains([]string{"go", "understitch", "GOOS=wasip1"}, words[0]) {
				continue
			}
			if words[0] == "understitch" {
				line = "status 0 " + strings.Join(words[1:], " ")
			} else {
				line = "gotool " + strings.TrimPrefix(strings.ReplaceAll(line, `"`, "'"), "go ")
			}
			line = strings.Replace(line, " go build ", " build ", 1)
			require.Contains(t, string(script), "\n"+line+"\n", page)
			steps++
		}
	}
	require.Greater(t, steps, 5)
}
