package tension_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension"
)

// A plain steel string as most guitars have it: every row of the tables below
// takes it to one edge.
func edgeCase() drawn {
	return drawn{w: steel(0.254e-3), at: wholeTone(), heightM: 1.6e-3}
}

// tuned is d at the pitch that makes a strain.
func (d drawn) tuned(strain float64) drawn {
	d.at.Pitch = pitchAt(d.w, d.at.Length, strain*d.w.EA)
	return d
}

// At the edges the open string keeps its last digits: no difference is taken.
// A stiffness that is not known is that of a string that does not stretch, so
// that everything is the textbook's.
func TestOpenNearItsEdges(t *testing.T) {
	huge, unknown := edgeCase(), edgeCase()
	huge.w.EA, unknown.w.EA = 1e12, 0
	seen := worst{}
	for name, d := range map[string]drawn{
		"hardly any strain": edgeCase().tuned(1e-19), "twice its length": edgeCase().tuned(1),
		"stiff as a beam": huge, "no core known": unknown,
	} {
		w, l := d.w, exact(d.at.Length)
		want := l.scaled(2).scaled(d.at.Pitch).squared().scaled(w.LinearDensity)
		if w.EA > 0 {
			want = openDeep(w, l, d.at.Pitch)
		}
		pull := openAt(w, d.at.Length, d.at.Pitch)
		seen.hold(t, name, pull, want, formulaBound)
		assert.InEpsilon(t, d.at.Pitch, pitchAt(w, d.at.Length, pull), formulaBound, name)
	}
	_, _, err := compensation(unknown.w, unknown.at.Length, unknown.at.Pitch, 1.6e-3, unknown.at.Tails)
	assert.ErrorIs(t, err, tension.ErrNoStiffness)
	_, err = bendString(unknown.w, unknown.at)
	assert.ErrorIs(t, err, tension.ErrNoStiffness)
	assert.Zero(t, breaking(70, 0, 2e9), "no core: no share")
	t.Log(seen)
}

// The sensitivities of a tension against difference quotients in 120 digits,
// whose step of 1e-30 leaves 1e-30.
func TestSensitivitiesAgainstAHundredDigits(t *testing.T) {
	seen := worst{}
	for _, strain := range []float64{1e-9, 0.004, 0.1, 1} {
		d := edgeCase().tuned(strain)
		l := exact(d.at.Length)
		pull := openDeep(d.w, l, d.at.Pitch)
		by := sensitivities(pull.over(exact(d.w.EA)).float())
		// share is dlnT for a step of a length, or of a linear density or a core
		// area that is as many powers of it.
		step := exact(1).shifted(-100)
		share := func(weight, length, area int) deep {
			grown := func(times int) deep {
				out := exact(1)
				for range times {
					out = out.times(step.raised(1))
				}
				return out
			}
			q := l.times(grown(length)).scaled(2).scaled(d.at.Pitch).squared().scaled(d.w.LinearDensity).times(grown(weight))
			ea := exact(d.w.EA).times(grown(area))
			next := q.scaled(2).over(q.scaled(4).over(ea).raised(1).root().raised(1))
			return next.over(pull).raised(-1).over(step)
		}
		seen.hold(t, "linear density", by.LinearDensity, share(1, 0, 0), 1e-14)
		seen.hold(t, "core's diameter, area as its square", by.CoreDia, share(0, 0, 2), 1e-14)
	}
	t.Log(seen)
}

// At the edges a bend keeps the bound of the search. Where the string hardly
// stretches, R(y) - R(0) over R(0) is as small as the strain, and is not taken
// as a difference: nothing is lost.
func TestBendsNearTheirEdges(t *testing.T) {
	seen := worst{}
	change := func(f func(*drawn)) drawn {
		d := edgeCase()
		d.w.Strength, d.at.Reach = 1e12, 0.3
		f(&d)
		return d
	}
	for _, row := range []struct {
		name string
		d    drawn
	}{
		{"square fret", change(func(d *drawn) { d.at.TanSlant = 0 })},
		{"a hair from square", change(func(d *drawn) { d.at.TanSlant = -1e-12 })},
		{"steep, towards the saddle", change(func(d *drawn) { d.at.TanSlant = 0.7 })},
		{"steep, away from the saddle", change(func(d *drawn) { d.at.TanSlant = -0.7 })},
		{"fret 1", change(func(d *drawn) { d.at.Fret = 1 })},
		{"fret 36", change(func(d *drawn) { d.at.Fret, d.at.Reach = 36, 0.05 })},
		{"a millionth of a cent, square", change(func(d *drawn) { d.at.Rise, d.at.TanSlant = 1e-6, 0 })},
		{"a millionth of a cent, slanted", change(func(d *drawn) { d.at.Rise = 1e-6 })},
		{"a millionth of a cent, after the fall", change(func(d *drawn) { d.at.Rise, d.at.TanSlant = 1e-6, -0.05 })},
		{"an octave", change(func(d *drawn) { d.at.Rise = 1200 })},
		{"no tails", change(func(d *drawn) { d.at.Tails = ends{} })},
		{"tails longer than the string", change(func(d *drawn) { d.at.Tails = ends{Nut: 1, Saddle: 2} })},
		{"hardly any strain", change(func(d *drawn) { *d = d.tuned(1e-12) })},
		{"stretched by half", change(func(d *drawn) { d.at.Rise, *d = 20, d.tuned(0.5) })},
		{"stiff as a beam", change(func(d *drawn) { d.w.EA = 1e12 })},
	} {
		t.Run(row.name, func(t *testing.T) {
			require.True(t, bendHoldsFrom(t, seen, row.d), "not reached")
		})
	}
	none := edgeCase()
	none.at.Rise = 0
	got, err := bendString(none.w, none.at)
	require.NoError(t, err)
	assert.Zero(t, got.Distance, "no rise, no way")
	assert.Zero(t, got.Force, "no rise, no bending force, whatever the slant")
	seen.hold(t, "tension without a bend", got.Tension, openDeep(none.w, exact(none.at.Length), none.at.Pitch), formulaBound)
	t.Log(seen)
}

