// Command understitch checks layered garments before cloth is cut.
//
// This package is the only place that knows of terminals, flags and exit
// statuses: main.go starts it, and each command is one file. What a command
// finds out comes from package inspect; how it is written down is for package
// report. Nothing here judges a garment.
package main

import (
	"context"
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
	return runIn(ctx, args, &world{stdin, stdout, stderr, time.Now, os.Getenv})
}

// world is what the program finds around it.
type world struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	now            func() time.Time
	env            func(string) string
}
