package plugin

import (
	"encoding/binary"
	"fmt"
	"io"
	"sync"
)

// What passes between the program and its child is cut into frames: a letter
// that tells what it is, four bytes of length (little-endian), and so many
// bytes. A plugin sees nothing of the frames and cannot forge one: whatever it
// writes travels inside frames of its own kind.
type frameKind byte

const (
	frameSettings frameKind = 's' // to the child, first: its settings
	frameModule   frameKind = 'm' // to the child, second: the module
	frameInput    frameKind = 'i' // to the child: standard input of the plugin
	frameReady    frameKind = 'r' // from the child: the module is compiled and begins
	frameOutput   frameKind = 'o' // from the child: standard output of the plugin
	frameNotes    frameKind = 'n' // from the child: standard error of the plugin
	frameEnd      frameKind = 'e' // from the child, last: how the plugin ended
)

// frameMost is the longest frame that is taken: a module.
const frameMost = moduleMost

// chunkMost is the longest frame that a plugin's output is cut into.
const chunkMost = 64 << 10

const frameHead = 5

// framer writes frames to a pipe, each in one piece. Several may write.
type framer struct {
	mu  sync.Mutex
	out io.Writer
	buf []byte
}

func (f *framer) write(kind frameKind, body []byte) error {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.buf = append(f.buf[:0], byte(kind))
	f.buf = binary.LittleEndian.AppendUint32(f.buf, uint32(len(body)))
	f.buf = append(f.buf, body...)
	_, err := f.out.Write(f.buf)
	return err
}

// readFrame reads the next frame. The body is read into buf where it has room.
func readFrame(r io.Reader, buf []byte) (frameKind, []byte, error) {
	var head [frameHead]byte
	if _, err := io.ReadFull(r, head[:]); err != nil {
		return 0, nil, err
	}
	n := int(binary.LittleEndian.Uint32(head[1:]))
	if n > frameMost {
		return 0, nil, fmt.Errorf("a frame of %d bytes is out of all measure", n)
	}
	if cap(buf) < n {
		buf = make([]byte, n)
	}
	buf = buf[:n]
	if _, err := io.ReadFull(r, buf); err != nil {
		return 0, nil, fmt.Errorf("a frame breaks off: %w", err)
	}
	return frameKind(head[0]), buf, nil
}

// stream is a plugin's output or notes: what is written to it leaves in frames
// of one kind.
type stream struct {
	to   *framer
	kind frameKind
}

func (s stream) Write(p []byte) (int, error) {
	for rest := p; len(rest) > 0; {
		n := min(len(rest), chunkMost)
		if err := s.to.write(s.kind, rest[:n]); err != nil {
			return len(p) - len(rest), err
		}
		rest = rest[n:]
	}
	return len(p), nil
}
