package mark_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

var _ = testutil.Seed("161803")

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
	last := l.Spec.Frets
	b0, b1 := at(bass, b.marks[mark.Bass][0]), at(bass, b.marks[mark.Bass][last])
	t0, t1 := at(treble, b.marks[mark.Treble][0]+b.offset), at(treble, b.marks[mark.Treble][last]+b.offset)
	// The square through the bass nut mark meets the treble line at the bass
	// nut's x; both lines climb alike.
	offset := (t0.X - b0.X) * treble.Length / (treble.Saddle.X - treble.Nut.X)
	read := func(l unit.Length, step float64) unit.Length {
		return unit.MM(toStep(l.MM()+s.hand*rng.NormFloat64(), step))
	}
	return []mark.Reading{
		{Kind: mark.FromBassNut, Measured: read(b0.Distance(t1), s.ruler)},
		{Kind: mark.FromTrebleNut, Measured: read(t0.Distance(b1), s.ruler)},
		{Kind: mark.NutOffset, Measured: read(offset, s.caliper)},
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

// all draws a board and measures all of it.
func (s shop) all(l *fan.Layout, rng *rand.Rand) []mark.Reading {
	return s.measureAll(s.draw(l, rng), l, rng)
}

// The shops of the tests. In the first two the tools' steps are what limits the
// measuring, with a hand and marks that scatter by a fifth of the calipers' step; in
// the third the hand is coarser than the calipers; the last measures exactly.
var (
	coarseShop = shop{ruler: 0.5, caliper: 0.1, hand: 0.02, scatter: 0.02}
	fineShop   = shop{ruler: 0.5, caliper: 0.05, hand: 0.01, scatter: 0.01}
	handShop   = shop{ruler: 0.5, caliper: 0.01, hand: 0.03, scatter: 0.03}
	exactShop  = shop{ruler: 0.001, caliper: 0.001}
)

// seeded is a source of random numbers of its own.
func seeded(n uint64) *rand.Rand { return rand.New(rand.NewPCG(n, n+1)) }

func keep(readings []mark.Reading, want func(mark.Reading) bool) (out []mark.Reading) {
	for _, r := range readings {
		if want(r) {
			out = append(out, r)
		}
	}
	return out
}

// spoil makes the readings of a kind from one fret to another too long.
func spoil(readings []mark.Reading, kind mark.Kind, from, to int, mm float64) {
	for i, r := range readings {
		if r.Kind == kind && r.Fret >= from && r.Fret <= to {
			readings[i].Measured += unit.MM(mm)
		}
	}
}

// move shifts marks from one fret to another towards the bridge.
func move(marks []float64, from, to int, mm float64) {
	for n := from; n <= min(to, len(marks)-1); n++ {
		marks[n] += mm
	}
}

// named are the slip's own finding and those that explain the readings as well.
func named(s mark.Slip) []mark.Finding { return append([]mark.Finding{s.Finding}, s.Others...) }
