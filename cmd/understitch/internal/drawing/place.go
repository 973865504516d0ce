package drawing

import (
	"math"
	"slices"
	"strings"

	"understitch/model"
	"understitch/model/curve"
)

// Words and tags are placed after everything else is drawn, so that none hides
// another: first those that belong to a fixed place, then tags, then the words
// beside levels, and last names, which may stand anywhere on their piece.

// reach is how far a tag hangs off its place, in points, where nothing is in
// the way; step is how much further it is hung when something is.
const (
	reach = 26.0
	step  = 12.0
	air   = 2.5 // points that are kept free between words
)

// settle gives everything on the board its place.
func (b *board) settle() {
	taken := b.crowd()
	for _, m := range b.Marks {
		if m.Sign != Tag && m.Kind != LevelWidth && m.Kind != PieceName {
			taken.add(m)
		}
	}
	b.hang(taken)
	b.standClear(taken)
	for _, n := range b.folds {
		b.placeFold(n, taken)
	}
	lines := b.strokes()
	for _, n := range b.names {
		b.placeName(n, taken, lines)
	}
	slices.SortStableFunc(b.Marks, func(a, c Mark) int { return depth(a) - depth(c) })
}

// hang settles how far and which way each tag hangs off.
func (b *board) hang(taken *crowd) {
	for i := range b.Marks {
		m := &b.Marks[i]
		if m.Sign != Tag {
			continue
		}
		if m.Reach == 0 {
			m.Reach = reach
		}
		best, least := *m, math.Inf(1)
		for _, try := range hangings(*m) {
			over := taken.over(try)
			if over < least {
				best, least = try, over
			}
			if over == 0 {
				break
			}
		}
		*m = best
		taken.add(best)
	}
}

// hangings are the ways a tag may hang, the usual one first.
func hangings(m Mark) []Mark {
	turns := []float64{0, math.Pi / 5, -math.Pi / 5, math.Pi / 2.6, -math.Pi / 2.6}
	var out []Mark
	for further := range 10 {
		for _, turn := range turns {
			try := m
			try.Reach += float64(further) * step
			try.Dir = curve.Rotate(curve.Point{}, turn).Direction(m.Dir)
			out = append(out, try)
		}
	}
	return out
}

// standClear moves the words beside levels out from under tags.
func (b *board) standClear(taken *crowd) {
	for i := range b.Marks {
		m := &b.Marks[i]
		if m.Kind != LevelWidth {
			continue
		}
		for range 100 { // each time past at least one thing
			by := taken.past(*m)
			if by == 0 {
				break
			}
			m.Reach += by
		}
		taken.add(*m)
	}
}

// foldWord is the word beside the sign of a fold, still without a place.
type foldWord struct {
	mark Mark
	line *curve.Path // along which it may stand
}

// placeFold puts the word where there is room beside the sign, and leaves it out
// where there is none: the sign says the same.
func (b *board) placeFold(f foldWord, taken *crowd) {
	long := f.line.Length()
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88} {
		m := f.mark
		m.At = m.At.Add(f.line.At(share * long))
		if taken.over(m) == 0 {
			b.put(m)
			taken.add(m)
			return
		}
	}
}

// pieceWord is the name of a piece, still without a place.
type pieceWord struct {
	mark  Mark // with the piece's address alone
	piece *model.Piece
	home  *curve.Region // the piece as it lies in the panel
	share float64       // of its height, about where the name should stand
	rows  [][]curve.Span
}

// cutAcross are the stretches of cloth at so many heights of a piece, from its
// top to its foot.
func cutAcross(home *curve.Region) [][]curve.Span {
	const heights = 144
	box := home.Bounds()
	out := make([][]curve.Span, heights+1)
	for i := range out {
		out[i] = home.Spans(box.Min.Y + float64(i)/heights*box.Height())
	}
	return out
}

// across are the stretches of cloth at the nearest of those heights.
func (n pieceWord) across(y float64) []curve.Span {
	box := n.home.Bounds()
	last := float64(len(n.rows) - 1)
	at := math.Round((y - box.Min.Y) / box.Height() * last)
	if !(at >= 0 && at <= last) {
		return nil
	}
	return n.rows[int(at)]
}

