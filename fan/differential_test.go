package fan_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/fan"
)

// farthest holds the largest error of each quantity.
type farthest map[string]float64

func (w farthest) see(name string, got float64, want, scale long) {
	w[name] = max(w[name], longOf(got).minus(want).size().over(scale.size()).near())
}

func (w farthest) relative(name string, got float64, want long) { w.see(name, got, want, want) }

func (w farthest) point(name string, got fan.Point, want longPoint, scale long) {
	w.see(name, got.X, want.x, scale)
	w.see(name, got.Y, want.y, scale)
}

// compare holds a whole layout against the reference. Places are measured by
// the bass length, as x or y may be 0. The nut offset is measured by the
// lengths' difference and a slant by the steeper of nut and saddle line: both
// scale with the difference, so that they keep their digits however small it
// is, while near the neutral fret k(n) - k(N) itself loses them.
func (w farthest) compare(t require.TestingT, l *fan.Layout) {
	f := newLongFan(t, l.Spec)
	last := l.Spec.Frets
	if f.bass.Cmp(f.treble.Float) != 0 {
		w.see("nut offset", l.NutOffsetMM, f.pt.minus(f.pb), f.bass.minus(f.treble))
	}
	w.line(f, l.Saddle, longOf(1))
	for n, fret := range l.Frets {
		w.line(f, fret.Line, longK(float64(n)))
		slot := f.onEdges(f.fret(n))
		w.point("slot end", fret.Slot.Bass, slot.bass, f.bass)
		w.point("slot end", fret.Slot.Treble, slot.treble, f.bass)
		w.relative("slot length", fret.Slot.LengthMM, slot.bass.minus(slot.treble).length())
		w.mark(fret.Bass, f.bass, n)
		w.mark(fret.Treble, f.treble, n)
	}
	w.strings(f, l)
	w.depths(t, f, l)
	nut, end := f.line(longOf(0)), f.fret(last)
	w.relative("diagonal", l.DiagonalBassNutMM, nut.bass.minus(end.treble).length())
	w.relative("diagonal", l.DiagonalTrebleNutMM, nut.treble.minus(end.bass).length())
	w.blank(f, l.Blank())
}

func (w farthest) line(f *longFan, got fan.Across, k long) {
	want := f.line(k)
	w.point("mark's place", got.Bass, want.bass, f.bass)
	w.point("mark's place", got.Treble, want.treble, f.bass)
	w.see("crossing", got.CrossMM, want.crossing(), f.bass)
	if f.bass.Cmp(f.treble.Float) == 0 {
		return
	}
	steepest := f.line(longOf(0)).tan().size()
	if saddle := f.line(longOf(1)).tan().size(); steepest.less(saddle) {
		steepest = saddle
	}
	w.see("tangent", got.TanSlant, want.tan(), steepest)
	if longOf(0.01).less(k.minus(f.kN).size()) {
		w.relative("tangent off the neutral", got.TanSlant, want.tan())
	}
}

func (w farthest) mark(got fan.Mark, length long, n int) {
	x := length.times(longK(float64(n)))
	w.relative("mm per cent", got.MMPerCent, length.minus(x).times(longLn2).over(longOf(1200)))
	if n > 0 {
		w.relative("mark", got.FromNutMM, x)
		w.relative("step", got.StepMM, x.minus(length.times(longK(float64(n-1)))))
	}
}

func (w farthest) blank(f *longFan, got fan.Blank) {
	corners := f.corners()
	x, y := make([]long, len(corners)), make([]long, len(corners))
	for i, p := range corners {
		x[i], y[i] = p.x, p.y
	}
	order := func(a, b long) int { return a.Cmp(b.Float) }
	saw := 2 * f.spec.SawAllowanceMM
	w.relative("blank length", got.LengthMM, slices.MaxFunc(x, order).minus(slices.MinFunc(x, order)).plus(longOf(saw)))
	w.relative("blank width", got.WidthMM, slices.MaxFunc(y, order).minus(slices.MinFunc(y, order)).plus(longOf(saw)))
}

// require fails on a quantity further off than 1e-12: some hundred times what
// a dozen roundings of 1e-16 come to where a step is a hundredth of its marks,
// and on a 2 m string still 2e-9 mm.
func (w farthest) require(t require.TestingT, about string) {
	for name, off := range w {
		require.Less(t, off, 1e-12, "%s, %s", name, about)
	}
}

// someNeck draws a plausible neck: of every choice each kind comes up.
func someNeck(r *rand.Rand) fan.Spec {
	from := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	s := fan.DefaultSpec()
	s.Strings, s.Frets, s.AllowReverse = 3+r.IntN(10), 12+r.IntN(19), true
	s.TrebleMM = from(330, 900)
	s.BassMM = s.TrebleMM * (1 + from(-0.04, 0.1))
	s.Neutral = []fan.Neutral{{Bridge: true}, {Fret: float64(r.IntN(s.Frets + 1))}, {Fret: from(0, float64(s.Frets))}}[r.IntN(3)]
	s.MarginBassMM, s.MarginTrebleMM = from(0, 6), from(0, 6)
	s.NutSpreadMM = from(6, 9) * float64(s.Strings-1)
	s.SaddleSpreadMM = s.NutSpreadMM * from(0.95, 1.8)
	if r.IntN(3) == 0 {
		s.Board = &fan.BoardWidths{NutMM: s.NutSpreadMM + 12, WidthMM: s.NutSpreadMM + 12 + from(0, 15), AtFret: float64(7 + r.IntN(s.Frets-6))}
		s.NutSpreadMM, s.SaddleSpreadMM = 0, 0
	}
	listed := func() fan.Spacing {
		steps := make([]float64, s.Strings-1)
		for i := range steps {
			steps[i] = from(0.8, 1.2)
		}
		return fan.Spacing{Rule: fan.Listed, Fractions: fan.FractionsOfSteps(steps)}
	}
	s.NutSpacing = []fan.Spacing{{}, listed(), {Rule: fan.EqualGaps}}[r.IntN(3)]
	s.SaddleSpacing = []fan.Spacing{{}, listed(), {Rule: fan.EqualGaps}, {Rule: fan.LikeNut}}[r.IntN(4)]
	s.DiametersMM = make([]float64, s.Strings)
	for i := range s.DiametersMM {
		s.DiametersMM[i] = from(0.2, 3)
	}
	s.NutShelfMM, s.BodyEndOverhangMM, s.BodyEndSquare = from(0, 8), from(0, 10), r.IntN(2) == 0
	s.SawAllowanceMM = from(0, 4)
	return s
}

