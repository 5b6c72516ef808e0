package tension_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension"
)

// What float64 may leave. A formula of n roundings is off by about n x 1.1e-16,
// and none here has more than two dozen.
const (
	formulaBound = 3e-15
	// The search for the bend distance ends on a Newton step of at most 1e-6 of the
	// way and so leaves the square of that, 1e-12 (see risingRoot).
	bendBound = 1e-12
	// So does the search for the compensation, and there the square counts by s/L
	// only: what is seen is a hundredth of this.
	compensationBound = 1e-12
)

// worst keeps the largest relative error of each quantity.
type worst map[string]float64

// hold compares a value with the deep one.
func (m worst) hold(t *testing.T, name string, got float64, want deep, bound float64) {
	t.Helper()
	off := exact(got).minus(want).over(want).abs().float()
	m[name] = max(m[name], off)
	assert.LessOrEqual(t, off, bound, "%s: %v, wanted %v", name, got, want.float())
}

// kind is a family of strings by the ranges of its numbers.
type kind struct {
	name                  string
	youngs, rho           float64
	thin, thick           float64 // core, m
	wrapLeast, wrapMost   float64 // linear density over that of the core
	shareLeast, shareMost float64 // stress over strength
	strength              float64
	short, long           float64 // m
}

func kinds() []kind {
	return []kind{
		{"nylon treble", 4.2e9, 1130, 0.5e-3, 1.2e-3, 1, 1, 0.2, 0.6, 400e6, 0.5, 0.66},
		{"nylon core, wound", 5e9, 1140, 0.4e-3, 0.8e-3, 2, 9, 0.2, 0.6, 400e6, 0.6, 0.68},
		{"plain steel", 203.4e9, 7850, 0.17e-3, 0.66e-3, 1, 1, 0.2, 0.9, 2300e6, 0.56, 0.76},
		{"steel core, wound", 203.4e9, 7850, 0.28e-3, 0.5e-3, 1.6, 9, 0.2, 0.6, 2200e6, 0.6, 0.76},
		{"bass steel", 203.4e9, 7850, 0.4e-3, 0.8e-3, 3, 18, 0.2, 0.6, 2000e6, 0.76, 0.94},
	}
}

// drawn is one string with all that is asked of it.
type drawn struct {
	w       wire
	at      bendAt
	heightM float64
}

func between(r *rand.Rand, lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }

// draw makes up a string of the kind; the pitch is that of a drawn stress.
func (k kind) draw(r *rand.Rand) drawn {
	w := plain(between(r, k.thin, k.thick), k.youngs, k.rho)
	w.LinearDensity *= between(r, k.wrapLeast, k.wrapMost)
	w.Strength = k.strength
	length := between(r, k.short, k.long)
	pull := between(r, k.shareLeast, k.shareMost) * k.strength * w.CoreArea
	return drawn{w: w, heightM: between(r, 0.8e-3, 4e-3), at: bendAt{
		Length: length, Pitch: math.Sqrt(pull/w.LinearDensity) / (2 * length),
		Fret: math.Round(between(r, 1, 24)*2) / 2, TanSlant: between(r, -0.2, 0.2),
		Rise:  math.Exp(between(r, math.Log(0.1), math.Log(300))),
		Tails: ends{Nut: between(r, 0, 0.1), Saddle: between(r, 0, 0.06)}, Reach: between(r, 0.01, 0.06),
	}}
}

// openDeep is T = 2 q/(1 + sqrt(1 + 4 q/EA)), q = w (2 L f)^2.
func openDeep(w wire, length deep, freqHz float64) deep {
	q := length.scaled(2).scaled(freqHz).squared().scaled(w.LinearDensity)
	return q.scaled(2).over(q.scaled(4).over(exact(w.EA)).raised(1).root().raised(1))
}

// pitchDeep is sqrt(T/w)/(2 l) of a wire as it sounds.
func pitchDeep(pull, weight, length deep) deep {
	return pull.over(weight).root().over(length.scaled(2))
}

