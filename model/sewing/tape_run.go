package sewing

import "understitch/model"

// RunLength is the length of a measured run: the stretches of edge darts
// closed, the closed width of each tape on the way, less what laps over.
type RunLength struct {
	Total float64   // in millimetres, along the stitch lines, darts closed
	Parts []RunPart // in the order of the run
}

// RunPart is what one item adds to a measured run.
type RunPart struct {
	Item   model.RunItem
	Length float64 // in millimetres; a closure may take away, and is negative then
}

// LayRun lays the tape along a measure's run.
func LayRun(g *model.Garment, m *model.Measure) (RunLength, error) {
	var stretches []model.Stretch
	for _, item := range m.Along {
		if item.Stretch != nil {
			stretches = append(stretches, *item.Stretch)
		}
	}
	w, err := LayOut(g, stretches)
	if err != nil {
		return RunLength{}, err
	}
	var out RunLength
	next := 0
	for _, item := range m.Along {
		part := RunPart{Item: item}
		if item.Closure != nil {
			if part.Length, err = Across(item.Closure); err != nil {
				return RunLength{}, err
			}
		} else {
			if part.Length, err = cutShort(w.Runs[next], m, next == 0, next == len(w.Runs)-1); err != nil {
				return RunLength{}, err
			}
			next++
		}
		out.Parts = append(out.Parts, part)
		out.Total += part.Length
	}
	return out, nil
}

// cutShort is the length of a run that starts at the measure's first mark, or
// ends at its last.
func cutShort(r Run, m *model.Measure, first, last bool) (float64, error) {
	from, to := r.From, r.To
	var err error
	if first && m.From.Kind != model.NoMark {
		if from, err = r.Edge.MarkAt(m.From); err != nil {
			return 0, err
		}
	}
	if last && m.To.Kind != model.NoMark {
		if to, err = r.Edge.MarkAt(m.To); err != nil {
			return 0, err
		}
	}
	return r.Edge.Net(max(from, to)) - r.Edge.Net(min(from, to)), nil
}

// Across is what a closed closure adds to a run that passes over it: the closed
// width of its tape at the row of eyes in use, less the lap.
func Across(c *model.Closure) (float64, error) {
	if c.Tape == nil {
		return -c.Lap, nil
	}
	widths := c.Tape.WidthClosed
	if len(widths) == 0 {
		return 0, model.Missingf("tape.%s states no closed width", c.Tape.Name)
	}
	row := max(c.Row, 1)
	if row > len(widths) {
		return 0, model.Missingf("tape.%s states %d closed widths, and %s uses row %d", c.Tape.Name, len(widths), c.Address(), row)
	}
	return widths[row-1] - c.Lap, nil
}