// bendHoldsFrom is bendHolds where the pitch falls first: the wanted place is
// the one after the least pitch, so the halving begins there.
func bendHoldsFrom(t *testing.T, seen worst, d drawn) bool {
	t.Helper()
	if d.at.TanSlant >= 0 {
		return bendHolds(t, seen, d)
	}
	b := newBendDeep(d.w, d.at)
	rise := func(y deep) deep { return b.pitch(y.raised(1e-15)).minus(b.pitch(y)) }
	end := exact(d.at.Reach)
	foot := bisect(exact(0), end, func(y deep) bool { return exact(0).below(rise(y)) })
	wanted := b.pitch(exact(0)).times(exp2(exact(d.at.Rise).over(exact(1200))))
	y := bisect(foot, end, func(y deep) bool { return !b.pitch(y).below(wanted) })
	got, err := bendString(d.w, d.at)
	require.NoError(t, err)
	seen.hold(t, "bend distance after a fall", got.Distance, y, bendBound)
	seen.hold(t, "bending force after a fall", got.Force, b.pull(b.run(y)).times(b.lever(y)), bendBound)
	return true
}

// What a bend out of reach would come to at the edge of the board, however near
// that is: rise and fall do not come near each other at these reaches.
func TestCentsAtTheEdgeAgainstAHundredDigits(t *testing.T) {
	seen := worst{}
	for _, slant := range []float64{-0.2, 0, 1e-9, 0.2} {
		for _, reach := range []float64{1e-6, 1e-3, 8e-3} {
			d := edgeCase()
			d.at.TanSlant, d.at.Reach, d.at.Rise = slant, reach, 1200
			_, err := bendString(d.w, d.at)
			var fault *tension.NotReachableError
			require.True(t, errors.As(err, &fault), "%v", err)
			b := newBendDeep(d.w, d.at)
			want := log2(b.pitch(exact(reach)).over(b.pitch(exact(0)))).scaled(1200)
			seen.hold(t, "cents at the edge", fault.EdgeRise.Value(), want, 1e-13)
		}
	}
	t.Log(seen)
}

// The compensation keeps its bound wherever pressing raises the pitch by more than
// the longer run lowers it. Where the two come near each other, on rubber with
// long tails, s is a difference: what then holds is the error against h^2/L,
// the longer run itself.
func TestCompensationNearItsEdges(t *testing.T) {
	seen := worst{}
	change := func(f func(*drawn)) drawn {
		d := edgeCase()
		f(&d)
		return d
	}
	for _, row := range []struct {
		name string
		d    drawn
	}{
		{"on the fret already", change(func(d *drawn) { d.heightM = 0 })},
		{"on the fret, hardly any stiffness", change(func(d *drawn) { d.heightM, d.w.EI = 0, d.w.EI*1e-9 })},
		{"a hair over the fret, hardly any stiffness", change(func(d *drawn) { d.heightM, d.w.EI = 1e-9, d.w.EI*1e-9 })},
		{"no tails", change(func(d *drawn) { d.at.Tails = ends{} })},
		{"tails longer than the string", change(func(d *drawn) { d.at.Tails = ends{Nut: 1, Saddle: 2} })},
		{"slack: a large part of the length", change(func(d *drawn) { *d = d.tuned(1e-4) })},
		{"tight: a tenth of the length", change(func(d *drawn) { *d = d.tuned(0.1) })},
		{"short", change(func(d *drawn) { d.at.Length = 0.2 })},
		{"long", change(func(d *drawn) { d.at.Length = 2 })},
		{"high", change(func(d *drawn) { d.heightM = 6e-3 })},
	} {
		lo, hi, err := compensation(row.d.w, row.d.at.Length, row.d.at.Pitch, row.d.heightM, row.d.at.Tails)
		require.NoError(t, err, row.name)
		least, most := compensationDeep(row.d)
		seen.hold(t, row.name, lo, least, compensationBound)
		seen.hold(t, row.name+", most", hi, most, compensationBound)
	}
	rubber := drawn{w: plain(2e-3, 2e6, 1000), heightM: 5e-3, at: bendAt{Length: 0.6, Tails: ends{Nut: 1.2}}}
	rubber.w.EI *= 1e-6
	for _, strain := range []float64{0.3, 0.4, 0.45, 0.5, 0.9} {
		d := rubber.tuned(strain)
		lo, _, err := compensation(d.w, d.at.Length, d.at.Pitch, d.heightM, d.at.Tails)
		require.NoError(t, err)
		least, _ := compensationDeep(d)
		off := exact(lo).minus(least).abs().scaled(d.at.Length / (d.heightM * d.heightM)).float()
		seen["rubber, against h^2/L"] = max(seen["rubber, against h^2/L"], off)
		assert.Less(t, off, 1e-12, "rubber stretched by %v", strain)
	}
	t.Log(seen)
}
