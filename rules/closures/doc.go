// Package closures holds the rules about what opens and closes a garment: the
// tape, zip, buttons or lacing along a pair of edges.
//
// Fasteners come in whole numbers and seams do not. A tape of hooks can only be
// cut in the gap between two of them, so an edge drafted to the body is often a
// length that no tape can have; that shows at the machine, when shell and lining
// are already sewn together. These rules find it on paper. They judge lengths
// along the stitch line and leave the room for the fastener across it to the
// rules about allowances.
package closures
