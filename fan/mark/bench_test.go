package mark_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// layout is the board most tests are about: 700/650 mm, 24 frets, neutral 7.
func layout(t testing.TB, change ...func(*fan.Spec)) *fan.Layout {
	t.Helper()
	s := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
	s.Bass, s.Treble, s.NutSpread, s.SaddleSpread = unit.MM(700), unit.MM(650), unit.MM(43), unit.MM(62)
	for _, f := range change {
		f(&s)
	}
	l, err := fan.New(s)
	require.NoError(t, err)
	return l
}

// shop is a builder with tools: mm of the tools' steps, and how far the hand
// scatters when it sets a tool, and the marks about the plan.
type shop struct{ ruler, caliper, hand, scatter float64 }

func (s shop) options() mark.Options {
	return mark.Options{
		RulerResolution: unit.MM(s.ruler), CaliperResolution: unit.MM(s.caliper),
		ToleranceCents: 3,
	}
}

func toStep(x, step float64) float64 { return math.Round(x/step) * step }

// board is one marked board: where every mark of a line really is, from where
// its nut should be, and how far the treble line lies too near the bridge.
type board struct {
	marks  [2][]float64
	offset float64
}

// draw marks a layout's lines.
func (s shop) draw(l *fan.Layout, rng *rand.Rand) board {
	var b board
	for _, f := range l.Frets {
		b.marks[mark.Bass] = append(b.marks[mark.Bass], f.Bass.FromNut.MM()+s.scatter*rng.NormFloat64())
		b.marks[mark.Treble] = append(b.marks[mark.Treble], f.Treble.FromNut.MM()+s.scatter*rng.NormFloat64())
	}
	return b
}

// measure takes both passes of one line.
func (s shop) measure(b board, line mark.Line, rng *rand.Rand) []mark.Reading {
	x := b.marks[line]
	var out []mark.Reading
	for n := 1; n < len(x); n++ {
		out = append(out,
			mark.Reading{Kind: mark.FromNut, Line: line, Fret: n, Measured: unit.MM(toStep(x[n]-x[0]+s.hand*rng.NormFloat64(), s.ruler))},
			mark.Reading{Kind: mark.Step, Line: line, Fret: n, From: n - 1, Measured: unit.MM(toStep(x[n]-x[n-1]+s.hand*rng.NormFloat64(), s.caliper))})
	}
	return out
}

// measureAcross takes both diagonals and the nut offset.
func (s shop) measureAcross(b board, l *fan.Layout, rng *rand.Rand) []mark.Reading {
	bass, treble := l.Strings[len(l.Strings)-1], l.Strings[0]
	at := func(line fan.StringLine, along float64) fan.Point { return line.At(along / line.Length.MM()) }
	last := len(l.Frets) - 1
	b0, b1 := at(bass, b.marks[mark.Bass][0]), at(bass, b.marks[mark.Bass][last])
	t0, t1 := at(treble, b.marks[mark.Treble][0]+b.offset), at(treble, b.marks[mark.Treble][last]+b.offset)
	// The square through the bass nut mark meets the treble line at the bass
	// nut's x; both lines climb alike.
	offset := (t0.X.MM() - b0.X.MM()) * treble.Length.MM() / (treble.Saddle.X.MM() - treble.Nut.X.MM())
	noise := func(step float64) float64 { return s.hand * rng.NormFloat64() }
	return []mark.Reading{
		{Kind: mark.FromBassNut, Measured: unit.MM(toStep(math.Hypot(t1.X.MM()-b0.X.MM(), t1.Y.MM()-b0.Y.MM())+noise(s.ruler), s.ruler))},
		{Kind: mark.FromTrebleNut, Measured: unit.MM(toStep(math.Hypot(b1.X.MM()-t0.X.MM(), b1.Y.MM()-t0.Y.MM())+noise(s.ruler), s.ruler))},
		{Kind: mark.NutOffset, Measured: unit.MM(toStep(offset+noise(s.caliper), s.caliper))},
	}
}

// measureAll takes everything.
func (s shop) measureAll(b board, l *fan.Layout, rng *rand.Rand) []mark.Reading {
	out := s.measure(b, mark.Bass, rng)
	out = append(out, s.measure(b, mark.Treble, rng)...)
	return append(out, s.measureAcross(b, l, rng)...)
}

func check(t testing.TB, l *fan.Layout, readings []mark.Reading, o mark.Options) mark.Report {
	t.Helper()
	r, err := mark.Check(l, readings, o)
	require.NoError(t, err)
	return r
}
