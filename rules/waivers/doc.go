// Package waivers holds the rule over waivers themselves. What it says is
// judged by the engine, once the findings of all sizes are gathered: only then
// is it known whether a waiver still covers something. The rule stands here so
// that it is listed, explained and set by the house like any other.
package waivers
