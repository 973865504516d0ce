package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Progress shows once a second has passed, not at every garment, and is taken
// away again.
func TestProgress(t *testing.T) {
	var b bytes.Buffer
	now := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	p := &progress{w: &b, now: func() time.Time { return now }, start: now, total: 40}
	for range 9 {
		now = now.Add(100 * time.Millisecond)
		p.step()
	}
	require.Empty(t, b.String(), "less than a second")
	p.clear()
	require.Empty(t, b.String(), "nothing to take away")
	now = now.Add(200 * time.Millisecond)
	p.step()
	require.Equal(t, "\r10 of 40 checked", b.String())
	now = now.Add(time.Millisecond)
	p.step()
	require.Equal(t, 1, strings.Count(b.String(), "\r"), "too soon again")
	p.clear()
	require.True(t, strings.HasSuffix(b.String(), "\r\x1b[K"))
}

// Without a terminal nothing of the kind is written, however long it takes.
func TestNoProgressWithoutATerminal(t *testing.T) {
	var b bytes.Buffer
	now := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	w := &world{stderr: &b, now: func() time.Time { return now }}
	p := w.progress(40)
	now = now.Add(time.Hour)
	p.step()
	p.clear()
	require.Empty(t, b.String())
}

func TestColumns(t *testing.T) {
	for _, c := range []struct {
		stated string
		want   int
	}{{"", 80}, {"60", 60}, {"wide", 80}, {"0", 80}, {"-4", 80}, {"100000", 400}} {
		w := &world{stdout: &bytes.Buffer{}, env: func(string) string { return c.stated }}
		require.Equal(t, c.want, w.columns(), c.stated)
	}
}

// The clock that is passed in decides whether a waiver still holds.
func TestTheClockIsPassedIn(t *testing.T) {
	spec := `garment "apron" { unit = "cm" }
layer "shell" {
  side = "outer"
  piece "front" {
    edge "side" { length = 30 }
  }
  piece "back" {
    edge "side" { length = 31 }
  }
}
seam "side" { join = [shell.front.side, shell.back.side] }
waive "seam-walk" {
  at     = seam.side
  reason = "eased in by hand"
  until  = "2026-06-30"
}
`
	for _, c := range []struct {
		day  time.Time
		want int
	}{
		{time.Date(2026, 6, 30, 23, 0, 0, 0, time.UTC), statusClean},
		{time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC), statusFindings},
	} {
		var out, problems bytes.Buffer
		w := &world{stdin: strings.NewReader(spec), stdout: &out, stderr: &problems, now: func() time.Time { return c.day }, env: func(string) string { return "" }}
		require.Equal(t, c.want, runIn(context.Background(), []string{"check", "-"}, w), out.String()+problems.String())
	}
}

// A run that is stopped says in one sentence what was not checked, reports the
// garment as not checked in full, and ends in trouble.
func TestStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	var out, problems bytes.Buffer
	status := run(ctx, []string{"check", "demo/rink-dress" + suffix}, strings.NewReader(""), &out, &problems)
	require.Equal(t, statusTrouble, status)
	require.Equal(t, "understitch: stopped before demo/rink-dress.garment.hcl was checked in full: it was not looked at\n", problems.String())
	require.Contains(t, out.String(), "CANNOT SAY: ")

	problems.Reset()
	require.Equal(t, statusTrouble, run(ctx, []string{"rules"}, strings.NewReader(""), &out, &problems), "never as if nothing had been")
	require.Equal(t, "understitch: stopped\n", problems.String())
}

// asked is a context that ends once it was asked so often whether it has: a stop in
// the middle, on a machine of any speed.
type asked struct {
	context.Context
	stop func()
	left atomic.Int64
}

func (a *asked) Err() error {
	if a.left.Add(-1) == 0 {
		a.stop()
	}
	return a.Context.Err()
}

// A single garment on many wearers stops soon, too, and tells how far it came.
func TestStoppedAmongWearers(t *testing.T) {
	dir := t.TempDir()
	var table strings.Builder
	table.WriteString("wearer,bust_girth,waist_girth,high_hip_girth,total_crotch_length\n")
	for i := range 20000 {
		fmt.Fprintf(&table, "%05d,%.1f,70,90,66\n", i+1, 84+float64(i%90)/10)
	}
	file := filepath.Join(dir, "wearers.csv")
	require.NoError(t, os.WriteFile(file, []byte(table.String()), 0o600))
	within, stop := context.WithCancel(context.Background())
	defer stop()
	ctx := &asked{Context: within, stop: stop}
	ctx.left.Store(500)
	var out, problems bytes.Buffer
	status := run(ctx, []string{"check", "--bodies", file, "--bodies-unit", "cm", "demo/rink-dress" + suffix}, strings.NewReader(""), &out, &problems)
	require.Equal(t, statusTrouble, status)
	told := regexp.MustCompile(`^understitch: stopped before demo/rink-dress.garment.hcl was checked in full: (\d+) of its 20000 wearers were looked at\n$`).
		FindStringSubmatch(problems.String())
	require.Len(t, told, 2, problems.String())
	looked, err := strconv.Atoi(told[1])
	require.NoError(t, err)
	require.Positive(t, looked)
	require.LessOrEqual(t, looked, 500, "it goes on after it was stopped")
	require.Contains(t, out.String(), "not checked in full")
	require.Contains(t, out.String(), "the check was stopped: ")
}
