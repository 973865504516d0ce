package plugin

import (
	"io"
	"os"
	"sync"
)

// input is a plugin's standard input in the child. It always reads ahead, so
// that it knows at once when the parent has gone: a plugin that spins would
// otherwise outlive it.
type input struct {
	mu    sync.Mutex
	came  sync.Cond
	held  []byte
	pause func() // called before each wait
}

func newInput(from io.Reader, pause func()) *input {
	in := &input{pause: pause}
	in.came.L = &in.mu
	go func() {
		var buf []byte
		for {
			kind, body, err := readFrame(from, buf)
			if err != nil || kind != frameInput {
				os.Exit(0) // the parent has done with this child
			}
			buf = body
			in.mu.Lock()
			in.held = append(in.held, body...)
			in.came.Signal()
			in.mu.Unlock()
		}
	}()
	return in
}

func (in *input) Read(p []byte) (int, error) {
	if len(p) == 0 {
		return 0, nil
	}
	in.pause()
	in.mu.Lock()
	defer in.mu.Unlock()
	for len(in.held) == 0 {
		in.came.Wait()
	}
	n := copy(p, in.held)
	in.held = append(in.held[:0], in.held[n:]...)
	return n, nil
}
