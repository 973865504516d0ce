// Command understitch checks layered garments before cloth is cut.
//
// This package is the only place that knows of terminals, flags and exit
// statuses: main.go starts it, and each command is one file. What a command
// finds out comes from package inspect; how it is written down is for package
// report. Nothing here judges a garment.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"time"
)

func main() {
	// A batch of garments is parsed once and thrown away: collecting rarely is
	// worth more than the memory it saves.
	debug.SetGCPercent(400)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	// The first interrupt lets the garments at hand come to their end; a second
	// one ends the program at once.
	context.AfterFunc(ctx, stop)
	status := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(status)
}

// run is the whole program; it returns the exit status.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	out := &watched{Writer: stdout}
	status := runIn(ctx, args, &world{stdin: stdin, stdout: out, stderr: stderr, now: time.Now, env: os.Getenv})
	if out.err != nil && status != statusTrouble {
		fmt.Fprintf(stderr, "understitch: standard output cannot be written: %v\n", bare(out.err))
		return statusTrouble
	}
	return status
}

// watched keeps the first error of a stream: an answer that did not arrive is no
// answer, whichever command wrote it.
type watched struct {
	io.Writer
	err error
}

func (w *watched) Write(b []byte) (int, error) {
	n, err := w.Writer.Write(b)
	if w.err == nil {
		w.err = err
	}
	return n, err
}

// file is the file that a stream is written to, or nil.
func file(stream any) *os.File {
	if w, ok := stream.(*watched); ok {
		stream = w.Writer
	}
	f, _ := stream.(*os.File)
	return f
}

// world is what the program finds around it.
type world struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	now            func() time.Time
	env            func(string) string
	inputs         []string // files that the run reads, and must not write over
}
