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
// There is one judge. A rule reports what it sees and never asks what another
// rule reports. Where another finding would make its own redundant, it names that
// finding ([Under]); the engine drops the redundant one only under a finding that
// was really made in the same size, is at least as grave, and was not accepted.
//
// [Engine.Trace] checks one garment in one size, and finds the consequences of a
// finding by correcting it in the garment built anew; [Engine.Check] checks without
// that. [Gather] joins the outcomes of all sizes, so that the same fault at several
// sizes is reported once with its worst figure. [Result.Accept] takes out what was
// accepted, by waivers and known findings. [Result.Raw] are all findings that are
// left, also the redundant ones. The rules themselves are in the folders beside
// this file, one file each; package builtin lists them.
package rules
