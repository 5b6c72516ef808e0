package report

import (
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

func TestFewWarningsWithASourceEach(t *testing.T) {
	assert.LessOrEqual(t, len(watches), 12)
	for _, w := range watches {
		assert.Less(t, w.low, w.high, w.name)
		assert.NotEmpty(t, w.source, w.name)
		assert.NotEqual(t, w.text(table.Units{}, w.low), w.text(table.Units{}, w.high), w.name)
	}
}

// FlagsOf are those of a command line.
func FlagsOf(t *testing.T, args ...string) *build.Flags {
	t.Helper()
	var f build.Flags
	set := pflag.NewFlagSet("", pflag.ContinueOnError)
	f.Add(set)
	require.NoError(t, set.Parse(args))
	return &f
}

func inputOf(t *testing.T, args ...string) (*Input, *choice.Detail) {
	t.Helper()
	r, err := build.Load("../../../data/demo/build.toml", FlagsOf(t, args...))
	require.NoError(t, err)
	in := &Input{Run: r}
	in.Plan, err = r.Plan()
	require.NoError(t, err)
	pick, err := r.Pick()
	require.NoError(t, err)
	d, err := in.Plan.Detail(pick.Bass, pick.Treble, pick.Gauges)
	require.NoError(t, err)
	return in, d
}

// A value outside its range is warned of once, and changes nothing.
func TestWarnings(t *testing.T) {
	set := []string{"--gauges", "w56 w44 w34 w24 p17 p13"}
	in, d := inputOf(t, append(set, "--bass", "690 mm", "--treble", "670 mm")...)
	assert.Empty(t, in.watched(d))
	for name, args := range map[string][]string{
		"scale length":                    {"--bass", "1000 mm", "--treble", "960 mm"},
		"pitch standard":                  {"--bass", "690 mm", "--treble", "670 mm", "--pitch", "415"},
		"pitch":                           {"--bass", "690 mm", "--treble", "670 mm", "--tuning", "B1 E2 A2 D3 F#3 B5"},
		"tension":                         {"--bass", "690 mm", "--treble", "670 mm", "--tuning", "B0 E2 A2 D3 F#3 B3"},
		"nut to fret 1 on the bass line":  {"--bass", "990 mm", "--treble", "940 mm"},
		"difference of the scale lengths": {"--bass", "740 mm", "--treble", "650 mm"},
	} {
		in, d := inputOf(t, append(set, args...)...)
		req := in.Plan.Request()
		req.Limits = choice.Limits{}
		var err error
		in.Plan, err = choice.Prepare(req)
		require.NoError(t, err)
		count := 0
		for _, text := range in.watched(d) {
			if strings.HasPrefix(text, "the "+name+" of ") {
				count++
			}
		}
		assert.Equal(t, 1, count, "%s: %v", name, in.watched(d))
	}
}

// A limit that the builder states is not warned of as well.
func TestAStatedLimitSilencesItsWarning(t *testing.T) {
	in, d := inputOf(t, "--gauges", "w56 w44 w34 w24 p17 p13", "--bass", "740 mm", "--treble", "650 mm")
	req := in.Plan.Request()
	req.Limits = choice.Limits{Difference: unit.MM(200), NutToFret1: unit.MM(80)}
	var err error
	in.Plan, err = choice.Prepare(req)
	require.NoError(t, err)
	assert.Empty(t, in.watched(d))
}

// Every limit that can drop a pair says which key sets it, or what frees it.
func TestEveryLimitHasARemedy(t *testing.T) {
	in, _ := inputOf(t, "--gauges", "w56 w44 w34 w24 p17 p13", "--bass", "690 mm", "--treble", "670 mm")
	for l := choice.Range; l <= choice.SaddleTravel; l++ {
		assert.NotEmpty(t, l.String())
		assert.NotEmpty(t, in.Remedy(choice.Miss{Limit: l, Gauge: -1}), l.String())
		if l != choice.Unbuildable {
			key := l.Setting() != "" || l == choice.StrengthUnknown || l == choice.StiffnessUnknown
			assert.True(t, key, l.String())
		}
	}
	m := choice.Miss{Limit: choice.NutToFret1, Gauge: -1, Value: 0.0401, Bound: 0.04}
	assert.Equal(t, "nut to fret 1: 40.1 mm against 40.0 mm (limits.nut_to_fret_1)", in.MissWords(m))
	m.Value = 0.040004
	assert.Equal(t, "nut to fret 1: just beyond 40.0 mm (limits.nut_to_fret_1)", in.MissWords(m))
}

// A core with two digits exchanged, 0.64 for 0.46 mm, is thicker than its thicker
// neighbour's; cores that grow are not spoken of.
func TestAWrongCoreIsWarnedOf(t *testing.T) {
	in, _ := inputOf(t, "--gauges", "w56 w44 w34 w24 p17 p13", "--bass", "690 mm", "--treble", "670 mm")
	assert.Empty(t, in.thickCores())
	for i := range in.Run.Stock.Gauges {
		if g := &in.Run.Stock.Gauges[i]; g.Label == "w46" {
			assert.InDelta(t, 0.46, g.Core.MM(), 1e-9)
			g.Core = unit.MM(0.64)
		}
	}
	if got := in.thickCores(); assert.Len(t, got, 1) {
		assert.Contains(t, got[0], "the core of w46 is 0.64 mm and that of ")
	}
}