// placeName puts a piece's name on its cloth, clear of words and tags, and of
// lines as well as can be. On a narrow piece it takes more and shorter lines.
func (b *board) placeName(n pieceWord, taken *crowd, lines []curve.Point) {
	best, least := n.mark, math.Inf(1)
	for i, text := range nameTexts(n.piece) {
		m := n.mark
		m.Text = text
		for _, at := range n.places() {
			m.At = at
			box, _ := m.wordBox(b.Point)
			box.Max.Y += b.points(b.under)
			const onWords = 300
			cost := n.cost(box, lines) + 0.35*float64(i)
			if cost < least {
				cost += onWords * taken.over(m)
			}
			if cost < least {
				best, least = m, cost
			}
		}
	}
	for i := range b.Marks {
		if b.Marks[i].Kind == PieceName && b.Marks[i].Subject == best.Subject {
			b.Marks[i] = best
		}
	}
	taken.add(best)
}

// nameTexts are the ways a piece's name may be broken into lines.
func nameTexts(p *model.Piece) [][]string {
	cut := strings.Replace(CutText(p), ": ", ":\n", 1)
	cut = strings.Replace(cut, " on the fold", "\non the fold", 1)
	short := strings.Split(cut, "\n")
	return [][]string{
		{p.Address(), CutText(p)},
		append([]string{p.Address()}, short...),
		append([]string{p.Name, "(" + p.Layer.Name + ")"}, short...),
		{p.Name, "(" + p.Layer.Name + ")"}, // how it is cut stands on the cut sheet
	}
}

// places are where the middle of a name's first line may be.
func (n pieceWord) places() []curve.Point {
	const down, across = 36, 9
	box := n.home.Bounds()
	var out []curve.Point
	for i := 1; i < down; i++ {
		y := box.Min.Y + float64(i)/down*box.Height()
		for _, s := range n.across(y) {
			for k := 1; k <= across; k++ {
				out = append(out, curve.Point{X: s.X0 + float64(k)/(across+1)*(s.X1-s.X0), Y: y})
			}
		}
	}
	return out
}

// cost tells how badly words would stand at a place, others aside; words outside
// the piece are worse than those on lines.
func (n pieceWord) cost(box curve.Box, lines []curve.Point) float64 {
	const outside, onLines = 60.0, 6.0
	home := n.home.Bounds()
	cost := outside * n.outside(box)
	hits := 0
	for _, p := range lines {
		if p.X > box.Min.X && p.X < box.Max.X && p.Y > box.Min.Y && p.Y < box.Max.Y {
			hits++
		}
	}
	cost += onLines * min(float64(hits)/8, 1)
	aside := (box.Min.Y-home.Min.Y)/max(home.Height(), 1) - n.share
	return cost + 2*math.Abs(aside)
}

// outside is the share of a box that sticks out of the piece.
func (n pieceWord) outside(box curve.Box) float64 {
	const slices = 4
	sum := 0.0
	for i := range slices + 1 {
		y := box.Min.Y + float64(i)/slices*box.Height()
		most := 0.0
		for _, s := range n.across(y) {
			most = max(most, min(s.X1, box.Max.X)-max(s.X0, box.Min.X))
		}
		sum += 1 - max(most, 0)/box.Width()
	}
	return sum / (slices + 1)
}

// strokes are places along all lines that a name should not stand on.
func (b *board) strokes() []curve.Point {
	var out []curve.Point
	for _, m := range b.Marks {
		switch m.Kind {
		case StitchLine, DraftedLine, FoldLine, GrainLine, DartLeg, NotchMark, LevelLine:
			if m.Line == nil {
				continue
			}
			n := int(min(m.Line.Length()/b.points(3), 400)) + 1
			for i := range n + 1 {
				out = append(out, m.Line.At(float64(i)/float64(n)*m.Line.Length()))
			}
		}
	}
	return out
}

func depth(m Mark) int {
	switch m.Kind {
	case Trouble:
		return 0
	case Found:
		return 2
	}
	return 1
}
