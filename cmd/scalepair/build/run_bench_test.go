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
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

const benchBuild = `
[strings]
tuning = "B1 E2 A2 D3 F#3 B3"
gauges = ["w54", "w42", "w32", "w22", "p17", "p13"]
[chosen]
bass = "700 mm"
treble = "660 mm"
[neck]
frets = 24
string_spread_at_nut = "37 mm"
string_spread_at_saddle = "54 mm"
radius = "300 mm"
`

// load reads a build of benchBuild and more, with the demo's readings.
func load(t *testing.T, more string) *build.Run {
	t.Helper()
	dir := t.TempDir()
	readings, err := os.ReadFile("../../../data/demo/readings.csv")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "readings.csv"), readings, 0o600))
	path := filepath.Join(dir, "build.toml")
	require.NoError(t, os.WriteFile(path, []byte(benchBuild+more), 0o600))
	j, err := build.Load(path, nil)
	require.NoError(t, err)
	return j
}

func layoutOf(t *testing.T, j *build.Run) *fan.Layout {
	t.Helper()
	spec := j.Neck()
	spec.Bass, spec.Treble = unit.MM(700), unit.MM(660)
	l, err := fan.New(spec)
	require.NoError(t, err)
	return l
}

// The calipers' step is the build's where it divides the unit of print and a
// mark can be set so finely, else the round step next below; fractions only
// where the calipers show them.
func TestCalipers(t *testing.T) {
	for _, c := range []struct {
		name, build string
		unit        unit.LengthUnit
		want, from  string
	}{
		{"nothing given", "", unit.Millimetres, "0.01 mm", ""},
		{"nothing given, inches", "", unit.DecimalInches, "0.001 in", ""},
		{"nothing given, fractions", "", unit.InchFractions, "0.001 in", ""},
		{"calipers given", "[measuring]\ncaliper_resolution = \"0.02 mm\"", unit.Millimetres, "0.02 mm", "[measuring]"},
		{"too fine for a mark", "[measuring]\ncaliper_resolution = \"0.001 mm\"", unit.Millimetres, "0.01 mm", "[measuring]"},
		{"too fine for a mark, inches", "[measuring]\ncaliper_resolution = \"0.0005 in\"", unit.DecimalInches, "0.001 in", "[measuring]"},
		{"too fine for a mark, fractions", "[measuring]\ncaliper_resolution = \"0.0005 in\"", unit.InchFractions, "0.001 in", "[measuring]"},
		{"marking before measuring", "[measuring]\ncaliper_resolution = \"0.02 mm\"\n[marking]\ncaliper_resolution = \"0.1 mm\"", unit.Millimetres, "0.1 mm", "[marking]"},
		{"inches given", "[marking]\ncaliper_resolution = \"0.005 in\"", unit.DecimalInches, "0.005 in", "[marking]"},
		{"inches given, millimetres printed", "[marking]\ncaliper_resolution = \"0.005 in\"", unit.Millimetres, "0.1 mm", "[marking]"},
		{"millimetres given, inches printed", "[marking]\ncaliper_resolution = \"0.05 mm\"", unit.DecimalInches, "0.002 in", "[marking]"},
		{"millimetres given, fractions printed", "[marking]\ncaliper_resolution = \"0.05 mm\"", unit.InchFractions, "0.002 in", "[marking]"},
		{"fractions given and printed", "[marking]\ncaliper_resolution = \"1/64 in\"", unit.InchFractions, "1/64 in", "[marking]"},
		{"fractions given, millimetres printed", "[marking]\ncaliper_resolution = \"1/64 in\"", unit.Millimetres, "0.2 mm", "[marking]"},
		{"uneven part", "[marking]\ncaliper_resolution = \"0.03 mm\"", unit.Millimetres, "0.02 mm", "[marking]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := load(t, c.build).Calipers(c.unit)
			assert.Equal(t, c.want, got.String())
			assert.Equal(t, c.from, got.From)
		})
	}
}

func TestPlayed(t *testing.T) {
	assert.Equal(t, fan.Playing{}, load(t, "").Build.Playing, "all frets, a hand that likes them square")
	p := load(t, "[playing]\nfrom_fret = 1\nto_fret = 9\nneck_angle_deg = 25").Build.Playing
	assert.Equal(t, [2]float64{1, 9}, [2]float64{p.FromFret, p.ToFret})
	assert.InDelta(t, -5*math.Pi/180, p.Hand().Rad(), 1e-12, "a fifth of the neck's angle, towards the head")
}

func TestCheckOptions(t *testing.T) {
	assert.Equal(t, mark.Options{}, load(t, "").CheckOptions())
	o := load(t, "[marking]\ntolerance = \"0.2 mm\"\nruler_resolution = \"1/64 in\"\nruler_zero = \"0.1 mm\"\ncaliper_resolution = \"0.02 mm\"\n"+
		"caliper_zero = \"0.03 mm\"\nnut_offset_tolerance = \"0.4 mm\"").CheckOptions()
	assert.Equal(t, mark.Options{Tolerance: unit.MM(0.2), RulerResolution: unit.Inches(1.0 / 64), RulerZero: unit.MM(0.1), CaliperResolution: unit.MM(0.02),
		CaliperZero: 3e-5, NutOffsetTolerance: unit.MM(0.4)}, o)
	assert.Equal(t, unit.Cents(3), load(t, "[marking]\ntolerance_cents = 3").CheckOptions().ToleranceCents)
}

