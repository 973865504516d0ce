// Package spec reads specs: the text in which a garment, or a house's
// standards, are written down.
//
// A file is read in three steps. The guard looks over the bytes and refuses
// what no spec needs and what would harm the parser: bottomless nesting,
// endless runs of signs, numbers of a thousand digits. Then the file is
// parsed, once, and its words are checked: unknown blocks and attributes,
// things named twice, things left out. What comes out is a [Document]. From it
// [Document.Garment] builds the garment in one size, and [Document.Wearer] the
// garment for one person; sizes share the parse.
//
// Numbers are reckoned in the unit of the file they stand in, so that
// "draft.quarter - 1" takes off one centimetre in a cm file, and become
// millimetres only when they reach the model. A draft value or a point may use
// others that stand further down; each is reckoned once, and a circle is named
// in full. There are no loops, and no function looks at files or the clock.
//
// Everything the user can get wrong is a [model.Diagnostic] with the place and,
// where a word is not known, the nearest word that is. A fault is reported
// where it was made and not again where it is felt.
//
// The package does not judge a garment: an outline that does not close, or a
// seam whose sides differ, is for package rules to find.
package spec
