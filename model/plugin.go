package model

import "time"

// Plugin is a rule of the house that is a program: a WebAssembly module beside
// the house file, and what it may take.
type Plugin struct {
	Name   string
	File   string        // under the house's folder, with slashes
	SHA256 string        // of the file, in small hexadecimal digits
	Memory int64         // in bytes
	Time   time.Duration // for one answer
	Output int64         // of one answer, in bytes

	Place       Place // the block
	FilePlace   Place
	SHA256Place Place
}

// What a plugin may take where the house does not say, and at most.
const (
	PluginMemory     = 64 << 20
	PluginMemoryMost = 1 << 30
	PluginTime       = time.Second
	PluginTimeMost   = time.Minute
	PluginOutput     = 256 << 10
	PluginOutputMost = 16 << 20
)
