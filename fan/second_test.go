package fan_test

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/fan"
)

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
	opposite := t
	if !atBass {
		opposite = b
	}
	return margin * math.Cos(a.phi) * a.chord(k) / (opposite * math.Sin(2*a.phi))
}

func TestSecondDerivation(t *testing.T) {
	overNecks(t, nil, func(t *rapid.T, l *fan.Layout) {
		spec := l.Spec
		a := newApex(spec)
		require.InDelta(t, (a.treble-a.bass)*math.Cos(a.phi), l.NutOffset.MM(), close9, "nut offset")
		require.InDelta(t, a.bass*math.Cos(a.phi)-a.nutCrossing, l.Nut.Bass.X.MM(), close9, "bass nut end")
		for _, s := range l.Strings {
			require.InDelta(t, a.inner(fraction(s.Nut, l.Nut), fraction(s.Saddle, l.Saddle)), s.Length.MM(), close9, "length of string %d", s.Number)
		}
		a.check(t, l.Saddle, 1)
		for n, fret := range l.Frets {
			k := 1 - math.Pow(2, -float64(n)/12)
			a.check(t, fret.Line, k)
			slot := a.chord(k) + a.overhang(k, a.marginB, true) + a.overhang(k, a.marginT, false)
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

// chord is the distance of the two marks at fraction k.
func (a apex) chord(k float64) float64 {
	b, t := a.sides(k)
	return apart(b, t, 2*a.phi)
}

// check holds one line across the strings against the apex.
func (a apex) check(t *rapid.T, line fan.Across, k float64) {
	require.InDelta(t, a.tan(k), line.TanSlant, close9, "slant at %v", k)
	require.InDelta(t, math.Tan(line.Slant.Rad()), line.TanSlant, close9)
	require.InDelta(t, a.bisector(a.sides(k))-a.nutCrossing, line.Cross.MM(), close9, "crossing at %v", k)
	require.InDelta(t, a.chord(k), line.Bass.Distance(line.Treble).MM(), close9, "chord at %v", k)
}

// fraction is how far along a line a point of it lies, 0 at the treble string.
func fraction(p fan.Point, line fan.Across) float64 {
	return real((number(p) - number(line.Treble)) / (number(line.Bass) - number(line.Treble)))
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
				require.InDelta(t, imag(bassEnd-at), l.Reach(i, float64(n), true).MM(), close9)
				require.InDelta(t, imag(at-trebleEnd), l.Reach(i, float64(n), false).MM(), close9)
			}
		}
	})
}
