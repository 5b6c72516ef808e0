package build_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/unit"
)

func over(t *testing.T, args ...string) (*build.Build, error) {
	t.Helper()
	flags, err := build.FlagsOf(args...)
	require.NoError(t, err)
	return build.Read([]byte(sound(t)), "build.toml", flags)
}

// A flag is refused where its key would be, before any file is read.
func TestFlagsCheckThemselves(t *testing.T) {
	for _, c := range []struct{ flag, text, want string }{
		{"--bass", "650", `a length needs a unit ("650"); write "650 mm" or "650 in"`},
		{"--bass", "25.5mm", `this is out of range ("25.5mm"); did you mean "25.5 in" or "25.5 cm"? it goes from 200 mm to 2000 mm`},
		{"--treble", "640 mm to 620 mm", `the range is empty: it begins above its end ("640 mm to 620 mm"); exchange its ends`},
		{"--pitch", "44", `this is out of range ("44"); it goes from 380 to 500`},
		{"--neutral", "nut", `not a neutral fret ("nut"); a number such as 7 or 7.5, or "bridge"`},
		{"--capo", "second", `not a whole number ("second")`},
		{"--trials", "-5", `this is out of range ("-5"); it goes from 0 to 1000000`},
	} {
		_, err := build.FlagsOf(c.flag, c.text)
		assert.ErrorContains(t, err, c.want, c.flag)
	}
}

// What flags say stands in the file's place, and a fault of it is the flag's.
func TestFlagsStandOverTheFile(t *testing.T) {
	b, err := over(t, "--pitch", "442", "--capo", "2", "--neutral", "bridge", "--gauges", "w46 w36 w26 p17 p13 p10", "--trials", "7")
	require.NoError(t, err)
	assert.Equal(t, unit.Frequency(442), b.Strings.PitchStandard)
	assert.Equal(t, unit.Frequency(442), b.Reference.PitchStandard, "what leaves it open follows")
	assert.Equal(t, 2, b.Strings.CapoFret)
	assert.True(t, b.Neck.Neutral.Bridge && b.Chosen.Neutral.Bridge)
	assert.Equal(t, build.PerString[string]{"p10", "p13", "p17", "w26", "w36", "w46"}, b.Strings.Gauges, "string 1 first")
	assert.Equal(t, 7, b.Confidence.Trials)
	assert.Equal(t, "--gauges", b.PlaceOfString("strings.gauges", 3).String())

	several := strings.Replace(sound(t), "[tails]", "[[tunings]]\ntuning = \"E2 A2 D3 G3 B3 E4\"\ncapo_fret = 2\n[tails]", 1)
	flags, err := build.FlagsOf("--retune", "6=D2")
	require.NoError(t, err)
	b, err = build.Read([]byte("tunings_by = \"worst\"\n"+several), "build.toml", flags)
	require.NoError(t, err)
	require.Len(t, b.Tunings, 1)
	assert.Equal(t, "string 6 at D2", b.Tunings[0].Name)
	assert.Zero(t, b.Tunings[0].CapoFret, "that of a tuning that is left out does not count")

	_, err = over(t, "--capo", "30")
	assert.EqualError(t, err, `--capo: it is off the board, which has 22 frets ("30"); give a fret up to 22`)
	_, err = over(t, "--gauges", "w46 w36")
	assert.EqualError(t, err, "--gauges: this lists 2, the tuning has 6 strings; give one for each string, low string first")
	_, err = over(t, "--retune", "6=D2,7=B1")
	assert.EqualError(t, err, `--retune: there is no such string ("7=B1"); use 1 to 6; 1 is the highest`)
}

// One length for each side chooses the pair, a sign changes the chosen one, and a
// range leaves the pair open.
func TestPairFlags(t *testing.T) {
	for _, c := range []struct {
		name         string
		args         []string
		bass, treble float64 // of the chosen pair, mm; 0 for none
		tried        int
	}{
		{"nothing", nil, 650, 630, 3},
		{"both", []string{"--bass", "700 mm", "--treble", "26 in"}, 700, 660.4, 1},
		{"one side", []string{"--bass", "700 mm"}, 700, 630, 1},
		{"a change", []string{"--bass", "+10mm"}, 660, 630, 1},
		{"down", []string{"--treble=-0.5 in"}, 650, 617.3, 3},
		{"a range", []string{"--bass", "26.5 in to 28 in by 1/4 in"}, 0, 0, 7},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, err := over(t, c.args...)
			require.NoError(t, err)
			assert.Len(t, b.Scales.Bass, c.tried)
			if c.bass == 0 {
				assert.Nil(t, b.Chosen)
				return
			}
			assert.InDelta(t, c.bass, b.Chosen.Bass.MM(), 1e-9)
			assert.InDelta(t, c.treble, b.Chosen.Treble.MM(), 1e-9)
		})
	}
	_, err := over(t, "--bass", "600 mm")
	assert.ErrorContains(t, err, `--bass: the bass is shorter than the treble of 630 mm ("600 mm")`)
	flags, err := build.FlagsOf("--bass", "+10 mm")
	require.NoError(t, err)
	_, err = build.Read([]byte(least), "build.toml", flags)
	assert.ErrorContains(t, err, `--bass: there is no chosen pair to change ("+10 mm")`)
}

func TestRangeOfLengths(t *testing.T) {
	for _, c := range []struct {
		text string
		want []float64 // mm
	}{
		{"650 mm", []float64{650}},
		{"645 mm to 655 mm by 5 mm", []float64{645, 650, 655}},
		{"645 mm to 655 mm", []float64{645, 650, 655}},
		{"645 mm to 657 mm by 5 mm", []float64{645, 650, 655, 657}},
		{"645 mm to 645 mm by 5 mm", []float64{645}},
		{"1 in to 1 1/64 in by 0.005 in", []float64{25.4, 25.527, 25.654, 25.781, 25.796875}},
	} {
		var l build.Lengths
		require.NoError(t, l.UnmarshalText([]byte(c.text)), c.text)
		require.Len(t, l, len(c.want), c.text)
		for i, mm := range c.want {
			assert.InDelta(t, mm, l[i].MM(), 1e-9, c.text)
		}
	}
	var l build.Lengths
	assert.Error(t, l.UnmarshalText([]byte("645 mm to 655 mm by 0 mm")))
	assert.Error(t, l.UnmarshalText([]byte("645 to 655 mm")))
}
