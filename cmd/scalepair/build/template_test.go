package build_test

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/tuning"
)

// starts are templates of every kind, each in both systems of units.
func starts() []build.Start {
	var out []build.Start
	for _, s := range []build.Start{
		{}, {Strings: 7}, {Strings: 8}, {Strings: 9}, {Strings: 4}, {Strings: 5}, {Strings: 6, Bass: true},
		{Tuning: "G4 C4 E4 A4", Name: "re-entrant"}, {Tuning: "C2 C3"}, {Name: "a \"b\" \\ # \t \x01 é"},
	} {
		inches := s
		inches.Inches = true
		out = append(out, s, inches)
	}
	for _, named := range tuning.Named() {
		out = append(out, build.Start{Tuning: named.Name})
	}
	return out
}

func template(t *testing.T, s build.Start) (src string, b *build.Build, readings []byte) {
	t.Helper()
	file, readings, err := build.Template(s)
	require.NoError(t, err)
	b, err = build.Read(file, "build.toml")
	require.NoError(t, err)
	return string(file), b, readings
}

func TestTemplatesRead(t *testing.T) {
	for _, s := range starts() {
		t.Run(fmt.Sprintf("%+v", s), func(t *testing.T) {
			src, b, readings := template(t, s)
			assert.NotContains(t, src, "\t")
			assert.NotContains(t, src, "{{")
			assert.Contains(t, src, "the readings are invented")
			assert.True(t, bytes.HasPrefix(readings, []byte("# INVENTED EXAMPLES: nobody weighed these strings.")))
			assert.Equal(t, s.Inches, b.LengthUnit == unit.DecimalInches)
			if s.Name != "" {
				assert.Equal(t, s.Name, b.Name)
			}
			assert.Equal(t, b.Strings.Tuning.ReEntrant(), !b.Strings.Ordering)
			assert.GreaterOrEqual(t, b.Scales.Bass[len(b.Scales.Bass)-1], b.Scales.Treble[0], "some pair is no reverse fan")
			assert.Greater(t, b.Blanks[0].Length, 0.75*b.Scales.Bass[len(b.Scales.Bass)-1], "the blank holds a long board")
			assert.Greater(t, b.Blanks[0].Width, b.Neck.SaddleSpread)
		})
	}
}

func TestTemplateOfTheUsualTunings(t *testing.T) {
	for _, c := range []struct {
		start build.Start
		want  string
	}{
		{build.Start{}, "E2 A2 D3 G3 B3 E4"},
		{build.Start{Strings: 8}, "F#1 B1 E2 A2 D3 G3 B3 E4"},
		{build.Start{Strings: 5}, "B0 E1 A1 D2 G2"},
		{build.Start{Strings: 6, Bass: true}, "B0 E1 A1 D2 G2 C3"},
		{build.Start{Strings: 8, Tuning: "baritone B"}, "B1 E2 A2 D3 F#3 B3"},
	} {
		_, b, _ := template(t, c.start)
		assert.Equal(t, c.want, b.Strings.Tuning.String())
	}
}

func TestTemplateRefuses(t *testing.T) {
	for _, c := range []struct {
		start build.Start
		want  string
	}{
		{build.Start{Strings: 12}, "no usual tuning is known for 12 strings; 6 to 9 strings, or give the tuning"},
		{build.Start{Strings: 7, Bass: true}, "no usual tuning is known for 7 strings; 4 to 6 strings for a bass, or give the tuning"},
		{build.Start{Strings: -1}, "no usual tuning is known for -1 strings; 4 to 6 strings for a bass, or give the tuning"},
		{build.Start{Tuning: "E2"}, `this tuning cannot be laid out ("E2"); give 2 to 24 notes, low string first`},
	} {
		file, readings, err := build.Template(c.start)
		assert.EqualError(t, err, c.want)
		assert.Nil(t, file)
		assert.Nil(t, readings)
	}
	_, _, err := build.Template(build.Start{Tuning: "H2 E2"})
	assert.Error(t, err)
}

// Every key that the template switches off is a key, and its value will do.
func TestTemplateWithEverythingSwitchedOn(t *testing.T) {
	off := regexp.MustCompile(`(?m)^#(\[|[a-z])`)
	for _, s := range starts() {
		src, _, _ := template(t, s)
		require.Greater(t, len(off.FindAllString(src, -1)), 40)
		all := off.ReplaceAllString(src, "$1")
		if s.Tuning == "C2 C3" { // has no third string to bend
			all = strings.Replace(all, "bend_strings = [1, 2, 3]", "bend_strings = [1, 2]", 1)
		}
		_, err := build.Read([]byte(all), "build.toml")
		require.NoError(t, err, "%+v", s)
	}
}

// The readings go with the reference, so that every command runs at once.
func TestTemplateReadingsHoldTheReference(t *testing.T) {
	for _, s := range []build.Start{{}, {Inches: true}, {Strings: 4}, {Strings: 5, Inches: true}} {
		_, b, csv := template(t, s)
		readings, err := gauges.ReadReadings(bytes.NewReader(csv), "readings.csv", nil)
		require.NoError(t, err)
		var labels []string
		for _, r := range readings {
			labels = append(labels, r.Gauge)
		}
		for _, label := range b.Reference.Gauges {
			assert.True(t, slices.Contains(labels, label), "%s is not weighed", label)
		}
	}
}

// The same example in both systems: the weighed strings are the same.
func TestTemplateReadingsAgreeInBothSystems(t *testing.T) {
	weigh := func(s build.Start) map[string]float64 {
		_, _, csv := template(t, s)
		return linearDensities(t, csv)
	}
	for _, n := range []int{4, 6} {
		mm, in := weigh(build.Start{Strings: n}), weigh(build.Start{Strings: n, Inches: true})
		require.Len(t, in, len(mm))
		for label, w := range mm {
			assert.InEpsilon(t, w, in[label], 0.04, label)
		}
	}
}