// stiffnessDeep is B = pi^2 EI/(T L^2).
func stiffnessDeep(w wire, pull, length deep) deep {
	return deepPi.squared().scaled(w.EI).over(pull.times(length.squared()))
}

// spring is the whole wire from post to ball.
type spring struct {
	w       wire
	natural deep // R0 = R(0)/(1 + T/EA)
}

func newSpring(w wire, pull, rest deep) spring {
	return spring{w, rest.over(pull.over(exact(w.EA)).raised(1))}
}

// pull is T = EA (R/R0 - 1).
func (s spring) pull(run deep) deep { return run.over(s.natural).raised(-1).scaled(s.w.EA) }

// weight is w R0/R.
func (s spring) weight(run deep) deep { return s.natural.over(run).scaled(s.w.LinearDensity) }

// bendDeep is a bend as it stands in the formulas.
type bendDeep struct {
	spring
	x, s, t, tails deep
}

func newBendDeep(w wire, at bendAt) bendDeep {
	l := exact(at.Length)
	s := l.times(exp2(exact(-at.Fret).over(exact(12))))
	tails := exact(at.Tails.Nut).raised(at.Tails.Saddle)
	return bendDeep{
		newSpring(w, openDeep(w, l, at.Pitch), l.plus(tails)),
		l.minus(s), s, exact(at.TanSlant), tails,
	}
}

func (b bendDeep) sides(y deep) (along, beyond, front, sounding deep) {
	along, beyond = b.x.plus(y.times(b.t)), b.s.minus(y.times(b.t))
	return along, beyond, hypotenuse(along, y), hypotenuse(beyond, y)
}

func (b bendDeep) run(y deep) deep {
	_, _, front, sounding := b.sides(y)
	return front.plus(sounding).plus(b.tails)
}

func (b bendDeep) pitch(y deep) deep {
	_, _, front, sounding := b.sides(y)
	run := front.plus(sounding).plus(b.tails)
	return pitchDeep(b.pull(run), b.weight(run), sounding)
}

// lever is dR/dy.
func (b bendDeep) lever(y deep) deep {
	along, beyond, front, sounding := b.sides(y)
	return y.plus(b.t.times(along)).over(front).plus(y.minus(b.t.times(beyond)).over(sounding))
}

// TestFormulasAgainstAHundredDigits puts open string, inharmonicity and breaking
// beside the same formulas in 120 digits.
func TestFormulasAgainstAHundredDigits(t *testing.T) {
	seen := worst{}
	for n, k := range kinds() {
		r := rand.New(rand.NewPCG(1, uint64(n)))
		for range 200 {
			d := k.draw(r)
			w, l := d.w, exact(d.at.Length)
			pull := openAt(w, d.at.Length, d.at.Pitch)
			seen.hold(t, "open tension", pull, openDeep(w, l, d.at.Pitch), formulaBound)

			given := exact(pull)
			lighter := exact(w.LinearDensity).over(given.over(exact(w.EA)).raised(1))
			seen.hold(t, "pitch", pitchAt(w, d.at.Length, pull), pitchDeep(given, lighter, l), formulaBound)
			seen.hold(t, "breaking share", breaking(pull, w.CoreArea, w.Strength),
				given.over(exact(w.CoreArea)).over(exact(w.Strength)), formulaBound)

			b := spreadB(w, pull, d.at.Length)
			seen.hold(t, "inharmonicity", b, stiffnessDeep(w, given, l), formulaBound)
			seen.hold(t, "inharmonicity", cents10(b),
				log2(exact(b).scaled(100).raised(1)).scaled(600), formulaBound)

			s := exact(w.Strength)
			seen.hold(t, "highest pitch", highestPitch(w.Strength, k.youngs, k.rho, d.at.Length),
				pitchDeep(s.times(s.over(exact(k.youngs)).raised(1)), exact(k.rho), l), formulaBound)
		}
	}
	t.Log(seen)
}

