package fan_test

import (
	"flag"
	"math"
	"math/cmplx"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/data/unit"
	"scalepair/fan"
)

func TestMain(m *testing.M) {
	_ = flag.Set("rapid.seed", "3141592653")
	_ = flag.Set("rapid.nofailfile", "true")
	os.Exit(m.Run())
}

const close9 = 1e-9 // mm, and for angles' tangents and cents

// apex is the second derivation, without coordinates: the outer string lines
// meet in an apex at the angle 2 phi, and everything is a distance from there.
// All distances are negative where the strings draw together towards the
// bridge.
type apex struct {
	phi          float64
	bass, treble float64 // from the apex to the two nut ends
	lenB, lenT   float64
	nutCrossing  float64 // from the apex to the nut line, along the bisector
	marginB      float64
	marginT      float64
}

// newApex finds the apex of a fan. The neutral line is square to the bisector,
// so its two ends are equally far away, at R; nut and saddle lines meet the
// bisector of sides a, b at 2 a b cos(phi)/(a + b); there the spreads hold, which
// leaves R alone in the ratio of the spreads.
func newApex(s fan.Spec) apex {
	kN := s.Neutral.K()
	ratio := func(r float64) float64 {
		b, t := r-s.Bass.MM()*kN, r-s.Treble.MM()*kN
		bs, ts := b+s.Bass.MM(), t+s.Treble.MM()
		return b * t / (b + t) * (bs + ts) / (bs * ts)
	}
	want := s.NutSpread.MM() / s.SaddleSpread.MM()
	near, far := math.Max(s.Bass.MM(), s.Treble.MM())*kN, 1e6
	if want > 1 {
		near, far = -math.Max(s.Bass.MM(), s.Treble.MM())*(1-kN), -1e6
	}
	for range 200 {
		mid := near + (far-near)/2
		if (ratio(mid) < want) == (want < 1) {
			near = mid
		} else {
			far = mid
		}
	}
	a := apex{lenB: s.Bass.MM(), lenT: s.Treble.MM(), marginB: s.BassMargin.MM(), marginT: s.TrebleMargin.MM()}
	a.bass, a.treble = near-s.Bass.MM()*kN, near-s.Treble.MM()*kN
	a.phi = math.Asin(s.NutSpread.MM() * (a.bass + a.treble) / (4 * a.bass * a.treble))
	a.nutCrossing = a.bisector(a.sides(0))
	return a
}

// sides are the distances of the two marks at fraction k from the apex.
func (a apex) sides(k float64) (bass, treble float64) {
	return a.bass + a.lenB*k, a.treble + a.lenT*k
}

func (a apex) bisector(b, t float64) float64 { return 2 * b * t * math.Cos(a.phi) / (b + t) }

// apart is the distance of two points on rays at an angle, by the law of
// cosines in the half angle, which loses fewer digits.
func apart(p, q, angle float64) float64 {
	sin := math.Sin(angle / 2)
	return math.Sqrt((p-q)*(p-q) + 4*p*q*sin*sin)
}

// tan is the slant by the law of tangents.
func (a apex) tan(k float64) float64 {
	b, t := a.sides(k)
	return (b - t) / (b + t) / math.Tan(a.phi)
}

// inner is the length between the points at fractions f of the nut line and h
// of the saddle line: for weights w that sum to 0,
// |sum w_i X_i|^2 = -sum_{i<j} w_i w_j d_ij^2 (Leibniz).
func (a apex) inner(f, h float64) float64 {
	nb, nt := a.sides(0)
	sb, st := a.sides(1)
	w := []float64{1 - f, f, h - 1, -h}
	r := []float64{nt, nb, st, sb}
	bass := []bool{false, true, false, true}
	sum := 0.0
	for i := range w {
		for j := range i {
			d := math.Abs(r[i] - r[j])
			if bass[i] != bass[j] {
				d = apart(r[i], r[j], 2*a.phi)
			}
			sum -= w[i] * w[j] * d * d
		}
	}
	return math.Sqrt(sum)
}

