package build_test

import (
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
)

func read(t *testing.T, src string) *build.Build {
	t.Helper()
	b, err := build.Read([]byte(src), "build.toml", nil)
	require.NoError(t, err)
	return b
}

const least = "[strings]\ntuning = \"E2 A2 D3 G3 B3 E4\"\n[neck]\nstring_spread_at_nut = \"36 mm\"\nstring_spread_at_saddle = \"52 mm\"\n"

// What a file leaves open has its default.
func TestDefaults(t *testing.T) {
	b := read(t, least)
	assert.Equal(t, "readings.csv", b.Readings)
	assert.Equal(t, unit.Frequency(440), b.Strings.PitchStandard)
	assert.True(t, b.Strings.Ordering)
	assert.Equal(t, fan.Neutral{Fret: 7}, b.Neck.Neutral)
	assert.Len(t, b.Tails.Nut, 6)
	assert.True(t, b.Tails.NutAssumed && b.Tails.SaddleAssumed && b.Saddle.Assumed)
	assert.Equal(t, []int{3, 5, 7, 9, 12, 15, 17, 19, 21, 24}, b.Dots.Face)
	assert.Equal(t, fan.DefaultFretWire(), b.FretWire)
	assert.Nil(t, b.Reference)
	assert.Nil(t, b.Chosen)
	assert.False(t, b.Given("neck.frets"))
	assert.Equal(t, 5, read(t, strings.Replace(least, "[neck]", "[neck]\nfrets = 5", 1)).Neck.Frets)
}

// Lists over strings are turned round, and one value stands for all strings.
func TestListsBeginWithStringOne(t *testing.T) {
	b := read(t, least+`nut_spacing = ["8 mm", "7.5 mm", "7 mm", "7 mm", "6.5 mm"]
[tails]
nut = ["45 mm", "70 mm", "95 mm", "120 mm", "145 mm", "170 mm"]
saddle = "0 mm"
`)
	assert.Equal(t, unit.MM(170), b.Tails.Nut[0])
	assert.Equal(t, build.PerString[unit.Length]{0, 0, 0, 0, 0, 0}, b.Tails.Saddle)
	assert.Equal(t, unit.MM(6.5), b.Neck.Neck.NutSpacing.Steps[0])
	assert.Equal(t, 8, b.PlaceOfString("tails.nut", 6).Line)
	assert.Equal(t, 8, b.PlaceOfString("tails.nut", 6).Line)
}

// A number means the unit that its key's name ends in.
func TestNumbersOfKeysWithAUnit(t *testing.T) {
	b := read(t, least+"[limits]\nfret_slant_deg = 30\nbreaking_open_percent = 70\ninharmonicity_cents = 40\n[playing]\nneck_angle_deg = -5\n[fret_wire]\nspare_percent = 20.5\n")
	assert.InDelta(t, 30, b.Limits.FretSlant.Degrees(), 1e-12)
	assert.InDelta(t, 70, b.Limits.BreakingOpen.Percent(), 1e-12)
	assert.Equal(t, unit.Cents(40), b.Limits.Inharmonicity)
	assert.InDelta(t, -5, b.Playing.NeckAngle.Degrees(), 1e-12)
	assert.InDelta(t, 20.5, b.FretWire.Spare.Percent(), 1e-12)
}

