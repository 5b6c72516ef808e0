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
	"scalepair/gauges/reading"
	"scalepair/tuning"
)

// starts are first build files of every kind, each in both systems of units.
func starts() []build.Start {
	var out []build.Start
	for _, s := range []build.Start{
		{}, {Strings: 7}, {Strings: 8}, {Strings: 9}, {Strings: 4}, {Strings: 5}, {Strings: 6, Bass: true},
		{Tuning: "G4 C4 E4 A4", Name: "re-entrant"}, {Tuning: "C2 C3"}, {Name: "a \"b\" \\ # \t \x01 é"},
	} {
		inches := s
		inches.Unit = unit.DecimalInches
		out = append(out, s, inches)
	}
	for _, named := range tuning.Named() {
		out = append(out, build.Start{Tuning: named.Name, Unit: unit.InchFractions})
	}
	return out
}

func template(t *testing.T, s build.Start) (src string, b *build.Build, readings []byte) {
	t.Helper()
	file, readings, err := build.Template(s)
	require.NoError(t, err)
	b, err = build.Read(file, "build.toml", nil)
	require.NoError(t, err, "%+v", s)
	return string(file), b, readings
}

func TestTemplatesRead(t *testing.T) {
	for _, s := range starts() {
		t.Run(fmt.Sprintf("%+v", s), func(t *testing.T) {
			src, b, readings := template(t, s)
			assert.NotContains(t, src, "\t")
			assert.NotContains(t, src, "{{")
			assert.True(t, bytes.HasPrefix(readings, []byte("# INVENTED EXAMPLES: nobody weighed these strings.")))
			assert.Equal(t, s.Unit, b.LengthUnit)
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

// The first run is about the case that the program is for: a baritone against a
// guitar in E, whose lengths leave room for a fan.
func TestTemplateBeginsWithAFan(t *testing.T) {
	_, b, _ := template(t, build.Start{})
	assert.Equal(t, "B1 E2 A2 D3 F#3 B3", b.Strings.Tuning.String())
	assert.Equal(t, "E2 A2 D3 G3 B3 E4", b.Reference.Tuning.String())
	assert.Greater(t, b.Scales.Bass[len(b.Scales.Bass)-1]-b.Scales.Treble[len(b.Scales.Treble)-1], unit.MM(50))
}

func TestTemplateRefuses(t *testing.T) {
	for _, c := range []struct {
		start build.Start
		want  string
	}{
		{build.Start{Strings: 12}, "no common tuning is known for 12 strings; 6 to 9 strings, or give the tuning"},
		{build.Start{Strings: 7, Bass: true}, "no common tuning is known for 7 strings; 4 to 6 strings for a bass, or give the tuning"},
		{build.Start{Tuning: "E2"}, `the number of strings is out of range ("E2"); 2 to 24 can be laid out`},
		{build.Start{Tuning: "E4 B3 G3"}, `it falls from its first note to its last ("E4 B3 G3"); low string first? write "G3 B3 E4"; a tuning that is meant so needs ordering = false under [strings]`},
		{build.Start{Tuning: "baritone B", Strings: 7}, `it has 6 strings, --strings asks for 7 ("baritone B"); leave out one of the two`},
	} {
		file, readings, err := build.Template(c.start)
		assert.EqualError(t, err, c.want)
		assert.Nil(t, file)
		assert.Nil(t, readings)
	}
}

// What matters first is on one screen and a half.
func TestTemplateIsShortBeforeMore(t *testing.T) {
	for _, s := range starts() {
		src, _, _ := template(t, s)
		first, _, found := strings.Cut(src, "# more:")
		require.True(t, found)
		assert.LessOrEqual(t, strings.Count(first, "\n"), 60)
	}
}

var (
	headerLine = regexp.MustCompile(`^(#\s*)?(\[+)([a-z_]+)\]+`)
	keyLine    = regexp.MustCompile(`^(#?)([a-z_0-9]+) = `)
)

// templateLine is one line of the template with a key, on or off.
type templateLine struct {
	section, key, text string
	off                bool
}

func templateLines(src string) (lines []templateLine, words map[string]string) {
	section, words := "", map[string]string{}
	for line := range strings.Lines(src) {
		if m := headerLine.FindStringSubmatch(line); m != nil {
			section = m[3]
		}
		words[section] += line
		if m := keyLine.FindStringSubmatch(line); m != nil {
			in := section
			if strings.Contains(line, "at the top of the file") {
				in = ""
			}
			lines = append(lines, templateLine{in, m[2], strings.TrimSpace(strings.TrimPrefix(line, "#")), m[1] == "#"})
		}
	}
	return lines, words
}

// keys are all that a build file may have.
func keys(t *testing.T) (out []build.Key) {
	t.Helper()
	sections, err := build.Keys(nil)
	require.NoError(t, err)
	for _, s := range sections {
		out = append(out, s.Keys...)
	}
	return out
}

// The template and the structs have the same keys: every key is spoken of in its
// section, and every line has a key of the structs.
func TestTemplateHasEveryKey(t *testing.T) {
	all := keys(t)
	require.Greater(t, len(all), 120)
	src, _, _ := template(t, build.Start{})
	lines, words := templateLines(src)
	paths := map[string]bool{}
	for _, k := range all {
		section, name, found := strings.Cut(k.Path, ".")
		section, _, _ = strings.Cut(section, "[")
		if !found {
			section, name = "", k.Path
		}
		paths[section+"."+name] = true
		said := words[section]
		if section == "chosen" || section == "" {
			said = src
		}
		assert.Regexp(t, `\b`+name+`\b`, said, "%s is missing under [%s]", name, section)
	}
	for _, l := range lines {
		assert.Contains(t, paths, l.section+"."+l.key, l.text)
	}
}

// Every line that is switched off reads when it stands in its section, and what
// it calls the default is what holds without it.
func TestTemplateLinesThatAreOff(t *testing.T) {
	for _, s := range []build.Start{{}, {Strings: 5}, {Strings: 8, Unit: unit.DecimalInches}} {
		src, before, _ := template(t, s)
		lines, _ := templateLines(src)
		off := 0
		for _, l := range lines {
			if !l.off || slices.Contains([]string{"constructions", "materials", "tunings", "compare", "lines"}, l.section) {
				continue
			}
			off++
			after := switchedOn(t, src, l)
			if strings.Contains(l.text, "# default") && l.key != "tolerance_cents" && l.key != "nut_offset_tolerance" && l.section != "reference" {
				was, is := build.ValueAt(before, l.section+"."+l.key), build.ValueAt(after, l.section+"."+l.key)
				if x, ok := was.(unit.Length); ok {
					assert.InDelta(t, x.MM(), is.(unit.Length).MM(), 0.02, "%s", l.text)
				} else if _, list := was.(build.PerString[unit.Length]); !list {
					assert.Equal(t, was, is, "%s", l.text)
				}
			}
		}
		assert.Greater(t, off, 60)
	}
}

// switchedOn reads the template with one more line in its section.
func switchedOn(t *testing.T, src string, l templateLine) *build.Build {
	t.Helper()
	text := src
	switch at := regexp.MustCompile(`(?m)^\[+` + l.section + `\]+.*\n`).FindStringIndex(src); {
	case l.section == "":
		text = l.text + "\n" + src + "\n[[tunings]]\ntuning = \"E2 A2 D3 G3 B3 E4\"\n"
	case at != nil:
		text = src[:at[1]] + l.text + "\n" + src[at[1]:]
	default:
		text = src + "\n[" + l.section + "]\n" + l.text + "\n"
	}
	// What a line replaces, or goes with.
	for key, change := range map[string][2]string{
		"nut_width":            {"string_spread_at_nut = ", "other_width = "},
		"zero_fret":            {"radius = ", "nut_shelf = \"5 mm\"\nradius = "},
		"radius_nut":           {"radius = \"", "radius_last = \""},
		"string_spread_at_nut": {"#", "#"},
	} {
		if l.key == key && l.section == "neck" {
			text = strings.Replace(text, change[0], change[1], 1)
		}
	}
	if l.key == "nut_width" {
		text = regexp.MustCompile(`(?m)^string_spread_at_saddle.*\n`).ReplaceAllString(text, "")
	}
	b, err := build.Read([]byte(text), "build.toml", nil)
	if l.key == "tunings_by" && err != nil {
		return nil
	}
	require.NoError(t, err, l.text)
	return b
}

// The readings go with the reference, so that every command runs at once.
func TestTemplateReadingsHoldTheReference(t *testing.T) {
	for _, s := range []build.Start{{}, {Unit: unit.DecimalInches}, {Strings: 4}, {Strings: 5, Unit: unit.DecimalInches}} {
		_, b, csv := template(t, s)
		readings, err := reading.Read(bytes.NewReader(csv), "readings.csv", nil)
		require.NoError(t, err)
		var labels []string
		for _, r := range readings {
			labels = append(labels, r.Gauge)
		}
		assert.Subset(t, labels, []string(b.Reference.Gauges))
	}
}
