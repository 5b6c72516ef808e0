package build_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

func TestDefaults(t *testing.T) {
	b := read(t, sound)
	assert.Equal(t, "readings.csv", b.Readings)
	assert.Equal(t, unit.Millimetres, b.LengthUnit)
	assert.Equal(t, unit.Newtons, b.ForceUnit)
	assert.Equal(t, 440.0, b.Strings.PitchStandardHz)
	assert.True(t, b.Strings.Ordering)
	assert.Nil(t, b.Strings.Gauges)
	assert.Nil(t, b.Chosen)
	assert.Equal(t, build.LikeReference, b.Feel.BendingForce.Source)
	assert.Equal(t, build.LikeReference, b.Feel.Overtone.Source)
	assert.Nil(t, b.Feel.BendStrings)
	assert.Equal(t, []int{5, 12}, b.Feel.BendFrets)
	assert.Equal(t, build.Weights{Tension: 1, BendingForce: 1, Overtone: 0.1}, b.Feel.Weights)
	assert.Equal(t, build.Limits{BreakingOpenPercent: 75, BreakingBentPercent: 90}, b.Limits)
	assert.Equal(t, build.Neutral{Fret: 7}, b.Neck.Neutral)
	assert.Equal(t, []unit.Length{0.06, 0.06, 0.06, 0.06, 0.06, 0.06}, b.Tails.Nut)
	assert.True(t, b.Tails.NutAssumed && b.Tails.SaddleAssumed && b.Saddle.Assumed)
	assert.Equal(t, []int{3, 5, 7, 9, 12, 15, 17, 19, 21, 24}, b.Dots.Face)
	assert.Equal(t, []int{12, 24}, b.Dots.Double)
	assert.Equal(t, build.Playing{ToFret: 24}, b.Playing)
	assert.Equal(t, unit.MM(3.5), b.Neck.BassMargin)
	assert.Equal(t, 24, b.Reference.Frets)
	assert.Equal(t, b.Reference.Bass, b.Reference.Treble)
}

func TestDefaultsThatDependOnTheBuild(t *testing.T) {
	short := read(t, strings.Replace(sound, "frets = 24", "frets = 4", 1))
	assert.Equal(t, build.Neutral{Fret: 4}, short.Neck.Neutral)
	assert.Equal(t, []int{4}, short.Feel.BendFrets, "fret 5 is not there")
	assert.Equal(t, []int{3}, short.Dots.Side)
	assert.Empty(t, short.Dots.Double)

	start := strings.Index(sound, "[reference]")
	alone := sound[:start] + strings.Replace(sound[strings.Index(sound, "[scales]"):], "[scales]", "[feel]\n[scales]", 1)
	assert.Equal(t, build.NoTarget, read(t, alone).Feel.Tension.Source)
	given := strings.Replace(alone, "[feel]", `gauges = ["f", "e", "d", "c", "b", "a"]`, 1)
	assert.Equal(t, build.Even, read(t, given).Feel.Tension.Source)
}

func TestListsAreReversed(t *testing.T) {
	b := read(t, sound+`
[tails]
nut = ["6 mm", "5 mm", "4 mm", "3 mm", "2 mm", "0 mm"]
[[compare]]
gauges = ["f", "e", "d", "c", "b", "a"]
[chosen]
scale = "660 mm"
gauges = ["F", "E", "D", "C", "B", "A"]
`)
	assert.Equal(t, []string{"p10", "p13", "p17", "w26", "w36", "w46"}, b.Reference.Gauges)
	assert.Equal(t, []unit.Length{0, 0.002, 0.003, 0.004, 0.005, 0.006}, b.Tails.Nut)
	assert.False(t, b.Tails.NutAssumed)
	assert.Equal(t, "a", b.Columns[0].Gauges[0])
	assert.Equal(t, "A", b.Chosen.Gauges[0])
	assert.Equal(t, fault.Place{Input: "build.toml", Line: 7, Column: 46}, b.PlaceOfString("reference.gauges", 1))
	assert.Equal(t, fault.Place{Input: "build.toml", Line: 7, Column: 11}, b.PlaceOfString("reference.gauges", 6))
}

