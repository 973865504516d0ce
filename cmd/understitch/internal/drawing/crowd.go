package drawing

import "understitch/model/curve"

// crowd is what words and tags already stand on a board. Words keep their size
// when a page draws the cloth larger, and so move against each other: they are
// kept apart at the first size, at the largest and between.
type crowd struct {
	points []float64 // millimetres a point, at each size
	boxes  [][]curve.Box
}

// larger are how many times larger a page draws a panel at most, and less.
var larger = [...]float64{1, 1.15, 1.35, 1.6, 2}

func (b *board) crowd() *crowd {
	c := &crowd{points: []float64{b.Point}}
	if b.grows {
		c.points = nil
		for _, times := range larger {
			c.points = append(c.points, b.Point/times)
		}
	}
	c.boxes = make([][]curve.Box, len(c.points))
	return c
}

// add notes what a mark's words and tag take up, with some air about it.
func (c *crowd) add(m Mark) {
	for i, point := range c.points {
		for _, box := range m.boxes(point) {
			c.boxes[i] = append(c.boxes[i], grown(box, air*point))
		}
	}
}

// over tells how much of a mark would lie on others, as a share of it.
func (c *crowd) over(m Mark) float64 {
	sum := 0.0
	for i, point := range c.points {
		for _, box := range m.boxes(point) {
			sum += covered(box, c.boxes[i]) / (box.Width() * box.Height())
		}
	}
	return sum
}

// past is how many points a mark has to move to the right to get off the first
// thing that it lies on; 0 when it lies on nothing.
func (c *crowd) past(m Mark) float64 {
	for i, point := range c.points {
		for _, box := range m.boxes(point) {
			for _, other := range c.boxes[i] {
				if shared(box, other) > 0 {
					return (other.Max.X-box.Min.X)/point + 0.5
				}
			}
		}
	}
	return 0
}
