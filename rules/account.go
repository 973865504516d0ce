package rules

import "understitch/model/reckoned"

// Account lays open how a rule came to the figure of one outcome, line by line,
// the figure itself in the last. It is asked for by those who want to verify the
// figure with a tape, and only then, so it may measure again what the rule had
// measured. A rule without a figure tells what it looked at.
type Account func(*reckoned.Lines)

// Account is how the outcome's figure was reached; there are no lines where the
// rule gives no account of its own.
func (o Outcome) Account() reckoned.Lines {
	var l reckoned.Lines
	if o.account != nil && o.Status != NotPossible {
		o.account(&l)
	}
	return l
}