// overhang is how far a line runs on past an outer string to the board's edge:
// the edge is margin cos(phi) off, and the law of sines gives the angle there.
func (a apex) overhang(k, margin float64, atBass bool) float64 {
	b, t := a.sides(k)
	chord := apart(b, t, 2*a.phi)
	opposite := t
	if !atBass {
		opposite = b
	}
	return margin * math.Cos(a.phi) * chord / (opposite * math.Sin(2*a.phi))
}

// randomNeck draws a neck that can be built, with unlike spreads.
func randomNeck(t *rapid.T) fan.Spec {
	s := fan.Spec{AllowReverse: true}
	s.Strings = rapid.IntRange(2, 10).Draw(t, "strings")
	s.Frets = rapid.IntRange(1, 30).Draw(t, "frets")
	s.NutSpread = unit.MM(rapid.Float64Range(25, 90).Draw(t, "string spread at the nut"))
	spread := rapid.Float64Range(1.1, 1.8).Draw(t, "spread")
	if rapid.IntRange(0, 9).Draw(t, "draws together") == 0 {
		spread = 1 / spread
	}
	s.SaddleSpread = unit.MM(s.NutSpread.MM() * spread)
	s.Treble = unit.MM(rapid.Float64Range(400, 1000).Draw(t, "treble"))
	widest := math.Min(s.NutSpread.MM(), s.SaddleSpread.MM())
	s.Bass = unit.MM(s.Treble.MM() + rapid.Float64Range(-0.5*widest, 1.2*widest).Draw(t, "difference"))
	s.Neutral.Fret = rapid.Float64Range(0, float64(s.Frets)).Draw(t, "neutral")
	s.Neutral.Bridge = rapid.IntRange(0, 9).Draw(t, "bridge") == 0
	s.BassMargin = new(unit.MM(rapid.Float64Range(0, 6).Draw(t, "bass margin")))
	s.TrebleMargin = new(unit.MM(rapid.Float64Range(0, 6).Draw(t, "treble margin")))
	s.NutSpacing, s.SaddleSpacing = randomSpacing(t, s.Strings, s.NutSpread), randomSpacing(t, s.Strings, s.SaddleSpread)
	s.Diameters = make([]unit.Length, s.Strings)
	for i := range s.Diameters {
		s.Diameters[i] = unit.MM(rapid.Float64Range(0.2, 2).Draw(t, "diameter"))
	}
	s.NutShelf = unit.MM(rapid.Float64Range(0, 6).Draw(t, "pos"))
	s.BodyEndOverhang = unit.MM(rapid.Float64Range(0, 10).Draw(t, "body_end"))
	s.BodyEnd = rapid.SampledFrom([]fan.BodyEnd{fan.AlongLastFret, fan.SquareEnd}).Draw(t, "body end")
	s.SawAllowance = unit.MM(rapid.Float64Range(0, 3).Draw(t, "saw"))
	return s
}

// overNecks runs a check over random necks; change, when not nil, is made to
// each before it is built.
func overNecks(t *testing.T, change func(*fan.Spec), check func(t *rapid.T, l *fan.Layout)) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomNeck(t)
		if change != nil {
			change(&spec)
		}
		l, err := fan.New(spec)
		if err != nil {
			t.Skip(err)
		}
		check(t, l)
	})
}

func randomSpacing(t *rapid.T, strings int, spread unit.Length) fan.Spacing {
	rule := rapid.SampledFrom([]fan.SpacingRule{fan.EqualCentres, fan.EqualGaps, fan.Listed}).Draw(t, "rule")
	if rule != fan.Listed {
		return fan.Spacing{Rule: rule}
	}
	steps, sum := make([]unit.Length, strings-1), unit.Length(0)
	for i := range steps {
		steps[i] = unit.MM(rapid.Float64Range(0.8, 1.3).Draw(t, "step"))
		sum += steps[i]
	}
	for i := range steps {
		steps[i] *= spread / sum
	}
	return fan.Spacing{Rule: rule, Steps: steps}
}

