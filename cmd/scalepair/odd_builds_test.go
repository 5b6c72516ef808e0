package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Invented stocks of drawn wire: every row is rho pi/4 d^2 l, rounded as a
// balance of 0.01 g shows it. Wraps are of close round wire, which fills pi/4 of
// its ring.

const (
	steel  = 7850.0
	nylon  = 1080.0
	bronze = 8850.0
	copper = 8900.0
)

const stockHead = "gauge,construction,outer_mm,core_mm,core_shape,material,pieces,length_mm,mass_g\n"

// weighed is four pieces of 320 mm that weigh w kg/m.
func weighed(w float64) string { return fmt.Sprintf("4,320,%.2f", 1000*w*4*0.320) }

// plainRow is a plain string of a thickness in mm.
func plainRow(label string, mm float64, material string, rho float64) string {
	return fmt.Sprintf("%s,plain,%.3f,,,%s,%s\n", label, mm, material, weighed(rho*ring(0, mm)))
}

// woundRow is a wound string on a round steel core, both in mm.
func woundRow(label string, outer, core, rho float64) string {
	w := steel*ring(0, core) + math.Pi/4*rho*ring(core, outer)
	return fmt.Sprintf("%s,wound,%.3f,%.3f,round,,%s\n", label, outer, core, weighed(w))
}

// flossRow is metal on a nylon core whose thickness nobody knows; the core is
// taken as 0.6 of the outside.
func flossRow(label string, outer float64) string {
	w := nylon*ring(0, 0.6*outer) + math.Pi/4*copper*ring(0.6*outer, outer)
	return fmt.Sprintf("%s,silvered,%.3f,,,nylon,%s\n", label, outer, weighed(w))
}

// ring is the area between two diameters in mm, in m2.
func ring(in, out float64) float64 { return 1e-6 * math.Pi / 4 * (out*out - in*in) }

// electricStock has plain steel and wound gauges for guitars and baritones.
func electricStock() string {
	s := stockHead
	for _, mil := range []float64{9, 10, 11, 12, 13, 14, 16, 17, 18, 20} {
		s += plainRow(fmt.Sprintf("p%.0f", mil), 0.0254*mil, "", steel)
	}
	for _, mil := range []float64{22, 24, 26, 28, 32, 36, 42, 46, 52, 54, 56, 60, 64, 68, 74, 80} {
		s += woundRow(fmt.Sprintf("w%.0f", mil), 0.0254*mil, 0.0254*(8+0.21*mil), 7875)
	}
	return s
}

func bassStock() string {
	s := stockHead
	for _, mil := range []float64{30, 40, 45, 50, 60, 65, 70, 80, 85, 95, 100, 105, 110, 125, 130, 135} {
		s += woundRow(fmt.Sprintf("w%.0f", mil), 0.0254*mil, 0.0254*(13+0.18*mil), 7875)
	}
	return s
}

func nylonStock() string {
	s := stockHead
	for _, mil := range []float64{21, 24, 25, 28, 29, 32, 33, 36, 40} {
		s += plainRow(fmt.Sprintf("n%.0f", mil), 0.0254*mil, "nylon", nylon)
	}
	for _, mil := range []float64{29, 35, 43} {
		s += flossRow(fmt.Sprintf("b%.0f", mil), 0.0254*mil)
	}
	return s
}

func mandolinStock() string {
	s := stockHead
	for _, mil := range []float64{10, 11, 14, 15} {
		s += plainRow(fmt.Sprintf("p%.0f", mil), 0.0254*mil, "", steel)
	}
	for _, mil := range []float64{24, 26, 38, 40} {
		s += woundRow(fmt.Sprintf("w%.0f", mil), 0.0254*mil, 0.0254*(8+0.21*mil), bronze)
	}
	return s
}

// sound is a build that no builder would wonder at.
type sound struct{ name, build, stock string }

