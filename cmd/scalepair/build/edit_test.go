package build_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/unit"
)

func TestSetKeysExactly(t *testing.T) {
	bass := build.Edit{Key: "chosen.bass", Value: `"690 mm"`}
	drop := build.Edit{Key: "chosen.bass"}
	for _, c := range []struct {
		name, src string
		edit      build.Edit
		want      string
	}{
		{"new section at the end", "a = 1 # x\n\n[b] # y\nc = 2\n", bass, "a = 1 # x\n\n[b] # y\nc = 2\n\n[chosen]\nbass = \"690 mm\"\n"},
		{"end of the last line is missing", "a = 1", bass, "a = 1\n\n[chosen]\nbass = \"690 mm\"\n"},
		{"remarks only", "# nothing\n", bass, "# nothing\n\n[chosen]\nbass = \"690 mm\"\n"},
		{"empty file", "", bass, "[chosen]\nbass = \"690 mm\"\n"},
		{"value in its place", "[chosen]  # mine\n  bass   =   '1 mm'   # long\n# end", bass, "[chosen]  # mine\n  bass   =   \"690 mm\"   # long\n# end"},
		{"list over several lines", "[chosen]\nbass = [ # a\n 1, # b\n] # c\nx = 1\n", bass, "[chosen]\nbass = \"690 mm\" # c\nx = 1\n"},
		{"behind the section's last key", "[chosen]\n  treble = 1 # x\n\n# of b\n[b]\n", bass, "[chosen]\n  treble = 1 # x\n  bass = \"690 mm\"\n\n# of b\n[b]\n"},
		{"empty section", "[chosen] # x\n\n[b]\n", bass, "[chosen] # x\nbass = \"690 mm\"\n\n[b]\n"},
		{"section at the very end", "[chosen]", bass, "[chosen]\nbass = \"690 mm\"\n"},
		{"braces", "chosen = { treble = 1 } # x\n", bass, "chosen = { bass = \"690 mm\", treble = 1 } # x\n"},
		{"empty braces", "chosen = {}\n", bass, "chosen = { bass = \"690 mm\"}\n"},
		{"value in braces", "chosen = { bass = 1, treble = 2 }\n", bass, "chosen = { bass = \"690 mm\", treble = 2 }\n"},
		{"dotted", "chosen.treble = 1 # x\nb = 2\n[c]\n", bass, "chosen.treble = 1 # x\nchosen.bass = \"690 mm\"\nb = 2\n[c]\n"},
		{"dotted, in its place", "chosen . bass = 1\n", bass, "chosen . bass = \"690 mm\"\n"},
		{"quoted header and key", "[\"chosen\"]\n'bass' = 1\n", bass, "[\"chosen\"]\n'bass' = \"690 mm\"\n"},
		{"line ends of the file", "a = 1\r\n[chosen]\r\nb = 1 # x\r\n", bass, "a = 1\r\n[chosen]\r\nb = 1 # x\r\nbass = \"690 mm\"\r\n"},
		{"byte order mark", "\uFEFFa = 1\n", bass, "\uFEFFa = 1\n\n[chosen]\nbass = \"690 mm\"\n"},
		{"key at the top", "a = 1 # x\n[b]\n", build.Edit{Key: "name", Value: `"n"`}, "a = 1 # x\nname = \"n\"\n[b]\n"},
		{"another list's key of that name", "[[blanks]]\nbass = 1\n", bass, "[[blanks]]\nbass = 1\n\n[chosen]\nbass = \"690 mm\"\n"},
		{"taken out with its line", "[chosen]\n# a\nbass = 1 # b\nx = 2\n", drop, "[chosen]\n# a\nx = 2\n"},
		{"taken out, several lines", "[chosen]\nbass = [\n1,\n]\nx = 2\n", drop, "[chosen]\nx = 2\n"},
		{"taken out of braces, first", "chosen = { bass = 1, treble = 2 }", drop, "chosen = { treble = 2 }"},
		{"taken out of braces, last", "chosen = { treble = 2, bass = 1 }", drop, "chosen = { treble = 2 }"},
		{"taken out of braces, alone", "chosen = { bass = 1 }", drop, "chosen = {  }"},
		{"taken out where it is not", "a = 1", drop, "a = 1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := build.SetKeys([]byte(c.src), []build.Edit{c.edit})
			require.NoError(t, err)
			assert.Equal(t, c.want, string(got))
			again, err := build.SetKeys(got, []build.Edit{c.edit})
			require.NoError(t, err)
			assert.Equal(t, c.want, string(again), "a second time changes nothing")
		})
	}
}

func TestSetKeysRefuses(t *testing.T) {
	for _, c := range []struct {
		name, src string
		edit      build.Edit
		want      string
	}{
		{"no TOML", "a = = 1", build.Edit{"a", "2"}, "the build file is no TOML as it stands; put it right first"},
		{"no key", "", build.Edit{"a b", "2"}, `"a b" is no key of a build file`},
		{"two lines", "", build.Edit{"a", "1\nb = 2"}, `a is no TOML value on one line ("1\nb = 2")`},
		{"a remark", "", build.Edit{"a", "1 # x"}, `a is no TOML value on one line ("1 # x")`},
		{"no value", "", build.Edit{"a", "mm"}, `a is no TOML value on one line ("mm")`},
		{"in a list", "[[blanks]]\n", build.Edit{"blanks.width", "1"}, "blanks.width cannot be set: blanks is no plain section of this build file"},
		{"below a value", "chosen = 1\n", build.Edit{"chosen.bass", "1"}, "chosen.bass cannot be set: chosen is no plain section of this build file"},
		{"a section as a key", "[chosen]\nbass = 1\n", build.Edit{"chosen", ""}, "chosen is a section of this build file, not a key"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := build.SetKeys([]byte(c.src), []build.Edit{c.edit})
			require.Nil(t, got)
			assert.EqualError(t, err, c.want)
		})
	}
}