// Resolutions come from [marking], else from [measuring] where it states them; its
// defaults do not count, since they are of no mark.
func TestResolutionsFrom(t *testing.T) {
	for _, c := range []struct {
		build          string
		ruler, caliper float64
		from           [2]string
	}{
		{"", 0.5, 0.05, [2]string{"", ""}},
		{"[measuring]\nruler_resolution = \"1/32 in\"\ncaliper_resolution = \"0.0005 in\"", 25.4 / 32, 0.0127, [2]string{"[measuring]", "[measuring]"}},
		{"[measuring]\nruler_resolution = \"1 mm\"\ncaliper_resolution = \"0.01 mm\"\n[marking]\ncaliper_resolution = \"0.05 mm\"", 1, 0.05, [2]string{"[measuring]", "[marking]"}},
		{"[measuring]\nruler_resolution = \"10 mm\"\nbalance_resolution = \"0.1 g\"", 0.5, 0.05, [2]string{"", ""}},
	} {
		j := load(t, c.build)
		o := j.CheckOptions().WithDefaults()
		assert.InDelta(t, c.ruler, o.RulerResolution.MM(), 1e-12, c.build)
		assert.InDelta(t, c.caliper, o.CaliperResolution.MM(), 1e-12, c.build)
		_, ruler := j.ResolutionOf("ruler")
		_, caliper := j.ResolutionOf("caliper")
		assert.Equal(t, c.from, [2]string{ruler, caliper}, c.build)
	}
}

// A line is found from either end, and its slant from what it runs along.
func TestFurtherLines(t *testing.T) {
	j := load(t, "[[lines]]\nname = \"a\"\nfrom_saddle = \"40 mm\"\nalong = \"the saddle line\"\n"+
		"[[lines]]\nname = \"b\"\nbehind_last_fret = \"20 mm\"\nslant_deg = 8\n[[lines]]\nname = \"c\"\nfrom_saddle = \"60 mm\"")
	l := layoutOf(t, j)
	lines, err := j.FurtherLines(l)
	require.NoError(t, err)
	require.Len(t, lines, 3)
	last := l.Frets[24].Line.Cross.MM()
	assert.InDelta(t, l.Saddle.Cross.MM()-40, lines[0].Line.Cross.MM(), 1e-9)
	assert.Equal(t, l.Saddle.Slant.Rad(), lines[0].Line.Slant.Rad())
	assert.InDelta(t, last+20, lines[1].Line.Cross.MM(), 1e-9)
	assert.InDelta(t, 20, lines[1].BehindLastFret.MM(), 1e-9)
	assert.InDelta(t, l.Saddle.Cross.MM()-last-20, lines[1].FromSaddle.MM(), 1e-9)
	assert.InDelta(t, 8*math.Pi/180, lines[1].Line.Slant.Rad(), 1e-12)
	assert.Zero(t, lines[2].Line.Slant.Rad())
	assert.Len(t, lines[2].Positions, 6)

	j = load(t, "[[lines]]\nname = \"off\"\nfrom_saddle = \"900 mm\"\n[[lines]]\nname = \"behind\"\nbehind_last_fret = \"900 mm\"")
	_, err = j.FurtherLines(l)
	var list fault.List
	require.ErrorAs(t, err, &list)
	assert.Len(t, list, 2)
	assert.Contains(t, err.Error(), "build.toml:13:")
}

const thinBlank = "[fret_wire]\ntang_depth = \"1.6 mm\"\n[[blanks]]\nname = \"short\"\nlength = \"300 mm\"\nwidth = \"80 mm\"\n" +
	"[[blanks]]\nname = \"thin\"\nlength = \"600 mm\"\nwidth = \"80 mm\"\nthickness = \"3 mm\"\n"

// The first blank that serves is worked with, one of a name where that is
// given; only thin ones are a fault, and so is one that was named and fails.
func TestBlankWorkedWith(t *testing.T) {
	good := thinBlank + "[[blanks]]\nname = \"good\"\nlength = \"600 mm\"\nwidth = \"80 mm\"\nthickness = \"7 mm\"\n"
	for _, c := range []struct {
		name, build, blank string
		want               int
		fault              string
	}{
		{"none on offer", "", "", -1, ""},
		{"first that serves", good, "", 2, ""},
		{"by name", good, " GOOD ", 2, ""},
		{"none large enough", strings.Split(thinBlank, "[[blanks]]\nname = \"thin\"")[0], "", -1, ""},
		{"all too thin", thinBlank, "", -1, "too thin for slots and radius"},
		{"named and too small", good, "short", 0, "short is too small for this board"},
		{"named and too thin", good, "thin", 1, "too thin for slots and radius"},
		{"no such", good, "god", -1, `--blank: no such blank on offer ("god"); did you mean "good"?`},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := load(t, c.build)
			l, saw := layoutOf(t, j), fan.Sawing{FretWire: j.Build.FretWire}
			depths, err := l.Depths(saw)
			require.NoError(t, err)
			got, err := j.PickBlank(l.FitBlanks(j.Build.Blanks, saw, depths), c.blank)
			if c.fault != "" {
				require.ErrorContains(t, err, c.fault)
				return
			}
			require.NoError(t, err)
			assert.Equal(t, c.want, got)
		})
	}
}
