package model

import "time"

// House is what a house.hcl states for every garment below its folder.
type House struct {
	Name       string
	File       string
	Unit       Unit
	Allowances []*Standard
	Rules      []RuleSetting
	Styles     []StyleSetting // in the order of the file; a later one wins
	Files      []string       // that took part, the nearest first
	Place      Place
}

// StyleSetting is what a house says about rules for some of its garments only.
type StyleSetting struct {
	Pattern string // of the garment files, from the house's folder: "archive/**"
	Under   string // the nearest house's folder, from that of the house that states it
	Rules   []RuleSetting
	Place   Place
}

// RuleSetting is what a house says about one rule.
type RuleSetting struct {
	Rule          string
	Severity      string // "error", "warning", "note", "off", or "" to keep the rule's own
	SeverityPlace Place
	Limits        []LimitSetting
	Place         Place
}

// LimitSetting is a limit the house has changed. Which of the two figures
// holds depends on the unit of the rule's limit: a length, or a plain number
// (degrees, percent, ratio).
type LimitSetting struct {
	Name   string
	Length float64 // in millimetres
	Plain  float64 // as written
	Place  Place
}

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
