package build_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// everyBuild gives every number of its own, so that none can stand for another.
// Lists run low string first.
const everyBuild = `
[strings]
tuning = "E2 A2 D3 G3 B3 E4"
pitch_standard_hz = 442
capo_fret = 2
[reference]
bass = "25 in"
treble = "620 mm"
frets = 20
neutral_fret = 5
tuning = "D2 G2 C3 F3 A3 D4"
gauges = ["w46", "w36", "w26", "p17", "p13", "p10"]
string_spread_at_nut = "34.5 mm"
string_spread_at_saddle = "51.5 mm"
nut_tail = ["41 mm", "42 mm", "43 mm", "44 mm", "45 mm", "46 mm"]
saddle_tail = "21 mm"
[feel]
tension = ["91 N", "20 lbf", "7 kgf", "82 N", "81 N", "80 N"]
bending_force = "12 N"
inharmonicity = "25 cents"
bend_strings = [1, 3]
bend_cents = 150
bend_frets = [4, 9]
bend_towards = ["treble", "middle", "bass", "middle", "middle", "bass"]
bend_weight = 3
noticeable = "2.5 %"
prefer = "longest bass"
[scales]
bass = ["650 mm", "660 mm"]
treble = ["630 mm"]
[limits]
difference = "51 mm"
fret_slant_deg = 9
saddle_slant_deg = 27
nut_to_fret_1 = "39 mm"
inharmonicity_cents = 33
breaking_open_percent = 71
breaking_bent_percent = 86
least_tension = "31 N"
most_tension = "131 N"
most_bending_force = "41 N"
saddle_travel = "13 mm"
blank = true
[neck]
frets = 23
neutral_fret = 6.5
nut_width = "44 mm"
other_width = "56 mm"
other_width_at_fret = 12
bass_margin = "3.1 mm"
treble_margin = "2.9 mm"
nut_shelf = "5.5 mm"
body_end = "square"
body_end_overhang = "6.5 mm"
saw_allowance = "2.5 mm"
[tails]
nut = ["61 mm", "62 mm", "63 mm", "64 mm", "65 mm", "66 mm"]
saddle = ["31 mm", "32 mm", "33 mm", "34 mm", "35 mm", "36 mm"]
[saddle]
action_treble = "1.5 mm"
action_bass = "2 mm"
[[blanks]]
name = "ash"
length = "561 mm"
width = "71 mm"
thickness = "6.5 mm"
`

