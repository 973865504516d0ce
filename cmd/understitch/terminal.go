package main

import (
	"fmt"
	"io"
	"strconv"
	"sync"
	"time"

	"github.com/mattn/go-isatty"

	"understitch/cmd/understitch/internal/report"
)

// isTerminal reports whether a stream is shown on a terminal.
func isTerminal(stream any) bool {
	f := file(stream)
	return f != nil && (isatty.IsTerminal(f.Fd()) || isatty.IsCygwinTerminal(f.Fd()))
}

// look is how a report on standard output is laid out. NO_COLOR=anything keeps
// colour out of "auto".
func (w *world) look(color string) report.Look {
	coloured := color == "always"
	if color == "auto" {
		coloured = isTerminal(w.stdout) && w.env("NO_COLOR") == "" && w.env("TERM") != "dumb"
	}
	return report.Look{Width: w.columns(), Color: coloured}
}

// columns is the width that texts are wrapped to: what COLUMNS says, else that
// of the terminal, else 80.
func (w *world) columns() int {
	const usual, most = 80, 400
	if n, err := strconv.Atoi(w.env("COLUMNS")); err == nil && n > 0 {
		return min(n, most)
	}
	if isTerminal(w.stdout) {
		if n := terminalWidth(file(w.stdout)); n > 0 {
			return min(n, most)
		}
	}
	return usual
}

// patience is how long a run may take before it shows how far it is.
const patience = time.Second

// progress shows how far a run is, on a terminal and only where it takes long
// enough to wonder. Its methods may be called from any goroutine.
type progress struct {
	w      io.Writer // nil where nothing is shown
	now    func() time.Time
	start  time.Time
	shown  time.Time
	total  int
	mu     sync.Mutex
	done   int
	onLine bool
}

func (w *world) progress(total int) *progress {
	p := &progress{now: w.now, start: w.now(), total: total}
	if isTerminal(w.stderr) && total > 1 {
		p.w = w.stderr
	}
	return p
}

// step counts one look as done.
func (p *progress) step() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.done++
	now := p.now()
	if p.w == nil || now.Sub(p.start) < patience || now.Sub(p.shown) < patience/10 {
		return
	}
	p.shown, p.onLine = now, true
	fmt.Fprintf(p.w, "\r%d of %d checked", p.done, p.total)
}

// clear takes the line away again.
func (p *progress) clear() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.onLine {
		fmt.Fprint(p.w, "\r\x1b[K")
		p.onLine = false
	}
}
