package report_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/tension/choice"
)

// inWords are the formulas that a pocket calculator cannot follow.
var inWords = regexp.MustCompile(`by trial|root of the|as above|mean of theirs|the parts within|own/u|part/u|least squares|times the factor|sqrt\(EA`)

// worked is the work for one string of the demo on a pair of its own.
func worked(t *testing.T, args []string, number int, fret float64) (*choice.Detail, *build.Work) {
	t.Helper()
	r, err := build.Load(demoFile, report.FlagsOf(t, append(args, "--bass", "700 mm", "--treble", "650 mm")...))
	require.NoError(t, err)
	p, err := r.Plan()
	require.NoError(t, err)
	pick, err := r.Pick()
	require.NoError(t, err)
	d, err := p.Detail(pick.Bass, pick.Treble, pick.Gauges)
	require.NoError(t, err)
	w, err := r.Work(p, d, number, fret)
	require.NoError(t, err)
	return d, w
}

// follow works every step of some sections out from the numbers above it, and
// returns the notepad and the number of steps that were worked out.
func follow(t *testing.T, w *build.Work, sections ...string) (pocket, int) {
	t.Helper()
	notes, done := pocket{}, 0
	for _, s := range w.Sections {
		for _, step := range s.Steps {
			assert.NotEmpty(t, step.Source, step.Symbol)
			if slices.Contains(sections, s.Name) && step.Formula != "" && !inWords.MatchString(step.Formula) {
				got, err := notes.work(step.Formula)
				require.NoError(t, err, "%s: %s", s.Name, step.Formula)
				tolerance := 1e-9 * math.Abs(step.Value)
				if strings.HasPrefix(step.Formula, "EA (") {
					tolerance = 1e-6 * math.Abs(step.Value) // a small difference of two lengths
				}
				assert.InDelta(t, step.Value, got, tolerance+1e-15, "%s: %s = %s", s.Name, step.Symbol, step.Formula)
				done++
			}
			if step.Symbol != "" {
				notes[step.Symbol] = step.Value
			}
		}
	}
	return notes, done
}

func TestTheWorkCanBeFollowed(t *testing.T) {
	for _, c := range []struct {
		name, gauges string
		over         []string
		fret         float64
	}{
		{"plain and wound", "w56 w44 w34 w24 p17 p13", nil, 5},
		{"estimated", "w58 w44 w34 w22 p21 p10", nil, 12},
		{"a capo, a retuned string, another pitch", "w58 w44 w36 w26 p21 p10", []string{"--capo", "2", "--retune", "6=A1-14c", "--pitch", "442"}, 7},
		{"no bend", "w80 w60 w50 w40 p24 p09", nil, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			for number := 1; number <= 6; number++ {
				d, w := worked(t, append([]string{"--gauges", c.gauges}, c.over...), number, c.fret)
				notes, done := follow(t, w, "pitch", "tension", "bend", "compensation")
				assert.Greater(t, done, 20)
				s := d.Strings[number-1]
				assert.InDelta(t, s.Compensation.Hi.M(), notes["most"], 1e-12)
				if c.fret > 0 {
					require.NoError(t, w.NoBend)
					assert.InEpsilon(t, s.Tunings[0].Pitch.Hz()*math.Pow(2, c.fret/12), notes["f0"], 1e-9, "the fret counts from the nut, whatever the capo")
					assert.InDelta(t, 200, notes["rise"], 1e-6)
				}
			}
		})
	}
}