// A file of random layout keeps every remark and every other value, and holds
// what was set.
func TestSetKeysKeepsTheRest(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		src, remarks := randomFile(r)
		key := rapid.SampledFrom([]string{"top", "a.x", "a.new", "b.y", "b.new", "c.x", "d.new", "c.new"}).Draw(r, "key")
		value := rapid.SampledFrom([]string{`"é # \" = 1"`, "-1.5", "true", `["w46", 'p10']`, "{ from = \"1 mm\" }"}).Draw(r, "value")
		got, err := build.SetKeys([]byte(src), []build.Edit{{Key: key, Value: value}})
		require.NoError(r, err)

		before, after := flatten(r, src), flatten(r, string(got))
		var want map[string]any
		require.NoError(r, toml.Unmarshal([]byte("v = "+value), &want))
		require.Equal(r, want["v"], after[key])
		delete(before, key)
		delete(after, key)
		require.Equal(r, before, after)
		for _, remark := range remarks {
			require.Contains(r, string(got), remark)
		}
		require.Equal(r, strings.Contains(src, "\r\n"), strings.Contains(string(got), "\r\n"))
	})
}

// randomFile writes sections a, b and c and some keys in random order, form
// and layout, with a remark on most lines.
func randomFile(r *rapid.T) (src string, remarks []string) {
	eol := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(r, "line end")
	var out strings.Builder
	line := func(text string) {
		remark := ""
		if rapid.Bool().Draw(r, "remark") {
			remark = fmt.Sprintf("# remark %d = [x] \"", len(remarks))
			remarks = append(remarks, remark)
		}
		pad := rapid.SampledFrom([]string{"", " ", "\t"}).Draw(r, "pad")
		out.WriteString(pad + text + pad + remark + eol)
	}
	some := func(what string) bool { return rapid.Bool().Draw(r, what) }
	if some("top") {
		line("top = 'x # y'")
	}
	line("")
	for _, section := range rapid.Permutation([]string{"a", "b", "c"}).Draw(r, "sections") {
		keys := slices.DeleteFunc([]string{"x", "y", "z"}, func(string) bool { return some("left out") })
		if section == "c" && len(keys) > 0 && !strings.Contains(out.String(), "["+"a") && !strings.Contains(out.String(), "["+"b") {
			inner := make([]string, len(keys))
			for i, k := range keys {
				inner[i] = k + " = [1, 2]"
			}
			line("c = { " + strings.Join(inner, ", ") + " }")
			continue
		}
		line("[" + section + "]")
		for _, k := range keys {
			line(k + " = " + rapid.SampledFrom([]string{"1", `"[z]"`, "[ 'a',\n 'b' ]", "{ q = 1 }", "'''\n[b]\nx = 3 '''"}).Draw(r, "value"))
			line("")
		}
		if some("list") {
			line("[[l" + section + "]]")
			line("x = 1")
		}
	}
	return out.String(), remarks
}

// flatten reads TOML and gives every value of one section level by its path.
func flatten(t require.TestingT, src string) map[string]any {
	var tree map[string]any
	require.NoError(t, toml.Unmarshal([]byte(src), &tree))
	out := maps.Clone(tree)
	for name, v := range tree {
		if section, ok := v.(map[string]any); ok && name != "top" {
			delete(out, name)
			for k, inner := range section {
				out[name+"."+k] = inner
			}
		}
	}
	return out
}

func TestSaveTheChosenPair(t *testing.T) {
	for _, file := range buildFiles(t) {
		src, err := os.ReadFile(file)
		require.NoError(t, err)
		b := read(t, string(src))
		c := build.Chosen{Bass: unit.Inches(27.25), // one rounding away from what "27.25 in" reads as
			Treble: unit.MM(655.25), Neutral: build.Neutral{Fret: 7.5}}
		for i := range b.Strings.Tuning.Strings() {
			c.Gauges = append(c.Gauges, fmt.Sprintf("g%d", i+1))
		}
		saved, err := c.Save(src, b.LengthUnit)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(saved), string(src)), "only added to")
		c.Bass, _ = unit.ParseLength("27.25 in")
		assert.Equal(t, &c, read(t, string(saved)).Chosen)
		if b.LengthUnit != unit.Millimetres {
			assert.Contains(t, string(saved), `bass = "27.25 in"`)
		}

		bare := build.Chosen{Bass: unit.MM(700), Treble: unit.MM(650), Neutral: build.Neutral{Bridge: true}}
		saved, err = bare.Save(saved, b.LengthUnit)
		require.NoError(t, err)
		assert.Equal(t, &bare, read(t, string(saved)).Chosen, "gauges that are no longer chosen are gone")
	}
}

func TestSaveReplacesAStraightScale(t *testing.T) {
	src := sound + "[chosen]\nscale = \"660 mm\" # straight\n"
	c := build.Chosen{Bass: unit.MM(690), Treble: unit.MM(650), Gauges: []string{`a "1"`, "b", "c", "d", "e", `f\`}}
	saved, err := c.Save([]byte(src), unit.Millimetres)
	require.NoError(t, err)
	assert.Equal(t, &c, read(t, string(saved)).Chosen)
}
