// Package sheet holds a garment as it is about to be written down: its layers,
// pieces, edges and what joins them, with every figure in millimetres and as it
// grows from size to size. Package wardrobe makes such garments, package faults
// puts one fault into one, and [Garment.Text] writes it as a spec in one of
// several hands: drafted from measures, graded figure by figure, or in plain
// figures and path data, in any unit.
//
// It knows the language of specs but nothing of how they are read or judged,
// so that what is planted and what is found come about independently.
package sheet
