package plugin

import (
	"cmp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"understitch/model"
	"understitch/rules"
)

// grace is what starting and killing a process may take beyond a plugin's time
// on a busy machine.
const grace = time.Minute

// The time of plugins that are to be stopped by it, and of those that are to answer,
// or to come to another end first, however busy the machine.
const (
	soon  = time.Second
	never = 2 * time.Minute
)

// Whatever a plugin does with one garment, that garment is known to be not
// checked in full, within the plugin's time, and the next one is checked.
func TestHostileAtOneGarment(t *testing.T) {
	module := guest(t, "testdata/hostile")
	for _, c := range []struct {
		name, want, beside string
		time               time.Duration
	}{
		{name: "endless-loop", want: "it was stopped: it gave no answer within 1 s", time: soon},
		{name: "calls", want: "it was stopped: it gave no answer within 1 s", time: soon},
		{name: "deep-calls", want: "it "}, // a stack that is full, told of at length
		{name: "memory", want: "it ended, with status 2, where it should have answered", beside: "out of memory"},
		{name: "output", want: "it was stopped: its answer is longer than its 256 kB"},
		{name: "notes", want: "it ", beside: "xxxx"},
		{name: "no-answer", want: `its answer makes no sense: line 2: it has 4 columns, not 7`},
		{name: "not-text", want: "its answer makes no sense: it is not text in UTF-8"},
		{name: "wrong-number", want: `its answer makes no sense: its first line is "answer 1 999", not "answer\t1\t`},
		{name: "wrong-address", want: `its answer makes no sense: line 2: the garment has no "shell.nowhere"`},
		{name: "exit", want: "it ended, with status 1, where it should have answered", beside: "it said: I will not"},
		{name: "leave", want: "it ended, with status 0, where it should have answered"},
		{name: "fall", want: "it ended, with status 2, where it should have answered", beside: "panic: out of thread"},
		{name: "open", want: `it was stopped: it tried to open the file "etc/hostname", and a plugin has no files and no network`},
		{name: "write", want: `it was stopped: it tried to open the file "left-behind"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := named("knits", module)
			s := set(t, p, module)
			_, failed, _ := ask(s, garment(t, "before", 3))
			require.Empty(t, failed)
			p.Time = cmp.Or(c.time, never)
			outcomes, failed, took := ask(s, garment(t, c.name, 3))
			p.Time = never
			require.Empty(t, outcomes)
			require.Len(t, failed, 1)
			require.Equal(t, "error", failed[0].Severity)
			require.Contains(t, failed[0].Summary, `what the plugin "knits" looks for is not known of this garment: `)
			require.Contains(t, failed[0].Summary, c.want)
			require.Contains(t, failed[0].Detail, c.beside)
			require.Less(t, len(failed[0].Detail), notesMost+100)
			require.Equal(t, c.name+".garment.hcl", failed[0].Place.File)
			require.Less(t, took, soon+grace)

			outcomes, failed, _ = ask(s, garment(t, "other", 3))
			require.Empty(t, failed, "the other garments are checked")
			require.Len(t, outcomes, 1)
			require.Equal(t, rules.Found, outcomes[0].Status)
		})
	}
}

// What a plugin says beyond its answer is not taken for the next one.
func TestAnswersThatGoOn(t *testing.T) {
	module := guest(t, "testdata/hostile")
	s := set(t, named("knits", module), module)
	for range 3 {
		outcomes, failed, _ := ask(s, garment(t, "twice", 3))
		require.Empty(t, failed)
		require.Len(t, outcomes, 1)
		outcomes, failed, _ = ask(s, garment(t, "other", 3))
		require.Empty(t, failed)
		require.Len(t, outcomes, 1)
	}
}

// A plugin sees no variable of ours, and no word of how it was started.
func TestNothingToSee(t *testing.T) {
	t.Setenv("UNDERSTITCH_SECRET", "thread")
	module := guest(t, "testdata/hostile")
	s := set(t, named("knits", module), module)
	outcomes, failed, _ := ask(s, garment(t, "look-about", 3))
	require.Empty(t, failed)
	require.Equal(t, "0 variables, [knits]", outcomes[0].Message)
}

// What fails for every garment is told at the plugin's block, within its time,
// and tried once.
func TestHostileFromTheStart(t *testing.T) {
	for _, c := range []struct {
		name, want string
		module     []byte
		time       time.Duration
		change     func(*model.Plugin)
	}{
		{name: "a loop", module: looping, want: "it was stopped: it gave no answer within 1 s", time: soon},
		{name: "calls in width, without a loop", module: widening, want: "it was stopped: it gave no answer within 1 s", time: soon},
		{name: "calls in depth", module: deepening, want: "it "},
		{name: "memory", module: growing, want: "it was stopped: it gave no answer within 1 s", time: soon}, // growing fails at the cap, for ever
		{name: "tables", module: tabling, want: "it was stopped: it took more memory than its 64 MB"},
		{name: "a fall", module: falling, want: "it fell over: wasm error: unreachable"},
		{name: "no word", module: silent, want: "it ended, with status 0, where it should have answered"},
		{name: "no module", module: []byte("a letter"), want: "it cannot be run: invalid magic number"},
		{name: "half a module", module: looping[:40], want: "it cannot be run: "},
		{name: "no file", module: silent, want: "there is no file elsewhere.wasm",
			change: func(p *model.Plugin) { p.File = "elsewhere.wasm" }},
		{name: "another file", module: silent, want: "knits.wasm is not the file that the house means; its sha256 is " + sumOf(silent),
			change: func(p *model.Plugin) { p.SHA256 = strings.Repeat("0", 64) }},
		{name: "too large", module: make([]byte, moduleMost+1), want: "knits.wasm is larger than 32 MB"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			p := named("knits", c.module)
			p.Time = cmp.Or(c.time, never)
			s := set(t, p, c.module)
			if c.change != nil {
				c.change(p)
			}
			outcomes, failed, took := ask(s, garment(t, "one", 3))
			require.Empty(t, outcomes)
			require.Len(t, failed, 1)
			require.Contains(t, failed[0].Summary, `the plugin "knits" cannot be used: `)
			require.Contains(t, failed[0].Summary, c.want)
			require.Less(t, took, soon+grace)

			p.Time = never
			_, again, took := ask(s, garment(t, "two", 3))
			require.Equal(t, failed, again)
			require.Less(t, took, grace, "it is not tried again")
		})
	}
}

// A plugin that spins does not outlive the program that started it, however that
// ended.
func TestNoOrphans(t *testing.T) {
	module := guest(t, "testdata/hostile")
	p := named("knits", module)
	c, err := runner(t).start(p, module)
	require.NoError(t, err)
	require.NoError(t, c.to.write(frameInput, Table(1, garment(t, "endless-loop", 3))))
	time.Sleep(50 * time.Millisecond) // it spins by now
	require.NoError(t, c.shut.Close())
	ended := make(chan error, 1)
	go func() { ended <- c.cmd.Wait() }()
	select {
	case <-ended:
	case <-time.After(grace):
		c.kill()
		t.Fatal("it goes on")
	}
}
