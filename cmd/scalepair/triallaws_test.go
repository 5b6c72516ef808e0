package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/internal/trial"
	"scalepair/cmd/scalepair/report"
)

// asPrinted is how near two numbers of JSON must be that are the same in truth:
// JSON has nine digits, and three numbers or four go into one.
const asPrinted = 1e-7

// What is printed of the strings keeps the laws that it was worked out from,
// by the numbers that are printed beside it.
func TestTrialsKeepTheLawsOfStrings(t *testing.T) {
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		d, ok := values[report.TensionJSON](t, s, "build", "tension")
		if !ok {
			s.refused++
			return
		}
		s.accepted++
		stock, ok := values[report.GaugesJSON](t, s, "build", "gauges")
		require.True(t, ok, "what tension takes, gauges takes")
		gauges := map[string]report.GaugeJSON{}
		for _, g := range stock.Gauges {
			gauges[g.Gauge] = g
		}
		for _, tuned := range d.Tunings {
			require.Len(t, tuned.Strings, b.Strings)
			total := 0.0
			for _, str := range tuned.Strings {
				requireStringLaws(t, str, gauges[str.Gauge])
				total += str.TensionN
			}
			require.InEpsilon(t, total, tuned.TotalN, asPrinted)
			require.InEpsilon(t, tuned.TotalN, tuned.BassHalfN+tuned.TrebleHalfN, asPrinted)
			require.Less(t, tuned.TotalUN, total)
		}
		if b.Free() && b.Ordered() {
			requireOrdered(t, d.Pair.Gauges, gauges)
		}
	})
}

// requireStringLaws holds one string in one tuning to the laws.
func requireStringLaws(t *rapid.T, s report.StringJSON, g report.GaugeJSON) {
	q := g.LinearDensity / 1e3 * square(2*s.LengthMM/1e3*s.FrequencyHz)
	if g.StiffnessN == 0 {
		require.InEpsilon(t, q, s.TensionN, asPrinted)
		require.Empty(t, s.BreakingShareOpen+s.InharmonicityCents)
		require.Nil(t, s.CompensationLeastMM)
	} else {
		require.InEpsilon(t, q, s.TensionN*(1+s.TensionN/g.StiffnessN), asPrinted, "T (1 + T/EA) = w (2 L f)^2 of string %d", s.String)
		require.Positive(t, s.InharmonicityCents)
	}
	require.Less(t, s.TensionUN, s.TensionN)
	if g.BreakingN > 0 {
		require.InEpsilon(t, s.TensionN/g.BreakingN, s.BreakingShareOpen, asPrinted)
	}
	if s.CompensationLeastMM != nil {
		require.Positive(t, *s.CompensationLeastMM)
		require.GreaterOrEqual(t, *s.CompensationMostMM, *s.CompensationLeastMM)
		require.Less(t, *s.CompensationMostMM, s.LengthMM/10)
	}
	for _, bend := range s.Bends {
		if bend.Why != "" {
			require.Empty(t, bend.BendingForceN+bend.BendDistanceMM+bend.TensionN+bend.BreakingShare)
			continue
		}
		require.Positive(t, bend.BendingForceN)
		require.Positive(t, bend.BendDistanceMM)
		require.Greater(t, bend.TensionN, s.TensionN)
		require.Less(t, bend.BendingForceN, 2*bend.TensionN)
		if g.BreakingN > 0 {
			require.InEpsilon(t, bend.TensionN/g.BreakingN, bend.BreakingShare, asPrinted)
		}
	}
}

// requireOrdered holds a chosen set, low string first, to the ordering rule: no
// string lighter than its treble neighbour, none plain on the bass side of a
// wound one.
func requireOrdered(t *rapid.T, set []string, gauges map[string]report.GaugeJSON) {
	for i := 1; i < len(set); i++ {
		bass, treble := gauges[set[i-1]], gauges[set[i]]
		require.GreaterOrEqual(t, bass.LinearDensity, treble.LinearDensity, "%v", set)
		require.False(t, bass.Construction == "plain" && treble.Construction != "plain", "%v", set)
	}
}

// What is printed of the fan keeps its geometry, by the numbers of layout and
// setout alone.
func TestTrialsKeepTheGeometry(t *testing.T) {
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		l, ok := values[report.LaidOutJSON](t, s, "build", "layout")
		if !ok {
			s.refused++
			return
		}
		s.accepted++
		require.Len(t, l.Marks, b.Frets)
		require.Len(t, l.Strings, b.Strings)
		bass, treble := outer{l.Strings[b.Strings-1]}, outer{l.Strings[0]}
		require.InDelta(t, l.BassMM, bass.LengthMM, asPrinted)
		require.InDelta(t, l.TrebleMM, treble.LengthMM, asPrinted)
		require.InDelta(t, l.NutOffsetMM, treble.NutXMM-bass.NutXMM, 5e-6)
		before := report.MarkJSON{SlantDeg: l.NutSlantDeg}
		for _, m := range l.Marks {
			k := 1 - math.Exp2(-float64(m.Fret)/12)
			require.InEpsilon(t, k*l.BassMM, m.BassFromNutMM, asPrinted)
			require.InEpsilon(t, k*l.TrebleMM, m.TrebleFromNutMM, asPrinted)
			require.InDelta(t, m.BassFromNutMM-before.BassFromNutMM, m.BassStepMM, 5e-6)
			require.InDelta(t, m.TrebleFromNutMM-before.TrebleFromNutMM, m.TrebleStepMM, 5e-6)
			require.Greater(t, m.BassFromNutMM, before.BassFromNutMM)
			require.Greater(t, m.TrebleFromNutMM, before.TrebleFromNutMM)
			bx, by := bass.at(m.BassFromNutMM)
			tx, ty := treble.at(m.TrebleFromNutMM)
			require.InDelta(t, math.Atan2(bx-tx, by-ty)*180/math.Pi, m.SlantDeg, 1e-5, "positive where the bass end is nearer the bridge")
			require.Equal(t, l.BassMM > l.TrebleMM, m.SlantDeg > before.SlantDeg, "slants run from nut to bridge one way")
			before = m
		}
		if l.BassMM == l.TrebleMM {
			require.Zero(t, before.SlantDeg)
			require.Zero(t, l.SaddleSlantDeg)
		}
		requireStringsSide(t, l.LayoutJSON)
	})
}

// outer is an outer string line.
type outer struct{ report.LineJSON }

// at is the point of the line so far from the nut.
func (o outer) at(mm float64) (x, y float64) {
	u := mm / o.LengthMM
	return o.NutXMM + u*(o.SaddleXMM-o.NutXMM), o.NutYMM + u*(o.SaddleYMM-o.NutYMM)
}

// requireStringsSide holds the string lines to their order and lengths.
func requireStringsSide(t *rapid.T, l report.LayoutJSON) {
	for i, s := range l.Strings {
		require.InEpsilon(t, math.Hypot(s.SaddleXMM-s.NutXMM, s.SaddleYMM-s.NutYMM), s.LengthMM, asPrinted)
		if i > 0 {
			require.Greater(t, s.NutYMM, l.Strings[i-1].NutYMM)
			require.Greater(t, s.SaddleYMM, l.Strings[i-1].SaddleYMM)
		}
	}
	require.Greater(t, l.BlankLengthMM, l.Marks[len(l.Marks)-1].BassFromNutMM/2)
	require.Greater(t, l.BlankWidthMM, l.Strings[len(l.Strings)-1].NutYMM-l.Strings[0].NutYMM)
	require.Positive(t, l.NutBlankMM)
}

func square(x float64) float64 { return x * x }