// The request of a build file, number by number, in SI or millimetres and
// radians, string 1 first.
func TestRequestOfEveryNumber(t *testing.T) {
	dir := t.TempDir()
	readings, err := os.ReadFile("../../../data/demo/readings.csv")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "readings.csv"), readings, 0o600))
	path := filepath.Join(dir, "build.toml")
	require.NoError(t, os.WriteFile(path, []byte(everyBuild), 0o600))
	j, err := build.Load(path, nil)
	require.NoError(t, err)
	r, err := j.Request()
	require.NoError(t, err)

	// E4 stands five, E2 twenty-nine semitones below A4.
	require.Len(t, r.Cases, 1)
	assert.InEpsilon(t, 442*math.Pow(2, -5.0/12), r.Cases[0].Pitches[0].Hz(), 1e-12)
	assert.InEpsilon(t, 442*math.Pow(2, -29.0/12), r.Cases[0].Pitches[5].Hz(), 1e-12)
	assert.Equal(t, 2, r.Cases[0].CapoFret)
	near := func(want, got []float64) { t.Helper(); assert.InDeltaSlice(t, want, got, 1e-12) }
	assert.Equal(t, []unit.Length{unit.MM(650), unit.MM(660)}, r.Bass)
	assert.Equal(t, []unit.Length{unit.MM(630)}, r.Treble)
	// Heights run straight: a fifth of half a millimetre from string to string.
	for i, want := range []float64{1.5, 1.6, 1.7, 1.8, 1.9, 2} {
		assert.InDelta(t, want, r.Action[i].MM(), 1e-9)
	}
	for i, tails := range r.Tails {
		near([]float64{float64(66 - i), float64(36 - i)}, []float64{tails.Nut.MM(), tails.Saddle.MM()})
	}
	assert.False(t, r.TailsAssumed)
	assert.False(t, r.ActionAssumed)

	f := r.Feel
	assert.Equal(t, choice.Stated, f.Tension.Kind)
	// A kilogram-force is 9.80665 N and a pound-force 0.45359237 of it.
	for i, want := range []float64{80, 81, 82, 7 * 9.80665, 20 * 0.45359237 * 9.80665, 91} {
		assert.InDelta(t, want, f.Tension.Forces[i].N(), 1e-12)
	}
	assert.Equal(t, choice.Target{Kind: choice.Stated, Forces: []unit.Force{12, 12, 12, 12, 12, 12}}, f.BendingForce)
	assert.Equal(t, unit.Cents(25), f.Inharmonicity)
	assert.Equal(t, []int{1, 3}, f.BendStrings)
	assert.Equal(t, []int{4, 9}, f.BendFrets)
	assert.Equal(t, unit.Cents(150), f.Bend)
	assert.Equal(t, []choice.Direction{choice.TowardsBass, choice.Middle, choice.Middle, choice.TowardsBass, choice.Middle, choice.TowardsTreble}, f.Towards)
	assert.Equal(t, choice.LongestBass, f.Prefer)
	near([]float64{3, 0.025}, []float64{f.BendWeight, float64(f.Noticeable)})

	l := r.Limits
	near([]float64{51, 39, 33, 0.71, 0.86, 31, 131, 41, 13, 9, 27},
		[]float64{l.Difference.MM(), l.NutToFret1.MM(), l.Inharmonicity.Value(), float64(l.BreakingOpen), float64(l.BreakingBent), l.LeastTension.N(), l.MostTension.N(),
			l.MostBendingForce.N(), l.SaddleTravel.MM(), l.FretSlant.Degrees(), l.SaddleSlant.Degrees()})
	assert.True(t, l.Blank)
	assert.Equal(t, []fan.Blank{{Name: "ash", Length: unit.MM(561), Width: unit.MM(71), Thickness: unit.MM(6.5)}}, r.Blanks)

	n := r.Neck
	assert.Equal(t, []any{6, 23, fan.Neutral{Fret: 6.5}, fan.SquareEnd}, []any{n.Strings, n.Frets, n.Neutral, n.BodyEnd})
	near([]float64{44, 56, 12}, []float64{n.NutWidth.MM(), n.OtherWidth.MM(), n.WidthAtFret})
	near([]float64{3.1, 2.9, 5.5, 6.5, 2.5}, []float64{n.BassMargin.MM(), n.TrebleMargin.MM(), n.NutShelf.MM(), n.BodyEndOverhang.MM(), n.SawAllowance.MM()})

	ref := r.Reference
	near([]float64{635, 620, 34.5, 51.5}, []float64{ref.Neck.Bass.MM(), ref.Neck.Treble.MM(), ref.Neck.NutSpread.MM(), ref.Neck.SaddleSpread.MM()}) // 25 in are 635 mm
	assert.Equal(t, []any{6, 20, fan.Neutral{Fret: 5}}, []any{ref.Neck.Strings, ref.Neck.Frets, ref.Neck.Neutral})
	assert.False(t, ref.Neck.Widths())
	assert.InEpsilon(t, 442*math.Pow(2, -7.0/12), ref.Pitches[0].Hz(), 1e-12, "D4")
	assert.InEpsilon(t, 442*math.Pow(2, -31.0/12), ref.Pitches[5].Hz(), 1e-12, "D2")
	near([]float64{46, 41, 21}, []float64{ref.Tails[0].Nut.MM(), ref.Tails[5].Nut.MM(), ref.Tails[3].Saddle.MM()})
	var labels []string
	for _, g := range ref.Gauges {
		labels = append(labels, r.Stock[g].Label)
	}
	assert.Equal(t, []string{"p10", "p13", "p17", "w26", "w36", "w46"}, labels)
}

// Without [scales] the lengths about the reference's are tried; without anything
// the request has none, and says so where it is made ready.
func TestLengthsWithoutScales(t *testing.T) {
	readings, err := data.Demo("readings.csv")
	require.NoError(t, err)
	const reference = "[reference]\nscale = \"640 mm\"\ntuning = \"E2 A2 D3 G3 B3 E4\"\ngauges = [\"w46\", \"w36\", \"w26\", \"p17\", \"p13\", \"p10\"]\n"
	r, err := build.New([]byte(least+reference), readings, nil)
	require.NoError(t, err)
	req, err := r.Request()
	require.NoError(t, err)
	assert.Equal(t, []unit.Length{unit.MM(610), unit.MM(640)}, []unit.Length{req.Treble[0], req.Treble[len(req.Treble)-1]})
	assert.Equal(t, []unit.Length{unit.MM(610), unit.MM(720)}, []unit.Length{req.Bass[0], req.Bass[len(req.Bass)-1]})
	for _, scale := range []string{"640 mm", "25 1/2 in"} {
		r, err = build.New([]byte("length_unit = \"in64\"\n"+least+strings.Replace(reference, "640 mm", scale, 1)), readings, nil)
		require.NoError(t, err)
		req, err = r.Request()
		require.NoError(t, err)
		for _, l := range append(req.Bass, req.Treble...) {
			eighths := 8 * l.Inches()
			assert.InDelta(t, math.Round(eighths), eighths, 1e-9, "all lengths stand on the rule's eighths")
		}
		assert.InDelta(t, r.Build.Reference.Treble.Inches(), req.Treble[len(req.Treble)-1].Inches(), 1./16)
		assert.InDelta(t, 1./8, (req.Bass[1] - req.Bass[0]).Inches(), 1e-9)
	}
	const chosen = "[chosen]\nbass = \"660 mm\"\ntreble = \"640 mm\"\n"
	for text, most := range map[string]float64{least + reference + chosen: 720, least + chosen: 660} {
		r, err = build.New([]byte(text), readings, nil)
		require.NoError(t, err)
		req, err = r.Request()
		require.NoError(t, err)
		assert.Equal(t, unit.MM(most), req.Bass[len(req.Bass)-1], "a saved pair does not narrow the search about a reference")
	}
}
