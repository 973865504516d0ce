// Package plugin runs rules of a house that are programs: WebAssembly modules,
// named and pinned in house.hcl.
//
// A plugin is an ordinary command. It says which version of the protocol it
// speaks, then reads a table from its standard input, writes an answer to its
// standard output, and so on, one table for each garment and size. Tables and
// answers are lines of words parted by tabs, so that any language can read and
// write them; docs/plugins.md describes both, and [Table] and [Answer] are the
// two ends of it here.
//
// A plugin is not trusted. It runs in a child process of this very program
// ([Serve]), which the parent kills once the plugin's time is up: nothing inside
// one process stops every kind of endless program. The child gives it no file,
// no network, no clock and no environment; to reach for one ends it. Its memory
// and the length of its answers are capped. Its file must lie under the house's
// folder and have the sha256 that the house states, and it is read once: what was
// hashed is what runs.
//
// What goes wrong is a diagnostic, so that the garment is reported as not
// checked in full; that a plugin failed never looks like a garment without
// faults. The other garments are checked all the same, with a new child.
//
// The package does not say what is under test, and fetches nothing.
package plugin