// A neck may be refused (the body end at the saddle, say); most are not.
func TestGeometryAgainstAHundredDigits(t *testing.T) {
	const necks, draws = 300, 330
	r := rand.New(rand.NewPCG(314159, 265358))
	worst, done := farthest{}, 0
	for draw := 0; draw < draws && done < necks; draw++ {
		s := someNeck(r)
		l, err := fan.New(s)
		if err != nil {
			t.Logf("draw %d: %v", draw, err)
			continue
		}
		done++
		worst.compare(t, l)
		worst.require(t, fmt.Sprintf("draw %d: bass %v, treble %v, neutral %+v", draw, s.BassMM, s.TrebleMM, s.Neutral))
	}
	require.Equal(t, necks, done, "too many necks are refused")
	for _, name := range slices.Sorted(maps.Keys(worst)) {
		t.Logf("%-24s %.1e", name, worst[name])
	}
}

// Near the edges of the model the same bounds hold, and what is 0 in the
// equations is 0 to the bit: the line at k = k(N) has k - k(N) as a factor,
// both from the same call, and every slant has the lengths' difference, which
// is exact for lengths within a factor of two. Equal gaps on parallel strings
// are the same fractions at both ends but for their last digits; cents below
// 1e-10 that come of those are none.
func TestGeometryNearItsEdges(t *testing.T) {
	const last, bridge = 24, -1
	for _, row := range []struct {
		name         string
		bass, treble float64
		neutral      float64 // or bridge
		spread       float64 // string spread at the saddle less string spread at the nut
		gaps         bool    // equal gaps at both ends, under strings of unlike thickness
	}{
		{"neutral nut", 686, 648, 0, 20, false},
		{"neutral a hair from the nut", 686, 648, 1e-9, 20, false},
		{"neutral last fret", 686, 648, last, 20, false},
		{"neutral a hair from fret 7", 686, 648, 7 + 1e-9, 20, false},
		{"neutral bridge", 686, 648, bridge, 20, false},
		{"parallel strings", 686, 648, 7, 0, false},
		{"spans a hair apart", 686, 648, 7, 1e-9, false},
		{"lengths a micrometre apart", 648.001, 648, 7, 20, false},
		{"lengths a picometre apart", 648 + 1e-9, 648, 7, 20, false},
		{"lengths one bit apart", math.Nextafter(648, 649), 648, 7, 20, false},
		{"reverse by one bit, neutral bridge", 648, math.Nextafter(648, 649), bridge, 20, false},
		{"equal lengths", 648, 648, 7, 20, false},
		{"equal lengths, neutral bridge, drawing together", 648, 648, bridge, -5, false},
		{"equal gaps, parallel strings", 686, 648, 7, 0, true},
		{"equal gaps, spans a hair apart", 686, 648, 7, 1e-9, true},
		{"equal gaps, neutral bridge", 686, 648, bridge, 20, true},
		{"equal gaps, equal lengths", 648, 648, 7, 20, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := fan.DefaultSpec()
			s.BassMM, s.TrebleMM, s.Frets, s.AllowReverse = row.bass, row.treble, last, true
			s.NutSpreadMM, s.SaddleSpreadMM = 35, 35+row.spread
			s.Neutral = fan.Neutral{Fret: row.neutral}
			if row.neutral == bridge {
				s.Neutral = fan.Neutral{Bridge: true}
			}
			if row.gaps {
				s.NutSpacing.Rule, s.SaddleSpacing.Rule = fan.EqualGaps, fan.EqualGaps
				s.DiametersMM = []float64{0.254, 0.33, 0.432, 0.66, 0.914, 1.168}
			}
			l, err := fan.New(s)
			require.NoError(t, err)
			worst := farthest{}
			worst.compare(t, l)
			worst.require(t, row.name)
			requireExactZeros(t, l)
		})
	}
}

// requireExactZeros asks for 0 to the bit of every line that is square, and of
// no other.
func requireExactZeros(t *testing.T, l *fan.Layout) {
	equal, kN := l.Spec.BassMM == l.Spec.TrebleMM, l.Spec.Neutral.K()
	square := func(line fan.Across, k float64, name string) {
		require.Equal(t, equal || k == kN, line.TanSlant == 0, "slant of %s", name)
		if equal {
			require.Equal(t, line.Treble.X, line.Bass.X, "marks of %s", name)
			require.Equal(t, line.Treble.X, line.CrossMM, "crossing of %s", name)
		}
	}
	for n, fret := range l.Frets {
		square(fret.Line, fan.K(float64(n)), fmt.Sprintf("fret %d", n))
		if equal {
			require.Equal(t, fret.Bass, fret.Treble)
			require.Equal(t, fret.Slot.Treble.X, fret.Slot.Bass.X)
		}
	}
	square(l.Saddle, 1, "the saddle")
	require.Equal(t, equal || kN == 0, l.NutOffsetMM == 0, "nut offset")
}
