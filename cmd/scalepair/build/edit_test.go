package build_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
)

func source(t *testing.T, path string) []byte {
	t.Helper()
	src, err := os.ReadFile(path)
	require.NoError(t, err)
	return src
}

func TestEditsLeaveEveryOtherByte(t *testing.T) {
	const before = "# mine\nname = 'one'   # short\n\n[neck]\nfrets = 24 # two octaves\n\n# wood\n[[blanks]]\nlength = \"500 mm\"\nwidth = \"70 mm\"\n"
	for name, c := range map[string]struct {
		edits []build.Edit
		want  string
	}{
		"a value":         {[]build.Edit{{Key: "neck.frets", Text: "22"}}, strings.Replace(before, "24", "22", 1)},
		"a text":          {[]build.Edit{{Key: "name", Text: `7" x "one"`}}, strings.Replace(before, "'one'", `"7\" x \"one\""`, 1)},
		"a further key":   {[]build.Edit{{Key: "neck.neutral_fret", Text: "7.5"}}, strings.Replace(before, "octaves\n", "octaves\nneutral_fret = 7.5\n", 1)},
		"a word":          {[]build.Edit{{Key: "neck.neutral_fret", Text: "bridge"}}, strings.Replace(before, "octaves\n", "octaves\nneutral_fret = \"bridge\"\n", 1)},
		"at the top":      {[]build.Edit{{Key: "length_unit", Text: "in"}}, strings.Replace(before, "short\n", "short\nlength_unit = \"in\"\n", 1)},
		"a list":          {[]build.Edit{{Key: "strings.gauges", List: []string{"w46", "p10"}}}, before + "\n[strings]\ngauges = [\"w46\", \"p10\"]\n"},
		"numbers":         {[]build.Edit{{Key: "feel.bend_frets", List: []string{"5", "12"}}}, before + "\n[feel]\nbend_frets = [5, 12]\n"},
		"one more entry":  {[]build.Edit{{Key: "blanks[1].length", Text: "600 mm"}, {Key: "blanks[1].width", Text: "80 mm"}}, before + "\n[[blanks]]\nlength = \"600 mm\"\nwidth = \"80 mm\"\n"},
		"no key goes":     {[]build.Edit{{Key: "neck.radius", Remove: true}}, before},
		"a key goes":      {[]build.Edit{{Key: "neck.frets", Remove: true}}, strings.Replace(before, "frets = 24 # two octaves\n", "", 1)},
		"an entry goes":   {[]build.Edit{{Key: "blanks[0]", Remove: true}}, strings.Split(before, "[[blanks]]")[0]},
		"a section goes":  {[]build.Edit{{Key: "neck", Remove: true}}, strings.Replace(before, "[neck]\nfrets = 24 # two octaves\n", "", 1)},
		"false is a bool": {[]build.Edit{{Key: "limits.blank", Text: "false"}}, before + "\n[limits]\nblank = false\n"},
	} {
		t.Run(name, func(t *testing.T) {
			got, err := build.Change([]byte(before), c.edits...)
			require.NoError(t, err)
			assert.Equal(t, c.want, string(got))
			windows, err := build.Change([]byte("\ufeff"+strings.ReplaceAll(before, "\n", "\r\n")), c.edits...)
			require.NoError(t, err)
			assert.Equal(t, "\ufeff"+strings.ReplaceAll(c.want, "\n", "\r\n"), string(windows))
		})
	}
	for _, e := range []build.Edit{{Key: "neck.fret", Text: "1"}, {Key: "blanks", Remove: true}} {
		_, err := build.Change([]byte(before), e)
		assert.Error(t, err, "%+v", e)
	}
}

// Every value that a file gives, written again as a form shows it, is the same
// value; and every sample of the template that stands for itself reads.
func TestKeysShowWhatTheFileSays(t *testing.T) {
	for _, path := range []string{"../../../data/demo/build.toml", "../../../testdata/builds/seven/build.toml", "../../../testdata/builds/eight_inch/build.toml"} {
		src := source(t, path)
		before, err := build.Read(src, "build.toml", nil)
		require.NoError(t, err)
		sections, err := build.Keys(src)
		require.NoError(t, err)
		given := 0
		for _, s := range sections {
			for _, k := range s.Keys {
				if !k.Given {
					continue
				}
				given++
				edit := build.Edit{Key: k.Path, Text: k.Text}
				if len(k.Texts) > 0 {
					edit.List = k.Texts
				} else if strings.HasPrefix(k.Text, "[") {
					edit.List = []string{}
				}
				again, err := build.Change(src, edit)
				require.NoError(t, err, k.Path)
				after, err := build.Read(again, "build.toml", nil)
				require.NoError(t, err, k.Path)
				assert.Equal(t, build.ValueAt(before, k.Path), build.ValueAt(after, k.Path), k.Path)
				assert.Equal(t, k.Path, build.KeyAt(src, fault.Place{Input: "build.toml", Line: k.Line, Column: k.Column}))
			}
		}
		assert.Greater(t, given, 30, path)
	}
}

// Most keys are explained, by the template.
func TestKeysAreExplained(t *testing.T) {
	explained, all := 0, keys(t)
	for _, k := range all {
		if k.Help != "" || k.Sample != "" {
			explained++
		}
	}
	assert.Greater(t, explained, len(all)*3/4)
}