func TestTargetsInEveryForm(t *testing.T) {
	feel := func(lines string) build.Feel {
		return read(t, strings.Replace(sound, `tension = "like the reference"`, lines, 1)).Feel
	}
	f := feel("tension = \"72 N\"\nbending_force = \"none\"\ninharmonicity = \"12.5 cents\"\nmore_strings = \"Across\"")
	assert.Equal(t, build.Target{Source: build.Stated, Forces: []unit.Force{72, 72, 72, 72, 72, 72}}, f.Tension)
	assert.Equal(t, build.NoTarget, f.BendingForce.Source)
	assert.Equal(t, build.OvertoneTarget{Source: build.Stated, Cents: 12.5}, f.Overtone)
	assert.Equal(t, build.Across, f.MoreStrings)

	f = feel("tension = [\"6 N\", \"5 N\", \"8 N\", \"7 N\", \"9 N\", \"10 N\"]\nbending_force = \"10 N\"\nbend_strings = []\nbend_towards = [\"treble\", \"usual\", \"usual\", \"usual\", \"usual\", \"bass\"]\nweights = { bending_force = 2 }")
	assert.Equal(t, []unit.Force{10, 9, 7, 8, 5, 6}, f.Tension.Forces)
	assert.NotNil(t, f.BendStrings)
	assert.Empty(t, f.BendStrings)
	assert.Equal(t, []build.Direction{build.TowardsBass, 0, 0, 0, 0, build.TowardsTreble}, f.BendTowards)
	assert.Equal(t, build.Weights{Tension: 1, BendingForce: 2, Overtone: 0.1}, f.Weights)
	assert.Equal(t, unit.Force(4.4482216152605), feel(`bending_force = "1 lbf"`).BendingForce.Forces[0])
}

func TestNeckInEveryForm(t *testing.T) {
	neck := func(lines string) build.Neck { return read(t, strings.Replace(sound, "frets = 24", lines, 1)).Neck }
	assert.Equal(t, build.Neutral{Bridge: true}, neck("frets = 24\nneutral_fret = \"Bridge\"").Neutral)
	assert.Equal(t, build.Neutral{Fret: 7.5}, neck("neutral_fret = 7.5").Neutral)
	n := neck("edge_margin = \"4 mm\"\ntreble_margin = \"3 mm\"\nheel = \"square\"\nradius = \"400 mm\"")
	assert.Equal(t, []unit.Length{0.004, 0.003, 0.4, 0.4}, []unit.Length{n.BassMargin, n.TrebleMargin, n.RadiusNut, n.RadiusLast})
	assert.True(t, n.BodyEndSquare)
	n = neck("nut_spacing = [\"8 mm\", \"8 mm\", \"8 mm\", \"8 mm\", \"4.6 mm\"]\nsaddle_spacing = \"like the nut\"")
	assert.Equal(t, build.ListedSteps, n.NutSpacing.Rule)
	assert.InDeltaSlice(t, []float64{0, 4.6 / 36.6, 12.6 / 36.6, 20.6 / 36.6, 28.6 / 36.6, 1}, n.NutSpacing.Fractions, 1e-15)
	assert.Equal(t, build.LikeNut, n.SaddleSpacing.Rule)

	widths := strings.NewReplacer("string_spread_at_nut", "nut_width", "string_spread_at_saddle", "other_width").Replace(sound)
	w := read(t, widths).Neck.Widths
	assert.Equal(t, &build.Widths{Nut: 0.037, Other: 0.054, AtFret: 24}, w)
}

func TestSeveralTunings(t *testing.T) {
	src := strings.Replace(sound, "tuning = \"B1 E2 A2 D3 F#3 B3\"\n", "", 1)
	b := read(t, "tunings_by = \"worst\"\n"+src+`
[[tunings]]
tuning = "baritone B"
weight = 2
[[tunings]]
name = "low"
tuning = "A1 E2 A2 D3 F#3 B3"
capo_fret = 2
`)
	assert.Equal(t, build.ByWorst, b.TuningsBy)
	assert.Equal(t, b.Tunings[0].Tuning, b.Strings.Tuning, "the first where [strings] names none")
	assert.Equal(t, []string{"baritone B", "low"}, []string{b.Tunings[0].Name, b.Tunings[1].Name})
	assert.Equal(t, []float64{2, 1}, []float64{b.Tunings[0].Weight, b.Tunings[1].Weight})
	assert.Equal(t, 2, b.Tunings[1].CapoFret)
	assert.Zero(t, b.Tunings[0].CapoFret)

	// A capo under [strings] is on in every tuning that says nothing of one.
	capo := strings.Replace(src, "[strings]\n", "[strings]\ncapo_fret = 3\n", 1)
	require.NotEqual(t, src, capo)
	b = read(t, capo+"[[tunings]]\ntuning = \"baritone B\"\n[[tunings]]\ntuning = \"A1 E2 A2 D3 F#3 B3\"\ncapo_fret = 0\n")
	assert.Equal(t, []int{3, 0}, []int{b.Tunings[0].CapoFret, b.Tunings[1].CapoFret})
}

