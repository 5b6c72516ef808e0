package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/internal/trial"
	"scalepair/cmd/scalepair/report"
)

// advise with one candidate tells what tension and layout tell of it, and
// refuses it where tension names a limit that it breaks.
func TestTrialsAdviseOneCandidate(t *testing.T) {
	dropped := 0
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		b.Drop("chosen", "")
		b.Put("scales", "bass", b.Bass.Value())
		b.Put("scales", "treble", b.Treble.Value())
		if b.Seed%3 > 0 {
			b.Put("strings", "gauges", trial.Texts(b.Set))
		}
		s.write(t, "one", b.TOML(false), b.Readings(false))
		alone := s.run(t, "one", "advise", "--format", "json")
		d, ok := values[report.TensionJSON](t, s, "one", "tension")
		switch {
		case !ok:
			s.refused++
			require.Equal(t, exitInput, alone.code, "what tension refuses, advise refuses")
			return
		case alone.code != exitDone:
			dropped++
			require.NotEmpty(t, d.LimitsBroken, "advise drops it for %s", alone.errOut)
			return
		}
		s.accepted++
		require.Empty(t, d.LimitsBroken)
		var a report.AdviceJSON
		require.NoError(t, json.Unmarshal([]byte(alone.out), &a))
		require.Equal(t, [2]int{1, 1}, [2]int{a.PairsTried, a.PairsKept})
		require.Len(t, a.Pairs, 1)
		require.Equal(t, &d.DetailJSON, a.Best)
		a.Pairs[0].WinsPercent, a.Pairs[0].BeatsBestPercent, a.Pairs[0].ToldApartFromBest = nil, nil, nil
		if !b.EqualGaps() || b.Has("strings", "gauges") {
			require.Equal(t, []report.PairJSON{d.Pair}, a.Pairs)
		} else {
			// Until the set is chosen, equal gaps are those of others.
			require.Equal(t, d.Pair.Gauges, a.Pairs[0].Gauges)
			require.InDelta(t, d.Pair.TensionMisfit, a.Pairs[0].TensionMisfit, 0.5)
		}
		require.Equal(t, a.Pairs, a.Front, "the only one is the best in everything")
		l, ok := values[report.LaidOutJSON](t, s, "one", "layout", "--gauges", strings.Join(d.Pair.Gauges, ","))
		require.True(t, ok)
		require.Len(t, a.Layout.Marks, len(l.Marks))
	})
	assert.Positive(t, dropped, "some must break a limit")
}

// units are printed alike, whatever the file has.
var inMetric = []string{"--lengths", "mm", "--forces", "N", "--format", "json"}

// The same build written in inches and pounds-force gives the same results as
// in millimetres and newtons.
func TestTrialsInInches(t *testing.T) {
	commands := [][]string{{"tension"}, {"layout"}, {"advise"}, {"setout"}, {"gauges"}, {"compare"}, {"weigh"}, {"explain", "2"}, {"neutral"}}
	overTrials(t, func(t *rapid.T, s *trials, b *trial.Build) {
		args := with(commands[b.Seed%uint64(len(commands))], inMetric...)
		metric := s.run(t, "build", args...)
		s.write(t, "build", b.TOML(true), b.Readings(true))
		inches := s.run(t, "build", args...)
		require.Equal(t, metric.code, inches.code, "%v: %s", args, inches.errOut)
		if metric.code != exitDone {
			s.refused++
			return
		}
		s.accepted++
		requireAlike(t, fmt.Sprint(args), testDocument(t, metric.out), testDocument(t, inches.out))
	})
}

func testDocument(t require.TestingT, text string) (v any) {
	require.NoError(t, json.Unmarshal([]byte(text), &v))
	return v
}

// ownUnits are the texts that speak of a reading as it was written.
var ownUnits = map[string]bool{"slips_that_would_not_show": true, "likely_slips": true, "would_fit": true, "why": true}

// requireAlike holds two JSON documents to the same numbers, but for rounding,
// and the same words.
func requireAlike(t *rapid.T, at string, a, b any) {
	switch a := a.(type) {
	case float64:
		require.IsType(t, a, b, at)
		require.InDelta(t, a, b, 1e-7*math.Max(1, math.Abs(a)), at)
	case map[string]any:
		require.IsType(t, a, b, at)
		other := b.(map[string]any)
		for key := range ownUnits {
			delete(a, key)
			delete(other, key)
		}
		require.Equal(t, slices.Sorted(maps.Keys(a)), slices.Sorted(maps.Keys(other)), at)
		for _, key := range slices.Sorted(maps.Keys(a)) {
			requireAlike(t, at+"."+key, a[key], other[key])
		}
	case []any:
		require.IsType(t, a, b, at)
		require.Len(t, b, len(a), at)
		for i, x := range a {
			requireAlike(t, fmt.Sprintf("%s[%d]", at, i), x, b.([]any)[i])
		}
	default:
		require.Equal(t, a, b, at)
	}
}