func soundBuilds() []sound {
	return []sound{
		{"six strings in inches", `
length_unit = "in"
force_unit = "lbf"
[strings]
tuning = "E2 A2 D3 G3 B3 E4"
gauges = ["w46", "w36", "w26", "p17", "p13", "p10"]
[chosen]
bass = "25 1/2 in"
treble = "24 3/4 in"
[neck]
frets = 22
string_spread_at_nut = "1 13/32 in"
string_spread_at_saddle = "2 1/16 in"
edge_margin = "9/64 in"
radius_nut = "10 in"
radius_last = "16 in"
[fret_wire]
tang_depth = "0.060 in"
tang_width = "0.021 in"
barb_width = "0.034 in"
kerf = "0.023 in"
[saddle]
action_treble = "3/64 in"
action_bass = "5/64 in"
[measuring]
caliper_resolution = "0.0005 in"
ruler_resolution = "1/64 in"
[[blanks]]
length = "21 in"
width = "3 in"
thickness = "1/4 in"
`, electricStock()},
		{"eight strings in F#", `
[strings]
tuning = "F#1 B1 E2 A2 D3 G3 B3 E4"
gauges = ["w74", "w56", "w42", "w32", "w24", "p16", "p12", "p9"]
[chosen]
bass = "711 mm"
treble = "673 mm"
[neck]
neutral_fret = 9
string_spread_at_nut = "52 mm"
string_spread_at_saddle = "73.5 mm"
radius = "508 mm"
[feel]
bend_cents = 200
bend_strings = [1, 2, 3]
`, electricStock()},
		{"baritone", `
[strings]
tuning = "B1 E2 A2 D3 F#3 B3"
gauges = ["w64", "w46", "w36", "w26", "p17", "p13"]
[chosen]
bass = "762 mm"
treble = "700 mm"
[neck]
string_spread_at_nut = "37 mm"
string_spread_at_saddle = "54 mm"
`, electricStock()},
		{"five-string bass", `
[strings]
tuning = "B0 E1 A1 D2 G2"
gauges = ["w130", "w105", "w85", "w65", "w45"]
[chosen]
bass = "940 mm"
treble = "864 mm"
[neck]
frets = 24
string_spread_at_nut = "38 mm"
string_spread_at_saddle = "76 mm"
[tails]
nut = "60 mm"
saddle = "30 mm"
[saddle]
action_treble = "2 mm"
action_bass = "2.6 mm"
`, bassStock()},
		{"short bass", `
[strings]
tuning = "E1 A1 D2 G2"
gauges = ["w100", "w80", "w60", "w45"]
[chosen]
bass = "770 mm"
treble = "735 mm"
[neck]
frets = 20
string_spread_at_nut = "31 mm"
string_spread_at_saddle = "57 mm"
`, bassStock()},
		{"nylon strings", `
[strings]
tuning = "E2 A2 D3 G3 B3 E4"
gauges = ["b43", "b35", "b29", "n40", "n32", "n28"]
[chosen]
bass = "660 mm"
treble = "645 mm"
[neck]
frets = 19
string_spread_at_nut = "43 mm"
string_spread_at_saddle = "58 mm"
[saddle]
action_treble = "3 mm"
action_bass = "4 mm"
`, nylonStock()},
		{"re-entrant ukulele", `
[strings]
tuning = "G4 C4 E4 A4"
ordering = false
gauges = ["n24", "n36", "n32", "n21"]
[chosen]
scale = "350 mm"
[neck]
frets = 15
string_spread_at_nut = "28 mm"
string_spread_at_saddle = "42 mm"
`, nylonStock()},
		{"lap steel", `
[strings]
tuning = "A2 C3 E3 G3 A3 C4"
gauges = ["w36", "w28", "w22", "p17", "p14", "p13"]
[chosen]
scale = "572 mm"
[neck]
string_spread_at_nut = "50 mm"
string_spread_at_saddle = "50 mm"
`, electricStock()},
		{"mandolin", `
[strings]
tuning = "G3 D4 A4 E5"
gauges = ["w38", "w24", "p15", "p10"]
[chosen]
bass = "360 mm"
treble = "340 mm"
[neck]
frets = 24
string_spread_at_nut = "24 mm"
string_spread_at_saddle = "36 mm"
`, mandolinStock()},
		{"twelve strings in courses", `
[strings]
tuning = "E3 E2 A3 A2 D4 D3 G4 G3 B3 B3 E4 E4"
ordering = false
gauges = ["w24", "w46", "p17", "w36", "p12", "w26", "p9", "p17", "p13", "p13", "p10", "p10"]
[chosen]
bass = "655 mm"
treble = "640 mm"
[neck]
string_spread_at_nut = "42 mm"
string_spread_at_saddle = "57 mm"
nut_spacing = ["2 mm", "6 mm", "2 mm", "6 mm", "2 mm", "6 mm", "2 mm", "6 mm", "2 mm", "6 mm", "2 mm"]
saddle_spacing = "like the nut"
`, electricStock()},
	}
}

// write puts a build into a new folder and gives the path of its file.
func (s sound) write(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "build.toml"), []byte(s.build), 0o666))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "readings.csv"), []byte(s.stock), 0o666))
	return filepath.Join(folder, "build.toml")
}

// unusual gives the lines of stderr that tell something odd.
func unusual(stderr string) []string {
	var out []string
	for _, line := range strings.Split(stderr, "\n") {
		if strings.Contains(line, "unusual ") {
			out = append(out, line)
		}
	}
	return out
}

// Nothing is told of instruments that are built every day.
func TestNothingUnusual(t *testing.T) {
	for _, s := range soundBuilds() {
		t.Run(s.name, func(t *testing.T) {
			path := s.write(t)
			for _, command := range []string{"gauges", "tension", "layout", "setout", "neutral", "explain 1"} {
				var out, errOut bytes.Buffer
				code := run(append(strings.Fields(command), path), &out, &errOut)
				require.Equal(t, exitDone, code, "%s: %s", command, errOut.String())
				assert.Empty(t, unusual(errOut.String()), command)
			}
		})
	}
}

// Nor of the first build file that init writes, nor of the test builds.
func TestNothingUnusualToBeginWith(t *testing.T) {
	paths := []string{"../../testdata/builds/bass_five/build.toml", "../../testdata/builds/eight_inch/build.toml",
		"../../testdata/builds/seven/build.toml"}
	for _, args := range []string{"4 --bass", "5 --bass", "6 --bass", "6", "7", "8", "9"} {
		for _, lengths := range []string{"mm", "in"} {
			folder := filepath.Join(t.TempDir(), "new")
			words := append([]string{"init", folder, "--lengths", lengths, "--strings"}, strings.Fields(args)...)
			require.Equal(t, exitDone, run(words, &bytes.Buffer{}, &bytes.Buffer{}), "%s", words)
			paths = append(paths, filepath.Join(folder, "build.toml"))
		}
	}
	for _, path := range paths {
		for _, command := range []string{"gauges", "setout"} {
			var out, errOut bytes.Buffer
			require.Equal(t, exitDone, run([]string{command, path}, &out, &errOut), errOut.String())
			assert.Empty(t, unusual(errOut.String()), "%s %s", command, path)
		}
	}
}