func TestSecondDerivation(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		a := newApex(spec)
		require.InDelta(t, (a.treble-a.bass)*math.Cos(a.phi), l.NutOffset.MM(), close9, "nut offset")
		require.InDelta(t, a.bass*math.Cos(a.phi)-a.nutCrossing, l.Nut.Bass.X.MM(), close9, "bass nut end")
		for _, s := range l.Strings {
			require.InDelta(t, a.inner(s.NutFraction, s.SaddleFraction), s.Length.MM(), close9, "length of string %d", s.Number)
		}
		checkLine(t, a, l.Saddle, 1)
		for n, fret := range l.Frets {
			k := 1 - math.Pow(2, -float64(n)/12)
			checkLine(t, a, fret.Line, k)
			slot := apart2(a, k) + a.overhang(k, a.marginB, true) + a.overhang(k, a.marginT, false)
			require.InDelta(t, slot, fret.Slot.Length.MM(), close9, "slot %d", n)
		}
		last := l.Frets[spec.Frets]
		b, tr := a.sides(1 - math.Pow(2, -float64(spec.Frets)/12))
		require.InDelta(t, apart(a.bass, tr, 2*a.phi), l.DiagonalBassNut.MM(), close9, "diagonal from the bass nut")
		require.InDelta(t, apart(a.treble, b, 2*a.phi), l.DiagonalTrebleNut.MM(), close9, "diagonal from the treble nut")
		require.InDelta(t, b-a.bass, last.Bass.FromNut.MM(), close9)
		require.InDelta(t, tr-a.treble, last.Treble.FromNut.MM(), close9)
	})
}

func apart2(a apex, k float64) float64 {
	b, t := a.sides(k)
	return apart(b, t, 2*a.phi)
}

// checkLine holds one line across the strings against the apex.
func checkLine(t *rapid.T, a apex, line fan.Across, k float64) {
	require.InDelta(t, a.tan(k), line.TanSlant, close9, "slant at %v", k)
	require.InDelta(t, math.Tan(line.Slant.Rad()), line.TanSlant, close9)
	require.InDelta(t, a.bisector(a.sides(k))-a.nutCrossing, line.Cross.MM(), close9, "crossing at %v", k)
	require.InDelta(t, apart2(a, k), cmplx.Abs(number(line.Bass)-number(line.Treble)), close9, "chord at %v", k)
}

// number is a point as a complex number.
func number(p fan.Point) complex128 { return complex(p.X.MM(), p.Y.MM()) }

// crossing is where the line through a and b meets the line through c and d:
// with cross(u, v) = Im(conj(u) v), the share of the way from a to b is
// cross(c - a, d - c)/cross(b - a, d - c).
func crossing(a, b, c, d complex128) (share float64, at complex128) {
	cross := func(u, v complex128) float64 { return imag(cmplx.Conj(u) * v) }
	share = cross(c-a, d-c) / cross(b-a, d-c)
	return share, a + complex(share, 0)*(b-a)
}

// The tuning error of every inner string and the reach to the board's edges,
// by intersecting lines as complex numbers.
func TestCentsAndReachByIntersection(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		corners := l.Board().Corners
		bassEdge := [2]complex128{number(corners[0]), number(corners[1])}
		trebleEdge := [2]complex128{number(corners[3]), number(corners[2])}
		for n, fret := range l.Frets {
			c, d := number(fret.Line.Treble), number(fret.Line.Bass)
			_, bassEnd := crossing(c, d, bassEdge[0], bassEdge[1])
			_, trebleEnd := crossing(c, d, trebleEdge[0], trebleEdge[1])
			require.InDelta(t, 0, cmplx.Abs(bassEnd-number(fret.Slot.Bass)), close9)
			require.InDelta(t, 0, cmplx.Abs(trebleEnd-number(fret.Slot.Treble)), close9)
			for i, s := range l.Strings {
				share, at := crossing(number(s.Nut), number(s.Saddle), c, d)
				cents := 1200 * math.Log2(math.Pow(2, -float64(n)/12)/(1-share))
				require.InDelta(t, cents, fret.CentsSharp[i].Value(), close9, "string %d fret %d", i+1, n)
				require.InDelta(t, imag(bassEnd-at), l.Frame.Reach(i, float64(n), true).MM(), close9)
				require.InDelta(t, imag(at-trebleEnd), l.Frame.Reach(i, float64(n), false).MM(), close9)
			}
		}
	})
}
