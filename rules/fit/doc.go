// Package fit holds the rules that compare a garment with the body it is made
// for: girths at levels, and tapes run over the pattern from one level to
// another through the crotch, over the shoulder or down the back.
//
// How much larger or smaller than the body a garment is to be is the designer's
// to say, by layer and level; these rules hold the draft against what was said
// and bring no ease of their own. Where the wearer's measure is not known they
// say so. Users find these rules in the family "body".
package fit
