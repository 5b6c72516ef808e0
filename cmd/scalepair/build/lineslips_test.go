package build_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
)

// A line that is no TOML is told with what to write for it, and is the one
// message: what follows from it is not told.
func TestLinesThatAreNoTOML(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		{"colon", `frets = 24`, `frets: 24`, `14:6: a key needs an equals sign and a value ("frets: 24"); write frets = 24`},
		{"colon before words", `scale = "635 mm"`, `scale: 635 mm # mine`, `5:6: a key needs an equals sign and a value ("scale: 635 mm # mine"); write scale = "635 mm"`},
		{"blank in a key", `string_spread_at_nut`, `string spread at the nut`, `15:5: a key has no blanks ("string spread at the nut = \"37 mm\""); write string_spread_at_nut`},
		{"Cyrillic letter in a key", `string_spread_at_nut`, "nut_sp\u0430n", "15:7: a letter here is none of a key's, though it may look like one (\"nut_sp\u0430n = \\\"37 mm\\\"\"); type the key anew on your keyboard: string_spread_at_nut"},
		{"blank that does not break", `frets = 24`, "frets\u00a0= 24", `14:6: a blank of another kind stands here ("frets\u00a0= 24"); type an ordinary blank`},
		{"sign of degrees", `frets = 24`, "frets = 24\nneutral_fret = 7°", `15:17: the number has a sign or unit behind it, which its key states already ("neutral_fret = 7°"); write neutral_fret = 7`},
		{"decimal comma", `frets = 24`, "frets = 24\nneutral_fret = 7,5", `15:17: a comma stands where the decimal point belongs ("neutral_fret = 7,5"); write neutral_fret = 7.5`},
		{"full-width digits", `frets = 24`, "frets = ２４", `14:9: digits of another script stand here ("frets = ２４"); write frets = 24`},
		{"angle quotes", `"37 mm"`, `«37 mm»`, `15:12: typographic quotes stand here ("string_spread_at_nut = «37 mm»"); use the straight ones of the keyboard: "648 mm"`},
		{"remark with strokes", `frets = 24`, `frets = 24 // two octaves`, `14:12: something is left over behind the value ("frets = 24 // two octaves"); a remark begins with #`},
		{"header without its end", `[neck]`, `[neck`, `13:6: a section's name ends with ] ("[neck"); write, for instance, [neck]`},
		{"range over lines", `"690 mm"`, "{ from = \"680 mm\"\n  to = \"690 mm\"\n  step = \"5 mm\" }", `12:3: entries between braces are parted by commas, and end with } ("to = \"690 mm\""); write them on one line: { from = "660 mm", to = "720 mm", step = "5 mm" }`},
		{"range in words", `"690 mm"`, `"680 to 690 mm"`, `11:8: bass scale: a range is not written so ("680 to 690 mm"); write { from = "645 mm", to = "655 mm", step = "5 mm" }`},
		{"section among keys", `frets = 24`, "frets = 24\ntails = \"25 mm\"", `15:1: no key of [neck] ("tails"); it is a section: begin it with [tails] on a line of its own`},
		{"section in capitals", `[neck]`, `[Neck]`, `13:2: no section of a build file ("Neck"); did you mean "neck"?`},
		{"scale in inches called mm", `"690 mm"`, `"27 mm"`, `11:8: bass scale is out of range ("27 mm"); did you mean "27 in" or "27 cm"? from 200 mm to 2000 mm will do`},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := strings.Replace(sound, c.old, c.new, 1)
			require.NotEqual(t, sound, src, "the row changes nothing")
			assertMessage(t, "build.toml:"+c.want, strings.Join(faultsOf(t, src), "\n"))
		})
	}
}

// A file cut off in a line is told so beside what is wrong with the line.
func TestCutOffFiles(t *testing.T) {
	cut := sound[:strings.Index(sound, `"37 mm"`)+4]
	assert.Equal(t, []string{`build.toml:15:15: the closing quote is missing ("string_spread_at_nut = \"37"); end the text with the quote that began it; or copy the file anew, if it was cut off here`}, faultsOf(t, cut))
	assert.Equal(t, []string{"build.toml:1:11: the file ends in the middle of a character; copy the file anew"}, faultsOf(t, "name = \"fr\xc3"))
}

// Files of another kind are told by what they are, not line by line.
func TestOtherFilesThanBuildFiles(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"table", "gauge,construction,outer_mm\np10,plain,0.254\n", "build.toml: the file is a table, not a build file; name the build file; 'scalepair init' writes a build file to begin with"},
		{"YAML", "name: x\nneck:\n  frets: 22\n  string_spread_at_nut: 36 mm\n", "build.toml: the file is YAML, not a build file; name the build file; 'scalepair init' writes a build file to begin with"},
		{"JSON", "{ \"neck\": {} }", "build.toml: the file is JSON, not a build file; name the build file; 'scalepair init' writes a build file to begin with"},
		{"PDF", "%PDF-1.4\n", "build.toml: the file is a PDF, not a build file; name the build file; 'scalepair init' writes a build file to begin with"},
		{"noughts in it", "name = \"x\"\n\x00\x00\n", "build.toml:2:1: bytes of nought stand here: the file is damaged; take an earlier copy, or type the line anew"},
		{"bytes", "\x01\x00\x02", "build.toml: the file is no text; name the build file; 'scalepair init' writes a build file to begin with"},
		{"huge", "# " + strings.Repeat("x", 1<<20), "build.toml: the file is larger than 1 MB, which no build file is; name the right file"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, []string{c.want}, faultsOf(t, c.src)) })
	}
}

// However many slips, the reading of a file ends.
func TestFaultsHaveAnEnd(t *testing.T) {
	for _, line := range []string{"x = 1\n", "x x\n", "[[\n", "x = {\n", "[neck]\n"} {
		_, err := build.Read([]byte(sound+strings.Repeat(line, 20000)), "build.toml")
		require.Error(t, err)
		assert.LessOrEqual(t, strings.Count(err.Error(), "\n"), 21, line)
	}
}
