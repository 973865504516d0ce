package model

// Length of the closure along one of its edges, darts closed.
func (c *Closure) Length(side int) (float64, error) { return c.stretch(side).SewnLength() }
