package mark_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// Marks that scatter about as far as the tolerance is wide: a verdict is sure
// just where two standard uncertainties lie between error and tolerance, and
// such verdicts, the nearest of them too, are wrong about as seldom as that
// promises, 2.3 % one-sided.
func TestASureVerdictIsSeldomWrong(t *testing.T) {
	l, rng := layout(t), rand.New(rand.NewPCG(41, 42))
	s := shop{ruler: 0.5, caliper: 0.1, hand: 0.03, scatter: 0.1}
	const bound = 0.1
	sure, near, wrong := 0, 0, 0
	for range 60 {
		b := s.draw(l, rng)
		o := s.options()
		o.Tolerance, o.ToleranceCents = unit.MM(bound), 0
		report := check(t, l, s.measureAll(b, l, rng), o)
		if len(report.Slips) > 0 {
			continue // what is off as a whole has another datum
		}
		for line, result := range report.Lines {
			for n, m := range result.Marks {
				require.Equal(t, math.Abs(m.Error.MM()) <= bound, m.Verdict == mark.Within)
				apart := math.Abs(math.Abs(m.Error.MM())-bound) / m.U.MM()
				require.Equal(t, apart >= 2, m.Sure, "%v uncertainties apart", apart)
				if !m.Sure {
					continue
				}
				truth := b.marks[line][n+1] - b.marks[line][0] - m.Nominal.MM()
				if sure++; apart < 3 {
					near++
				}
				if (math.Abs(truth) <= bound) != (m.Verdict == mark.Within) {
					wrong++
				}
			}
		}
	}
	assert.Greater(t, near, 100)
	assert.Less(t, float64(wrong), 0.023*float64(sure)+3*math.Sqrt(0.023*float64(sure)))
}
