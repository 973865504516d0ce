package plugin

// A few modules are written byte by byte, for what no compiler would make: a
// program that has no loop and calls itself without end in width, not in depth.

// part is a section of a module: its number, then what it holds.
func part(id byte, body ...byte) []byte { return append([]byte{id, byte(len(body))}, body...) }

// written is a module with one memory page, the function body of "_start", and
// the functions that it calls, of one kind: an i32 in, an i32 out.
func written(start []byte, others ...[]byte) []byte {
	code := func(body []byte) []byte { return append([]byte{byte(len(body) + 2), 0}, append(body, 0x0b)...) }
	functions := []byte{byte(1 + len(others)), 0}
	bodies := append([]byte{byte(1 + len(others))}, code(start)...)
	for _, o := range others {
		functions = append(functions, 1)
		bodies = append(bodies, code(o)...)
	}
	out := []byte("\x00asm\x01\x00\x00\x00")
	out = append(out, part(1, 2, 0x60, 0, 0, 0x60, 1, 0x7f, 1, 0x7f)...) // () -> (), (i32) -> i32
	out = append(out, part(3, functions...)...)
	out = append(out, part(4, 1, 0x70, 0, 1)...) // a table of functions, without an end
	out = append(out, part(5, 1, 0, 1)...)       // a memory of one page, without an end
	out = append(out, part(7, append([]byte{2, 6}, "_start\x00\x00\x06memory\x02\x00"...)...)...)
	return append(out, part(10, bodies...)...)
}

var (
	// f(n) = n < 2 ? n : f(n-1) + f(n-2), of 60
	widening = written(
		[]byte{0x41, 60, 0x10, 1, 0x1a},
		[]byte{0x20, 0, 0x41, 2, 0x48, 0x04, 0x7f, 0x20, 0, 0x05, 0x20, 0, 0x41, 1, 0x6b, 0x10, 1, 0x20, 0, 0x41, 2, 0x6b, 0x10, 1, 0x6a, 0x0b})
	// f(n) = f(n+1) + 1
	deepening = written(
		[]byte{0x41, 0, 0x10, 1, 0x1a},
		[]byte{0x20, 0, 0x41, 1, 0x6a, 0x10, 1, 0x41, 1, 0x6a})
	// loop: grow the memory by a page, again
	growing = written([]byte{0x03, 0x40, 0x41, 1, 0x40, 0, 0x1a, 0x0c, 0, 0x0b})
	// loop: grow the table by 2^24, again
	tabling = written([]byte{0x03, 0x40, 0xd0, 0x70, 0x41, 0x80, 0x80, 0x80, 0x08, 0xfc, 15, 0, 0x1a, 0x0c, 0, 0x0b})
	// loop: again
	looping = written([]byte{0x03, 0x40, 0x0c, 0, 0x0b})
	// unreachable
	falling = written([]byte{0x00})
	// nothing: it ends at once
	silent = written(nil)
)
