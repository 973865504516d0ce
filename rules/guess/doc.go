// Package guess finds what was meant where a spec is wrong in a way that one slip
// explains: a seam forgotten, a piece cut as often as its partner is not, a
// figure in another unit, an edge altered on one side only. Rules use it to say
// what to write instead. A guess never decides whether a finding is made; every
// limit it needs is passed in.
package guess
