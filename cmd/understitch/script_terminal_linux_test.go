package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"syscall"

	"github.com/rogpeppe/go-internal/testscript"
	"golang.org/x/sys/unix"
)

// scriptTerminal runs a command whose controlling terminal is a new one, and puts
// what the terminal showed into a file. It reads until the last process has let go
// of the terminal: the end of the command is no sign that all was read. A command
// that must fail is run with ! in front.
func scriptTerminal(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) < 2 {
		ts.Fatalf("usage: [!] terminal FILE COMMAND...")
	}
	screen, line, err := openTerminal()
	ts.Check(err)
	defer screen.Close()
	cmd := exec.Command(args[1], args[2:]...)
	cmd.Dir, cmd.Stdin = ts.MkAbs("."), line
	for _, name := range []string{"PATH", "HOME", "TERM", "NO_COLOR", "COLUMNS", "XDG_CACHE_HOME"} {
		cmd.Env = append(cmd.Env, name+"="+ts.Getenv(name))
	}
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	err = cmd.Start()
	line.Close()
	ts.Check(err)
	var shown bytes.Buffer
	if _, err := io.Copy(&shown, screen); err != nil && !errors.Is(err, syscall.EIO) { // EIO: nobody holds the line any more
		ts.Fatalf("%v", err)
	}
	err = cmd.Wait()
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), shown.Bytes(), 0o600))
	switch {
	case err == nil && neg:
		ts.Fatalf("the command did not fail")
	case err != nil && !neg:
		ts.Fatalf("%v: %s", err, shown.String())
	}
}

// openTerminal makes a pair: what is written to the line is read from the screen.
func openTerminal() (screen, line *os.File, err error) {
	screen, err = os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		return nil, nil, err
	}
	n, err := unix.IoctlGetInt(int(screen.Fd()), unix.TIOCGPTN)
	if err == nil {
		err = unix.IoctlSetPointerInt(int(screen.Fd()), unix.TIOCSPTLCK, 0)
	}
	if err == nil {
		line, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDWR|syscall.O_NOCTTY, 0)
	}
	if err != nil {
		screen.Close()
	}
	return screen, line, err
}
