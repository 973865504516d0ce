package plugin

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"sync/atomic"
	"time"

	"understitch/model"
)

// Runner says how a child is started.
type Runner struct {
	Program string   // this program's own file
	Args    []string // what it is started with, its name first
	Cache   string   // the folder for compiled modules; "" for none
}

// compileTime is how long a module may take to be compiled, which happens once
// and is kept in the cache.
const compileTime = 60 * time.Second

// What is kept of what a plugin writes to its standard error, and told of it.
const (
	notesMost  = 2000 // bytes
	notesLines = 8
)

// child is a running plugin. It is asked one thing at a time.
type child struct {
	decl  *model.Plugin
	cmd   *exec.Cmd
	to    *framer
	shut  io.Closer // the child's standard input: it ends when this is shut
	from  *bufio.Reader
	buf   []byte
	held  []byte // output that was not asked for yet
	notes []byte
	asked int
	late  atomic.Bool
}

// start begins a child and waits for the plugin's first line. Nothing of the
// environment goes to it but what a process needs to start at all.
func (r *Runner) start(decl *model.Plugin, module []byte) (*child, error) {
	if r == nil {
		return nil, errors.New("plugins cannot be run here")
	}
	c := &child{decl: decl, cmd: &exec.Cmd{Path: r.Program, Args: r.Args, Env: environment()}}
	in, err := c.cmd.StdinPipe()
	if err != nil {
		return nil, fmt.Errorf("a process for it cannot be started: %w", err)
	}
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		return nil, fmt.Errorf("a process for it cannot be started: %w", err)
	}
	c.to, c.shut, c.from = &framer{out: in}, in, bufio.NewReaderSize(out, chunkMost)
	if err := c.cmd.Start(); err != nil {
		return nil, fmt.Errorf("a process for it cannot be started: %w", err)
	}
	if err := c.begin(r.cacheFor(decl), module); err != nil {
		c.kill()
		return nil, err
	}
	return c, nil
}

func environment() []string {
	env := []string{} // not nil, which would be all of ours
	for _, name := range []string{"SYSTEMROOT", "TMPDIR", "TMP", "TEMP"} {
		if v, ok := os.LookupEnv(name); ok {
			env = append(env, name+"="+v)
		}
	}
	return env
}

func (c *child) begin(cache string, module []byte) error {
	text, err := json.Marshal(settings{Name: c.decl.Name, Memory: c.decl.Memory, Cache: cache})
	if err != nil {
		return err
	}
	stop := c.within(compileTime)
	defer func() { stop() }()
	if err := c.to.write(frameSettings, text); err != nil {
		return c.why(err, compileTime)
	}
	if err := c.to.write(frameModule, module); err != nil {
		return c.why(err, compileTime)
	}
	switch kind, body, err := readFrame(c.from, c.buf); {
	case err != nil:
		return c.why(err, compileTime)
	case kind == frameEnd:
		return c.ended(body)
	case kind != frameReady:
		return errors.New("its process does not keep to the frames")
	}
	stop()
	stop = c.within(c.decl.Time)
	line, err := c.upTo([]byte("\n"))
	if err != nil {
		return c.why(err, c.decl.Time)
	}
	return greeted(string(line))
}

// ask puts a table to the plugin and waits for its answer, in all no longer than
// the plugin's time. After an error the child is of no more use.
func (c *child) ask(table []byte) ([]byte, error) {
	stop := c.within(c.decl.Time)
	defer stop()
	if err := c.to.write(frameInput, table); err != nil {
		return nil, c.why(err, c.decl.Time)
	}
	answer, err := c.upTo([]byte("\nend\n"))
	if err != nil {
		return nil, c.why(err, c.decl.Time)
	}
	return answer, nil
}

// errTooLong is an answer that passes the plugin's cap.
var errTooLong = errors.New("too long")

// upTo gives the plugin's output up to and with a mark, and holds back what
// follows it.
func (c *child) upTo(mark []byte) ([]byte, error) {
	for searched := 0; ; {
		if i := bytes.Index(c.held[searched:], mark); i >= 0 {
			at := searched + i + len(mark)
			out := bytes.Clone(c.held[:at])
			c.held = append(c.held[:0], c.held[at:]...)
			return out, nil
		}
		if int64(len(c.held)) > c.decl.Output {
			return nil, errTooLong
		}
		searched = max(0, len(c.held)-len(mark)+1)
		kind, body, err := readFrame(c.from, c.buf)
		if err != nil {
			return nil, err
		}
		c.buf = body
		switch kind {
		case frameOutput:
			c.held = append(c.held, body...)
		case frameNotes:
			c.notes = append(c.notes, body[:min(len(body), notesMost-len(c.notes))]...)
		case frameEnd:
			return nil, c.ended(body)
		default:
			return nil, errors.New("its process does not keep to the frames")
		}
	}
}

// within kills the child once a time is up, unless stopped before.
func (c *child) within(limit time.Duration) (stop func()) {
	timer := time.AfterFunc(limit, func() {
		c.late.Store(true)
		_ = c.cmd.Process.Kill()
	})
	return func() { timer.Stop() }
}

// why tells what an error of the pipes means.
func (c *child) why(err error, limit time.Duration) error {
	var told failure
	switch {
	case c.late.Load():
		return failure{"it was stopped: it gave no answer within " + seconds(limit), c.said()}
	case errors.As(err, &told):
		return err
	case errors.Is(err, errTooLong):
		return failure{fmt.Sprintf("it was stopped: its answer is longer than its %d kB", c.decl.Output>>10), c.said()}
	}
	// A child that ended may have said why before the pipe broke.
	for {
		kind, body, readErr := readFrame(c.from, nil)
		if readErr != nil {
			return failure{"its process ended without a word", c.said()}
		}
		if kind == frameEnd {
			return c.ended(body)
		}
	}
}

// ended tells how a plugin ended that should have gone on.
func (c *child) ended(text []byte) error {
	var e ending
	if err := json.Unmarshal(text, &e); err != nil {
		return fmt.Errorf("its process does not keep to the frames: %w", err)
	}
	what := "it ended, with status " + strconv.Itoa(int(e.Code)) + ", where it should have answered"
	switch {
	case e.Refused != "":
		what = "it cannot be run: " + plain(e.Refused)
	case e.Reached != "":
		what = "it was stopped: it tried to " + plain(e.Reached) + ", and a plugin has no files and no network"
	case e.Memory:
		what = fmt.Sprintf("it was stopped: it took more memory than its %d MB", c.decl.Memory>>20)
	case e.Trap != "":
		_, trap, _ := strings.Cut(e.Trap, "failed: ")
		what = "it fell over: " + plain(cmp.Or(trap, e.Trap))
	}
	return failure{what, c.said()}
}

// said is the beginning of what the plugin wrote to its standard error.
func (c *child) said() string {
	lines := strings.Split(plain(strings.TrimSpace(string(c.notes))), "\n")
	text := strings.Join(lines[:min(len(lines), notesLines)], "\n")
	if text == "" {
		return ""
	}
	return "it said: " + text
}

// kill ends the child and frees what it held.
func (c *child) kill() {
	_ = c.shut.Close()
	_ = c.cmd.Process.Kill()
	_ = c.cmd.Wait() // that it was killed is no news
}

// seconds writes a time limit.
func seconds(d time.Duration) string {
	return model.Decimal(d.Seconds(), 2) + " s"
}