func TestConstructionsAndMaterials(t *testing.T) {
	b := read(t, sound+`
[[constructions]]
gauge = "w42"
construction = "wound"
core = "0.41 mm"
core_shape = "hex"
diameters = "measured"
winding = "960 mm"
[[constructions.wraps]]
wire = "0.3 mm"
material = "steel"
[[constructions.wraps]]
wire = "0.1 mm"
material = "steel"
form = "flat"
packing = 0.95
[[constructions]]
gauge = "n28"
core = "0.71 mm"
core_material = "gut of my own"
[[materials]]
name = "gut of my own"
density_g_cm3 = 1.3
`)
	assert.Equal(t, []build.Construction{
		{Gauge: "w42", Family: "wound", Measured: true, Core: 0.00041, Shape: build.Hex, Material: "music wire", Winding: 0.96,
			Wraps: []build.Wrap{{Wire: 0.0003, Material: "steel"}, {Wire: 0.0001, Material: "steel", Flat: true, Packing: 0.95}}},
		{Gauge: "n28", Family: "plain", Core: 0.00071, Material: "gut of my own"},
	}, b.Constructions)
	assert.Equal(t, []build.Material{{Name: "gut of my own", DensityGCM3: 1.3}}, b.Materials)
}

func TestPlacesOfKeysAndValues(t *testing.T) {
	b := read(t, sound+"[[blanks]]\nlength = \"600 mm\"\n  width   = \"80 mm\"\n")
	at := func(line, column int) fault.Place {
		return fault.Place{Input: "build.toml", Line: line, Column: column}
	}
	for _, c := range []struct {
		key  string
		want fault.Place
	}{
		{"name", at(1, 8)},
		{"strings", at(2, 2)},
		{"strings.tuning", at(3, 10)},
		{"strings.gauges", at(2, 2)},
		{"reference.gauges", at(7, 10)},
		{"reference.gauges[0]", at(7, 11)},
		{"reference.gauges[9]", at(7, 10)},
		{"blanks", at(17, 3)},
		{"blanks[0].width", at(19, 13)},
		{"blanks[0].thickness", at(17, 3)},
		{"limits.blank", fault.Place{Input: "build.toml"}},
		{"", fault.Place{Input: "build.toml"}},
	} {
		assert.Equal(t, c.want, b.Place(c.key), c.key)
	}
	assert.Equal(t, at(19, 3), b.KeyPlace("blanks[0].width"))
	assert.Equal(t, at(2, 2), b.KeyPlace("strings.gauges"))
	assert.True(t, b.Given("blanks[0].width"))
	assert.False(t, b.Given("blanks[1]"))
}

// Every place is where the value's own text stands in the file.
func TestPlacesPointAtTheirText(t *testing.T) {
	for _, file := range buildFiles(t) {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		lines := strings.Split(string(src), "\n")
		b := read(t, string(src))
		found := 0
		for _, key := range []string{"name", "strings.tuning", "reference.gauges[2]", "scales.bass", "scales.bass.from", "neck.frets", "neck.neutral_fret", "measuring.ruler_resolution"} {
			require.True(t, b.Given(key), "%s in %s", key, file)
			p, k := b.Place(key), b.KeyPlace(key)
			name := key[strings.LastIndex(key, ".")+1:]
			if !strings.HasSuffix(name, "]") {
				assert.True(t, strings.HasPrefix(lines[k.Line-1][k.Column-1:], name), "%s at %s", key, k)
				assert.Regexp(t, `=\s*$`, lines[p.Line-1][:p.Column-1])
			}
			found++
		}
		assert.Equal(t, 8, found)
	}
}

// buildFiles are the demo's and the test builds' files.
func buildFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../../testdata/builds/*/build.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 3)
	return append(files, "../../../data/demo/build.toml")
}

func TestUnitsOfPrinting(t *testing.T) {
	b := read(t, "length_unit = \"in64\"\nforce_unit = \"lbf\"\n"+sound)
	assert.Equal(t, unit.InchFractions, b.LengthUnit)
	assert.Equal(t, unit.PoundsForce, b.ForceUnit)
	got := faultsOf(t, "length_unit = \"yd\"\n"+sound)
	assert.Equal(t, []string{fmt.Sprintf("build.toml:1:15: no unit for printing a length (%q); use mm, in, in64", "yd")}, got)
}

// A reference that says nothing of its neutral fret has the neck's, or its own
// last fret where it has fewer.
func TestReferenceNeutralStaysOnItsBoard(t *testing.T) {
	src := strings.Replace(sound, "[reference]", "[reference]\nfrets = 20", 1)
	src = strings.Replace(src, "[neck]", "[neck]\nneutral_fret = 22", 1)
	b := read(t, src)
	assert.Equal(t, build.Neutral{Fret: 22}, b.Neck.Neutral)
	assert.Equal(t, build.Neutral{Fret: 20}, b.Reference.Neutral)
	b = read(t, strings.Replace(src, "frets = 20", "frets = 24", 1))
	assert.Equal(t, build.Neutral{Fret: 22}, b.Reference.Neutral)
}
