// Package faults puts one fault into a garment that is in order: the kind of
// fault that is made at the drawing board, with a tape, or in carrying a change
// over from one layer to the other. Each says which rule must find it and at
// what. A fault is planted so that nothing else is wrong by it; what rules say
// beyond the one expected is counted as said twice.
//
// Each family of rules has a file of its own.
package faults
