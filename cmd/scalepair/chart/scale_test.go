package chart

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func labelsOf(ticks []tick) []string {
	var out []string
	for _, t := range ticks {
		out = append(out, t.label)
	}
	return out
}

func TestTicks(t *testing.T) {
	for name, c := range map[string]struct {
		s    scale
		most int
		want []string
	}{
		"tensions":          {scale{lo: 0, hi: 92.5}, 7, []string{"0", "20", "40", "60", "80"}},
		"by two and a half": {scale{lo: 0, hi: 1.6}, 7, []string{"0.00", "0.25", "0.50", "0.75", "1.00", "1.25", "1.50"}},
		"about zero":        {scale{lo: -4.4, hi: 4.4}, 7, []string{"-4", "-2", "0", "2", "4"}},
		"plain gauges":      {scale{lo: 0.19, hi: 0.55, log: true}, 9, []string{"0.2", "0.25", "0.3", "0.35", "0.4", "0.5"}},
		"all gauges":        {scale{lo: 0.18, hi: 1.8, log: true}, 9, []string{"0.2", "0.3", "0.4", "0.5", "0.7", "1", "1.5"}},
		"three decades":     {scale{lo: 0.09, hi: 110, log: true}, 7, []string{"0.1", "1", "10", "100"}},
		"many decades":      {scale{lo: 1e-7, hi: 2e8, log: true}, 7, []string{"1e-06", "0.001", "1", "1000", "1e+06"}},
		"less than a step":  {scale{lo: 0.41, hi: 0.44, log: true}, 7, []string{"0.410", "0.415", "0.420", "0.425", "0.430", "0.435", "0.440"}},
	} {
		t.Run(name, func(t *testing.T) { assert.Equal(t, c.want, labelsOf(c.s.ticks(c.most))) })
	}
}

// Ticks lie within the scale, rise, are few, and their labels are their
// values.
func TestTicksAreTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log := rapid.Bool().Draw(t, "log")
		lo := rapid.Float64Range(1e-6, 1e6).Draw(t, "lo")
		s := scale{lo, lo * rapid.Float64Range(1.05, 1e5).Draw(t, "ratio"), 0, 100, log}
		most := rapid.IntRange(4, 10).Draw(t, "most")
		ticks := s.ticks(most)
		require.NotEmpty(t, ticks)
		require.LessOrEqual(t, len(ticks), most)
		for i, k := range ticks {
			require.True(t, k.value >= s.lo*(1-1e-6) && k.value <= s.hi*(1+1e-6))
			v, err := strconv.ParseFloat(k.label, 64)
			require.NoError(t, err)
			require.InEpsilon(t, k.value, v, 1e-9)
			if i > 0 {
				require.Greater(t, k.value, ticks[i-1].value)
			}
		}
	})
}

func TestCurveIsAPowerLawBetweenAndBeyondItsPoints(t *testing.T) {
	k := Curve{X: []float64{1, 2, 4}, Y: []float64{3, 12, 48}} // 3 x^2
	for _, x := range []float64{0.5, 1, 1.5, 2, 3, 4, 10} {
		assert.InEpsilon(t, 3*x*x, k.at(x), 1e-12)
	}
}

func TestLabelsKeepClear(t *testing.T) {
	l := labels{room: box{0, 0, 400, 200}}
	l.mark(100, 100, 6)
	seen := []box{}
	for range 4 {
		at, a, ok := l.place(100, 100, 6, "692 / 660", false)
		require.True(t, ok)
		b := textBox(at.x, at.y, textWidth("692 / 660"), a)
		for _, o := range append(seen, box{94, 94, 106, 106}) {
			assert.False(t, b.overlaps(o))
		}
		seen = append(seen, b)
	}
	_, _, ok := l.place(100, 100, 6, "a label far too long for the room that is left in this chart", false)
	assert.False(t, ok)
	_, _, ok = l.place(100, 100, 6, "a label far too long for the room that is left in this chart", true)
	assert.True(t, ok, "a must finds its place")
}

func TestSpanOfOneValue(t *testing.T) {
	for _, v := range []float64{0, 5, -5, 1e12} {
		s := span{v, v}.linearScale(0, 100)
		assert.Less(t, s.lo, s.hi)
		assert.False(t, math.IsNaN(s.at(v)))
	}
	s := span{0.3, 0.3}.logScale(0, 100)
	assert.InDelta(t, 50, s.at(0.3), 1e-9)
}