// Ways of writing that mean the same.
func TestTheSameWrittenOtherwise(t *testing.T) {
	good := sound(t)
	want := read(t, good)
	for name, text := range map[string]string{
		"a byte order mark":    "\uFEFF" + good,
		"line ends of Windows": strings.ReplaceAll(good, "\n", "\r\n"),
		"centimetres":          strings.Replace(good, `"36 mm"`, `"3.6 cm"`, 1),
		"dotted keys":          strings.Replace(good, "[tails]\n", "[tails]\n", 1),
		"a table on one line":  strings.Replace(good, "[fret_wire]\ntang_depth = \"1.5 mm\"\nkerf = \"0.6 mm\"\n", "", 1) + "\n[x]\n",
		"lists over lines":     strings.Replace(good, "[1, 2, 3]", "[ # the plain ones\n 1,\n 2, 3, ]", 1),
		"a number to base 16":  strings.Replace(good, "frets = 22", "frets = 0x16", 1),
		"no last line end":     strings.TrimRight(good, "\n"),
	} {
		if name == "a table on one line" {
			text = "fret_wire = { tang_depth = \"1.5 mm\", kerf = \"0.6 mm\" }\n" + strings.TrimSuffix(text, "\n[x]\n")
		}
		got, err := build.Read([]byte(text), "build.toml", nil)
		if assert.NoError(t, err, name) {
			assert.Equal(t, want.Neck, got.Neck, name)
			assert.Equal(t, want.FretWire, got.FretWire, name)
			assert.Equal(t, want.Tails, got.Tails, name)
			assert.Equal(t, want.Scales, got.Scales, name)
			assert.Equal(t, want.Feel, got.Feel, name)
		}
	}
}

// The demo and every build of testdata read.
func TestBuildsOfTheTree(t *testing.T) {
	src, err := data.Demo("build.toml")
	require.NoError(t, err)
	demo := read(t, string(src))
	assert.Equal(t, "B1 E2 A2 D3 F#3 B3", demo.Strings.Tuning.String())
	files, err := filepath.Glob("../../../testdata/builds/*/build.toml")
	require.NoError(t, err)
	assert.NotEmpty(t, files)
	for _, file := range files {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		read(t, string(src))
	}
}

func TestNoBuildFiles(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", " \n", "build.toml: the build file is empty; 'scalepair init' writes one to begin with"},
		{"a picture", "\x89PNG\r\n\x1a\n\x00", "build.toml: the file is not text in UTF-8; name the build file, or save it as UTF-8; 'scalepair init' writes one to begin with"},
		{"another character set", "name = \"M\xfcller\"\n", "build.toml: the file is not text in UTF-8; name the build file, or save it as UTF-8; 'scalepair init' writes one to begin with"},
		{"old line ends", "name = 'x'\r[neck]\r", "build.toml: the lines end with carriage returns alone; save the file with the line ends of Unix or Windows"},
		{"huge", strings.Repeat("# a remark\n", 200_000), "build.toml: the file is larger than 1 MB, which no build file is; name the right file"},
	} {
		_, err := build.Read([]byte(c.text), "build.toml", nil)
		assert.EqualError(t, err, c.want, c.name)
	}
}

// Whatever a file holds, reading it ends with a build or with faults at places,
// and never both; what was read is in range.
func FuzzRead(f *testing.F) {
	src, err := os.ReadFile(soundFile)
	require.NoError(f, err)
	f.Add(src)
	f.Add([]byte(least))
	for _, s := range []string{"[[blanks]]\n[blanks.x]", "a.b.c = 1", "[neck]\nfrets = 1e400", "[scales]\nbass = []", "[[tunings]]\ntuning = \"E2\"", "[limits]\nfret_slant_deg = 0x10",
		"[compare]\n", "[[neck]]", "x = [[1,2],[3]]", "[strings]\ngauges = [1]", "[feel]\nbend_strings = [1,1]"} {
		f.Add([]byte(s))
		f.Add([]byte(least + s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		b, err := build.Read(src, "build.toml", nil)
		if err != nil {
			assert.Nil(t, b)
			assert.Contains(t, err.Error(), "build.toml")
			return
		}
		assert.NotEmpty(t, b.Strings.Tuning.Notes)
		assert.Positive(t, b.Neck.Frets)
		saved, err := picked.Save(src, "build.toml", unit.Millimetres)
		if err == nil {
			assert.Contains(t, string(saved), "[chosen]")
		}
	})
}

// The reference's strings are named low string first too.
func TestReferenceStrings(t *testing.T) {
	b := read(t, strings.Replace(sound(t), "[feel]", "[feel]\nreference_strings = [6, 5, 4, 3, 2, 2]", 1))
	assert.Equal(t, []int{2, 2, 3, 4, 5, 6}, b.Feel.Feel.ReferenceStrings)
}
