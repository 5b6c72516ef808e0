// Package fan is the layout engine of a fanned-fret instrument: from a scale
// pair and a neck it finds the string lines, the scale length of every string,
// the marks, the slants, the board and the blank, as plain data. It knows no
// gauges, no tension and no drawing.
//
// # Axes
//
// x runs along the centreline, from the point where the nut line crosses it
// (x = 0) towards the bridge. y runs across, the bass side positive. The
// centreline is the bisector of the two outer string lines, which mirror each
// other,
//
//	y = ±(s/2 + m x)
//
// s  string spread at the nut, m  taper: half of what the outer strings spread per length.
// With two unlike edge margins the board is not symmetric about it; the
// strings are.
//
// # Signs
//
// A slant is positive where the bass end of a line is nearer the bridge. A
// cents error is positive where the note is sharp. No result is ever -0, NaN
// or infinite.
//
// # Strings
//
// Slices over strings begin with string 1, the highest (treble); index 0 is
// string 1, the last index the bass outer string.
//
// # How a layout comes about
//
// A [Spec] holds what was asked. [NewBase] checks all of it that does not
// depend on the scale pair; [Base.Frame] settles one pair into a [Frame], a
// small value that allocates nothing; [New] builds the whole [Layout] from the
// same Frame, so that both give the same numbers to the last bit. That holds on
// processors too that can multiply and add in one rounding, since products that
// go into a sum stand in float64(), which keeps the compiler from doing so.
//
// Read in this order: neck.go, neutral.go, spacing.go and spec.go have what is
// asked, check.go and reason.go what is refused; base.go, frame.go and sound.go
// settle a pair; layout.go is the result, which build.go fills. What is made
// from a layout follows: board.go and fromblank.go the blank, line.go any further
// line, neutraltable.go the choice of the neutral fret, depth.go, fence.go and
// wire.go the slots and the frets, dots.go, saddle.go.
package fan

import (
	"math"

	"scalepair/data/unit"
)

// Point is a place on the board; see the package comment for the axes.
type Point struct{ X, Y unit.Length }

// Distance is from p to q, as the crow flies.
func (p Point) Distance(q Point) unit.Length {
	return unit.Length(math.Hypot((q.X - p.X).M(), (q.Y - p.Y).M()))
}

// at is the point of two lengths in metres, never -0.
func at(x, y float64) Point { return Point{unit.Length(plain(x)), unit.Length(plain(y))} }