// TestBendsAgainstAHundredDigits solves the pitch condition of a bend by
// halving in 120 digits.
func TestBendsAgainstAHundredDigits(t *testing.T) {
	seen := worst{}
	for n, k := range kinds() {
		r, reached := rand.New(rand.NewPCG(2, uint64(n))), 0
		for range 70 {
			d := k.draw(r)
			if bendHolds(t, seen, d) {
				reached++
			}
		}
		assert.GreaterOrEqual(t, reached, 20, "%s: too few bends were reached to say much", k.name)
		t.Log(k.name, "reached", reached)
	}
	assert.Contains(t, seen, "share of a bend that breaks", "no drawn bend broke its string")
	t.Log(seen)
}

// bendHolds compares one bend, and reports whether it was reached.
func bendHolds(t *testing.T, seen worst, d drawn) bool {
	t.Helper()
	b := newBendDeep(d.w, d.at)
	wanted := b.pitch(exact(0)).times(exp2(exact(d.at.Rise).over(exact(1200))))
	high := func(y deep) bool { return !b.pitch(y).below(wanted) }
	end := exact(d.at.Reach)
	got, err := bendString(d.w, d.at)
	if !high(end) {
		var fault *tension.NotReachableError
		require.ErrorAs(t, err, &fault, "%+v", d)
		assert.False(t, fault.Breaks)
		return false
	}
	y := bisect(exact(0), end, high)
	pull := b.pull(b.run(y))
	if share := pull.over(exact(d.w.CoreArea)).over(exact(d.w.Strength)); exact(1).below(share) {
		var fault *tension.NotReachableError
		require.True(t, errors.As(err, &fault) && fault.Breaks, "%+v: %v", d, err)
		seen.hold(t, "share of a bend that breaks", float64(fault.Breaking), share, bendBound)
		return false
	}
	require.NoError(t, err, "%+v", d)
	seen.hold(t, "bend distance", got.Distance, y, bendBound)
	seen.hold(t, "bent tension", got.Tension, pull, bendBound)
	seen.hold(t, "bending force", got.Force, pull.times(b.lever(y)), bendBound)
	return true
}

// TestCompensationAgainstAHundredDigits solves for the octave at fret 12 by
// halving in 120 digits.
func TestCompensationAgainstAHundredDigits(t *testing.T) {
	seen := worst{}
	for n, k := range kinds() {
		r := rand.New(rand.NewPCG(3, uint64(n)))
		for range 40 {
			d := k.draw(r)
			lo, hi, err := compensation(d.w, d.at.Length, d.at.Pitch, d.heightM, d.at.Tails)
			require.NoError(t, err, "%+v", d)
			least, most := compensationDeep(d)
			seen.hold(t, k.name+", least", lo, least, compensationBound)
			seen.hold(t, k.name+", most", hi, most, compensationBound)
		}
	}
	t.Log(seen)
}

// compensationDeep gives s for the ratio 2, and s + 2 sqrt(EI/T).
func compensationDeep(d drawn) (least, most deep) {
	l, h, freq := exact(d.at.Length), exact(d.heightM), exact(d.at.Pitch)
	tails := exact(d.at.Tails.Nut).raised(d.at.Tails.Saddle)
	half := l.shifted(-1)
	flat := func(s deep) bool {
		open := l.plus(s)
		pull := openDeep(d.w, open, d.at.Pitch)
		wire := newSpring(d.w, pull, open.plus(tails))
		sounding := hypotenuse(half.plus(s), h)
		run := hypotenuse(half, h).plus(sounding).plus(tails)
		pressed := pitchDeep(wire.pull(run), wire.weight(run), sounding)
		pressed = pressed.times(stiffnessDeep(d.w, wire.pull(run), sounding).raised(1).root())
		octave := freq.scaled(2).times(stiffnessDeep(d.w, pull, open).raised(1).root())
		return pressed.below(octave)
	}
	least = bisect(l.scaled(-0.1), l.scaled(0.2), flat)
	pull := openDeep(d.w, l.plus(least), d.at.Pitch)
	return least, least.plus(exact(d.w.EI).over(pull).root().scaled(2))
}
