package layers

import (
	"testing"

	"understitch/rules/ruletest"
)

func TestExamples(t *testing.T) {
	ruletest.Rule(t, SharedEdge)
	ruletest.Rule(t, InnerWithinOuter)
	ruletest.Rule(t, Girth)
}
