package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/report"
)

// oddCase is one value off in an instrument that is sound otherwise.
type oddCase struct {
	quantity string // as the table of its package has it
	// from is what the file has, and stands in it once; to takes its place.
	from, to string
	// also lists further changes, from and to in turn, that are usual.
	also []string
	// want begins the line that is told, behind its place: what, number, usual.
	// Where the number is a ~ it is value, give or take room.
	want        string
	value, room float64
	// at stands in the line of the place; to where it is left out.
	at      string
	command string // setout where it is left out
}

const watchedReadings = `gauge,construction,outer_mm,core_mm,core_shape,material,kind,pieces,length_mm,mass_g,mass_resolution_g,winding_mm,hung_mass_kg,speaking_length_mm,pitch_hz,density_kg_m3,youngs_gpa,strength_mpa
p10,plain,0.254,,,,weighed,4,320,0.51,,,,,,,,
p13,plain,0.330,,,,weighed,4,320,0.86,,,,,,,,
p16,plain,0.406,,,,weighed,4,320,1.30,,,,,,,,
p17,plain,0.432,,,,weighed,4,320,1.47,,,,,,,,
w26,wound,0.660,0.37,round,,weighed,4,320,2.94,,,,,,,,
w36,wound,0.914,0.41,round,,weighed,4,320,5.48,,,,,,,,
w46,wound,1.168,0.46,round,,weighed,4,320,8.84,,985,,,,,,
w38,wound,0.965,0.42,round,,weighed,4,321,6.11,,,,,,,,
n28,plain,0.711,,,nylon,weighed,4,320,0.55,,,,,,,,
f35,silvered,0.889,,,nylon,weighed,4,320,3.86,,,,,,,,
h13,plain,0.330,,,,hung,,,,,,6.16,600,250,,,
o20,plain,0.508,,,my wire,weighed,4,320,2.02,0.011,,,,,7800,195,2000
g30,plain,0.762,,,my gut,weighed,4,320,0.76,,,,,,1300,5.5,301
`

const watchedBuild = `name = "watched"
[strings]
tuning = "E2 A2 D3 G3 B3 E4"
pitch_standard_hz = 440
capo_fret = 0
gauges = ["w46", "w36", "w26", "p17", "p13", "p10"]
[reference]
scale = "648 mm"
tuning = "E2 A2 D3 G3 B3 E4"
gauges = ["w46", "w36", "w26", "p17", "p13", "p10"]
[feel]
tension = "72 N"
bending_force = "9 N"
bend_cents = 200
bend_frets = [12]
bend_strings = [1, 2]
[limits]
least_tension = "31 N"
most_tension = "130 N"
most_bending_force = "40 N"
[chosen]
bass = "660 mm"
treble = "640 mm"
neutral_fret = 7
[neck]
frets = 24
string_spread_at_nut = "36 mm"
string_spread_at_saddle = "52 mm"
bass_margin = "3.5 mm"
treble_margin = "3.25 mm"
nut_shelf = "5 mm"
body_end_overhang = "6 mm"
saw_allowance = "2 mm"
radius_nut = "300 mm"
radius_last = "400 mm"
[tails]
nut = "65 mm"
saddle = "26 mm"
[saddle]
action_treble = "1.5 mm"
action_bass = "1.9 mm"
[fret_wire]
tang_depth = "1.51 mm"
tang_width = "0.5 mm"
barb_width = "0.8 mm"
kerf = "0.6 mm"
clearance = "0.4 mm"
overhang = "3 mm"
spare_percent = 10
[[lines]]
name = "pickup"
from_saddle = "42 mm"
slant_deg = 8
[[blanks]]
name = "pear"
length = "590 mm"
width = "82 mm"
thickness = "7 mm"
[measuring]
balance_resolution = "0.01 g"
balance_accuracy = "0.005 g"
ruler_resolution = "0.51 mm"
ruler_accuracy = "0.2 mm"
caliper_resolution = "0.0101 mm"
caliper_accuracy = "0.02 mm"
hung_resolution = "1 g"
pitch_uncertainty_cents = 2
[marking]
tolerance = "0.1 mm"
nut_offset_tolerance = "0.45 mm"
ruler_resolution = "0.52 mm"
ruler_zero = "0.11 mm"
caliper_resolution = "0.05 mm"
[[constructions]]
gauge = "c42"
construction = "built"
core = "0.44 mm"
core_shape = "round"
winding = "950 mm"
wraps = [{ wire = "0.312 mm", material = "nickel", packing = 0.79 }]
[[materials]]
name = "bell metal"
density_g_cm3 = 8.7
youngs_gpa = 101
strength_mpa = 600
[[materials]]
name = "horn"
density_g_cm3 = 1.31
youngs_gpa = 4.5
strength_mpa = 120
`

// write puts the case's files into a new folder.
func (c oddCase) write(t *testing.T) (folder string) {
	t.Helper()
	files := map[string]string{"build.toml": watchedBuild, "readings.csv": watchedReadings}
	changes := c.also
	if c.from != "" {
		changes = append([]string{c.from, c.to}, changes...)
	}
	for i := 0; i < len(changes); i += 2 {
		in := "build.toml"
		if !strings.Contains(watchedBuild, changes[i]) {
			in = "readings.csv"
		}
		require.Equal(t, 1, strings.Count(files[in], changes[i]), "%q stands once in %s", changes[i], in)
		files[in] = strings.Replace(files[in], changes[i], changes[i+1], 1)
	}
	folder = t.TempDir()
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666))
	}
	return folder
}

