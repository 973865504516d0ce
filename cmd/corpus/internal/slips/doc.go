// Package slips makes the mistakes that are made at a keyboard: in the text of a
// spec that is in order it changes one figure, one unit or one name, and counts
// what the rules say of it. A slip is to give one finding, and the finding is to
// name the figure that slipped or the thing that holds it. Of two slips that have
// nothing to do with each other both are to be found.
//
// Which rule finds a slip is not laid down, and a slip may be of no account: the
// waist of a coat that is as wide at every level can be moved. Counted are those
// slips of which some rule says something that it does not say of the garment in
// order.
//
// Package faults plants what is known to be a fault and lays down what must be
// found. This one knows the language of specs alone, not what the rules look at,
// so that it also makes the mistakes of which nobody has thought.
package slips
