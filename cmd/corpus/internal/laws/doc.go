// Package laws holds the rules to two laws, over garments of the corpus.
//
// The first is about faults. A fault that grows is reported from the first size at
// which it is reported on, and never less gravely, by some finding in force that
// names the planted thing; at 0.8 times its limit nothing is found. Where it grows so
// far that a check becomes impossible, the garment may still not be cut. What is
// periodic is grown within one period: package faults lists it.
//
// The second is about the house. Switching a rule off, or making its limits wider or
// narrower, changes the findings of that rule and no other's, as they are before the
// engine drops those that are redundant. After that, other rules' findings only come
// back when a rule is off or wider, and are only hidden under the rule's own when it
// is narrower. Lists of consequences are exempt.
package laws