// run gives stdout and stderr of the case's command; untold leaves the watch
// out.
func (c oddCase) run(t *testing.T, folder string, untold bool, args ...string) (stdout, stderr string) {
	t.Helper()
	command := c.command
	if command == "" {
		command = "setout"
	}
	var out, errOut bytes.Buffer
	a := &app{out: &out, err: &errOut, env: os.Getenv, untold: untold}
	args = append(append(strings.Fields(command), filepath.Join(folder, "build.toml")), args...)
	root := a.root(args)
	root.SetArgs(args)
	require.Equal(t, exitDone, a.finish(root.Execute()), errOut.String())
	return out.String(), errOut.String()
}

// The instrument that the cases begin with is sound.
func TestNothingUnusualBeforeTheCases(t *testing.T) {
	for _, command := range []string{"setout", "layout", "gauges", "tension"} {
		c := oddCase{command: command}
		_, stderr := c.run(t, c.write(t), false)
		assert.Empty(t, stderr, command)
	}
}

// One value off is told in one line, with place, number and usual range; the
// result stays as it is without the watch.
func TestUnusual(t *testing.T) {
	for _, c := range oddCases {
		t.Run(c.quantity+" "+c.to, func(t *testing.T) {
			folder := c.write(t)
			stdout, stderr := c.run(t, folder, false)
			lines := unusual(stderr)
			if !assert.Len(t, lines, 1, stderr) {
				return
			}
			place, words := placed(t, folder, lines[0])
			want := c.withNumber(t, words)
			assert.True(t, strings.HasPrefix(words, want+"; "), "told:  %s\nwanted: %s; ...", words, want)
			at := c.at
			if at == "" {
				at = c.to
			}
			assert.Contains(t, place, at, "the place that is told")

			unwatched, rest := c.run(t, folder, true)
			assert.Empty(t, unusual(rest))
			assert.Equal(t, unwatched, stdout, "the result is the same without the watch")
		})
	}
}

var bracketed = regexp.MustCompile(`\(([-0-9.]+)`)

// withNumber puts the number that is told in the place of the ~, if it is near
// enough.
func (c oddCase) withNumber(t *testing.T, words string) string {
	t.Helper()
	if !strings.Contains(c.want, "~") {
		return c.want
	}
	m := bracketed.FindStringSubmatch(words)
	require.NotNil(t, m, words)
	x, err := strconv.ParseFloat(m[1], 64)
	require.NoError(t, err)
	assert.InDelta(t, c.value, x, c.room, words)
	return strings.Replace(c.want, "~", m[1], 1)
}

var placeForm = regexp.MustCompile(`^(.+?):(\d+):(\d+): (.*)$`)

// placed parts a message into the line of the file that it names and its words.
func placed(t *testing.T, folder, message string) (line, words string) {
	t.Helper()
	m := placeForm.FindStringSubmatch(message)
	require.NotNil(t, m, message)
	text, err := os.ReadFile(m[1])
	require.NoError(t, err)
	number, err := strconv.Atoi(m[2])
	require.NoError(t, err)
	return strings.Split(string(text), "\n")[number-1], m[4]
}

// Every quantity of every table has a case, and every case its quantity.
func TestEveryWatchedQuantityHasACase(t *testing.T) {
	tables := map[string]bool{}
	for _, w := range report.UsualValues().Watched {
		assert.False(t, tables[w.Quantity], "%q stands in two tables, and odd values are put together by it", w.Quantity)
		tables[w.Quantity] = true
		assert.NotEmpty(t, w.Source, w.Quantity)
		assert.NotEmpty(t, w.Check, w.Quantity)
	}
	cases := map[string]bool{}
	for _, c := range oddCases {
		cases[c.quantity] = true
	}
	assert.Equal(t, tables, cases)
}

// JSON lists every odd value by itself, in SI whatever the units.
func TestUnusualInJSON(t *testing.T) {
	c := oddCase{from: `nut_shelf = "5 mm"`, to: `nut_shelf = "25 mm"`, command: "layout"}
	stdout, _ := c.run(t, c.write(t), false, "--format", "json", "--lengths", "in")
	var got struct{ Unusual []report.UnusualJSON }
	require.NoError(t, json.Unmarshal([]byte(stdout), &got))
	require.Len(t, got.Unusual, 1)
	u := got.Unusual[0]
	require.NotNil(t, u.Value)
	require.NotNil(t, u.High)
	assert.InDelta(t, 25, *u.Value, 1e-9)
	assert.InDelta(t, 15, *u.High, 1e-9)
	assert.Equal(t, "mm", u.Unit)
	assert.Contains(t, u.Words, "(0.9843 in); up to 0.591 in is usual; ")

	c = oddCase{command: "layout"}
	stdout, _ = c.run(t, c.write(t), false, "--format", "json")
	assert.Contains(t, stdout, `"unusual": []`)
}
