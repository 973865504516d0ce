// Package rules is the engine that judges a garment. A rule is a value
// ([Rule]): its name, its documentation as data, its limits with their
// sources, and a function that looks at one thing of the garment at a time. A
// [Pass] is that function's whole world; rules open no file, print nothing and
// know nothing of sizes other than the one at hand.
//
// Every look ends in an [Outcome]: passed, a finding, waived, or not possible
// with the reason. Nothing stays silently unchecked: a rule that says nothing
// about a thing it was given is itself reported as not possible.
//
// [Engine.Trace] judges one garment in one size, and finds out which findings
// follow from another by putting that one right in the garment built anew;
// [Engine.Check] judges without that. [Gather] joins the outcomes of all sizes, so
// that the same fault at several sizes is reported once with its worst figure.
// Then [Engine.Waivers] takes out what was accepted, and last [Result.Fold] tells
// what follows from a finding that is left as notes of it. The rules themselves
// live in the folders beside this file, one file each; package builtin lists them.
package rules
