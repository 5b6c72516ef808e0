package build_test

import (
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
)

// sound is a build file without faults; the tests below change one thing each.
const sound = `name = "Sound"
[strings]
tuning = "B1 E2 A2 D3 F#3 B3"
[reference]
scale = "635 mm"
tuning = "E2 A2 D3 G3 B3 E4"
gauges = ["w46", "w36", "w26", "p17", "p13", "p10"]
[feel]
tension = "like the reference"
[scales]
bass = "690 mm"
treble = "650 mm"
[neck]
frets = 24
string_spread_at_nut = "37 mm"
string_spread_at_saddle = "54 mm"
`

func read(t *testing.T, src string) *build.Build {
	t.Helper()
	b, err := build.Read([]byte(src), "build.toml")
	require.NoError(t, err)
	return b
}

// faultsOf gives the messages of a file that must not be read.
func faultsOf(t *testing.T, src string) []string {
	t.Helper()
	b, err := build.Read([]byte(src), "build.toml")
	require.Error(t, err)
	require.Nil(t, b)
	return strings.Split(err.Error(), "\n")
}

func TestSoundFileHasNoFault(t *testing.T) { read(t, sound) }

// Each row changes one line of the sound file, or adds lines to its end, and
// names the whole message.
func TestOneFaultOneMessage(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		{"unknown key", `frets = 24`, `fretz = 24`, `14:1: no key of [neck] ("fretz"); did you mean "frets"?`},
		{"key of another section", `frets = 24`, `bend_cents = 24`, `14:1: no key of [neck] ("bend_cents"); it belongs in [feel]`},
		{"unknown section", `[feel]`, `[fell]`, `8:2: no section of a build file ("fell"); did you mean "feel"?`},
		{"unknown key at the top", `name = "Sound"`, `nane = "Sound"`, `1:1: no key of the top of the file, above the first [section] ("nane"); did you mean "name"?`},
		{"unit missing, text", `"37 mm"`, `"37"`, `15:12: string spread at the nut: a length needs a unit ("37"); write "37 mm" or "37 in"`},
		{"unit missing, number", `"37 mm"`, `37`, `15:12: string spread at the nut: a length needs a unit ("37"); write "37 mm" or "37 in"`},
		{"unit unknown", `"37 mm"`, `"37 furlongs"`, `15:12: string spread at the nut: `},
		{"decimal comma in quotes", `"690 mm"`, `"648,5 mm"`, `11:8: bass scale: `},
		{"decimal comma without quotes", `"690 mm"`, `648,5`, `11:11: a comma stands where the decimal point belongs ("bass = 648,5"); write a point, and a length in quotes with its unit: "648.5 mm"`},
		{"value without quotes", `"690 mm"`, `690 mm`, `11:12: a value with a unit needs quotes ("bass = 690 mm"); write bass = "690 mm"`},
		{"value without quotes or blank", `"690 mm"`, `690mm`, `11:11: a value with a unit needs quotes ("bass = 690mm"); write bass = "690mm"`},
		{"inch sign in quotes", `"690 mm"`, `"27.5""`, `11:14: the inch sign ends the quoted text ("bass = \"27.5\"\""); write "25.5 in", or put the text between single quotes`},
		{"typographic quotes", `"690 mm"`, `“690 mm”`, `11:8: typographic quotes stand here ("bass = “690 mm”"); use the straight ones of the keyboard: "648 mm"`},
		{"text without quotes", `"like the reference"`, `like the reference`, `9:11: text needs quotes ("tension = like the reference"); write tension = "like the reference"`},
		{"list without quotes", `["w46", "w36", "w26", "p17", "p13", "p10"]`, `[w46, w36, w26, p17, p13, p10]`, `7:11: text in a list needs quotes ("gauges = [w46, w36, w26, p17, p13, p10]"); put each entry in quotes: ["w46", "w36"]`},
		{"no value", `frets = 24`, `frets =`, `14:8: this key has no value ("frets ="); give one, or put # before the line to leave it out`},
		{"no equals sign", `frets = 24`, `frets 24`, `14:7: a key needs an equals sign and a value ("frets 24"); write frets = 24`},
		{"quote not closed", `"37 mm"`, `"37 mm`, `15:18: the closing quote is missing ("string_spread_at_nut = \"37 mm"); end the text with the quote that began it`},
		{"leading zero", `frets = 24`, `frets = 024`, `14:9: a number does not begin with 0 ("frets = 024"); put a gauge's label in quotes, and a number without the 0`},
		{"nan", `frets = 24`, `frets = nan`, `14:9: frets must be a plain finite number ("nan"); from 1 to 36 will do`},
		{"infinite", `frets = 24`, `frets = -inf`, `14:9: frets must be a plain finite number ("-inf"); from 1 to 36 will do`},
		{"nan as a length", `"37 mm"`, `"nan mm"`, `15:12: string spread at the nut: `},
		{"not whole", `frets = 24`, `frets = 24.5`, `14:9: frets must be a whole number ("24.5"); from 1 to 36 will do`},
		{"too many frets", `frets = 24`, `frets = 240`, `14:9: frets is out of range ("240"); from 1 to 36 will do`},
		{"wrong type", `frets = 24`, `frets = "24"`, `14:9: frets must be a number, not text ("24"); write a number without quotes, 1 to 36`},
		{"list for one", `"37 mm"`, `["37 mm"]`, `15:12: string spread at the nut must be text with a unit, not a list; write one number with its unit, in quotes`},
		{"date", `frets = 24`, `frets = 2024-11-02`, `14:9: frets must be a number, not a date ("2024-11-02"); write a number without quotes, 1 to 36`},
		{"section as a value", `name = "Sound"`, `playing = 3`, `1:11: playing must be a table, not a number ("3"); begin it once, with [playing] on a line of its own`},
		{"negative length", `"37 mm"`, `"-37 mm"`, `15:12: string spread at the nut is out of range ("-37 mm"); from 5 mm to 300 mm will do`},
		{"zero scale", `"690 mm"`, `"0 mm"`, `11:8: bass scale is out of range ("0 mm"); from 200 mm to 2000 mm will do`},
		{"25 mm scale", `"650 mm"`, `"25 mm"`, `12:10: treble scale is out of range ("25 mm"); did you mean "25 in" or "25 cm"? from 200 mm to 2000 mm will do`},
		{"zero scale in inches", `"690 mm"`, `"0 in"`, `11:8: bass scale is out of range ("0 in"); from 7.9 in to 78 in will do`},
		{"span in inches", `"37 mm"`, `"37 in"`, `15:12: string spread at the nut is out of range ("37 in"); did you mean "37 mm"? from 0.2 in to 11 in will do`},
		{"tension in pounds", `"like the reference"`, `"1700 lb"`, `9:11: tension is out of range ("1700 lb"); from 1.2 lbf to 220 lbf will do`},
		{"from above to, in inches", `"690 mm"`, `{ from = "29 in", to = "27 1/2 in", step = "1/8 in" }`, `11:17: the range is empty: it begins above its end, 27 1/2 in ("29 in"); exchange from and to`},
		{"bass shorter than treble, in inches", "\"690 mm\"\ntreble = \"650 mm\"", "\"25 in\"\ntreble = \"25 5/8 in\"", `11:8: the bass scale is shorter than the treble scale of 25 5/8 in ("25 in"); exchange them, or write reverse_fan = true under [scales] if a reverse fan is wanted`},
		{"bass shorter than a range", "\"690 mm\"\ntreble = \"650 mm\"", "\"25 in\"\ntreble = { from = \"25.50 in\", to = \"26 in\", step = \"0.25 in\" }", `11:8: the bass scale is shorter than the treble scale of 25.5 in ("25 in"); exchange them, or write reverse_fan = true under [scales] if a reverse fan is wanted`},
		{"margins in inches", "string_spread_at_nut = \"37 mm\"\nstring_spread_at_saddle = \"54 mm\"", "nut_width = \"1.5 in\"\nother_width = \"2 in\"\nedge_margin = \"0.75 in\"", `15:13: the edge margins, 0.75 in and 0.75 in, leave no room on the board; give smaller margins or a wider board`},
		{"note that is none", `F#3 B3"`, `H3 B3"`, `3:10: `},
		{"another number of gauges", `"p13", "p10"]`, `"p13"]`, `7:10: gauges lists 5, the tuning has 6 strings; give one for each string, low string first`},
		{"empty gauge", `"p13"`, `""`, `7:39: an entry of gauges must be text; write each gauge's label in quotes, as the readings have it`},
		{"gauge as a number", `"p13"`, `13`, `7:39: an entry of gauges must be text ("13"); write each gauge's label in quotes, as the readings have it`},
		{"gauges as numbers", `["w46", "w36", "w26", "p17", "p13", "p10"]`, `[0.046, 0.036, 0.026, 0.017, 0.013, 0.010]`, `7:11: gauges lists numbers ("0.046"); write each gauge's label in quotes, as the readings have it`},
		{"bass shorter than treble", `"690 mm"`, `"640 mm"`, `11:8: the bass scale is shorter than the treble scale of 650 mm ("640 mm"); exchange them, or write reverse_fan = true under [scales] if a reverse fan is wanted`},
		{"empty list of lengths", `"690 mm"`, `[]`, `11:8: bass is an empty list; fill it, or leave the line out`},
		{"from above to", `"690 mm"`, `{ from = "700 mm", to = "690 mm", step = "5 mm" }`, `11:17: the range is empty: it begins above its end, 690 mm ("700 mm"); exchange from and to`},
		{"step missing", `"690 mm"`, `{ from = "680 mm", to = "690 mm" }`, `11:8: step is missing in the range of bass; a range is { from = "660 mm", to = "720 mm", step = "5 mm" }`},
		{"step of nothing", `"690 mm"`, `{ from = "680 mm", to = "690 mm", step = "0 mm" }`, `11:49: step is out of range ("0 mm"); from 0.001 mm to 1000 mm will do`},
		{"absurdly fine step", `"690 mm"`, `{ from = "660 mm", to = "1260 mm", step = "0.001 mm" }`, `11:50: this step makes 600001 lengths ("0.001 mm"); take a larger one; up to 100000 are tried`},
		{"unknown key of a range", `"690 mm"`, `{ from = "680 mm", to = "690 mm", steps = "5 mm" }`, `11:42: no key of the range of bass ("steps"); did you mean "step"?`},
		{"only one scale", `treble = "650 mm"`, ``, `10:2: treble is missing in [scales]; give both, each as a range, a list or one length`},
		{"neutral fret off the board", `frets = 24`, "frets = 22\nneutral_fret = 24", `15:16: neutral fret is off the board, which has 22 frets ("24"); a number from 0 to 22 without quotes, or "bridge", will do`},
		{"neutral fret as a word", `frets = 24`, "frets = 22\nneutral_fret = \"nut\"", `15:16: neutral fret must be a number or "bridge" ("nut"); a number from 0 to 22 without quotes, or "bridge", will do`},
		{"spans and widths", `frets = 24`, "frets = 24\nnut_width = \"45 mm\"", `15:1: spans (line 16) and board widths are both given; give string_spread_at_nut and string_spread_at_saddle, or nut_width and other_width, since one follows from the other`},
		{"half the spans", `string_spread_at_saddle = "54 mm"`, ``, `13:2: string spread at the saddle is missing in [neck]; write string_spread_at_saddle = "52 mm", say, beside string_spread_at_nut`},
		{"no spans", "string_spread_at_nut = \"37 mm\"\nstring_spread_at_saddle = \"54 mm\"", ``, `13:2: the string spread is missing in [neck]; give string_spread_at_nut and string_spread_at_saddle between the outer strings, such as "43 mm" and "62 mm", or nut_width and other_width of the board`},
		{"margins wider than the board", "string_spread_at_nut = \"37 mm\"\nstring_spread_at_saddle = \"54 mm\"", "nut_width = \"40 mm\"\nother_width = \"60 mm\"\nedge_margin = \"20 mm\"", `15:13: the edge margins, 20 mm and 20 mm, leave no room on the board; give smaller margins or a wider board`},
		{"radius and compound", `frets = 24`, "frets = 24\nradius = \"400 mm\"\nradius_nut = \"300 mm\"", `16:1: radius and a compound radius are both given; keep radius, or radius_nut with radius_last`},
		{"half a compound radius", `frets = 24`, "frets = 24\nradius_nut = \"300 mm\"", `13:2: radius last is missing in [neck]; a compound radius needs both ends`},
		{"spacing of the wrong length", `frets = 24`, "frets = 24\nnut_spacing = [\"7 mm\", \"7 mm\"]", `15:15: nut spacing lists 2 steps, 6 strings have 5; give the steps from centre to centre, bass side first`},
		{"nut steps of another sum", `frets = 24`, "frets = 24\nnut_spacing = [\"10 mm\", \"10 mm\", \"10 mm\", \"10 mm\", \"10 mm\"]", `15:15: the steps of nut spacing add up to 50.00 mm, the string spread at the nut is 37.00 mm; give steps that add up to the span, or string_spread_at_nut = "50.00 mm"; both are square to the centreline`},
		{"saddle steps of another sum", `frets = 24`, "frets = 24\nsaddle_spacing = [\"0.5 in\", \"0.5 in\", \"0.5 in\", \"0.5 in\", \"0.5 in\"]", `15:18: the steps of saddle spacing add up to 63.50 mm, the string spread at the saddle is 54.00 mm; give steps that add up to the span, or string_spread_at_saddle = "63.50 mm"; both are square to the centreline`},
		{"spacing rule", `frets = 24`, "frets = 24\nnut_spacing = \"equal gap\"", `15:15: nut spacing does not know this word ("equal gap"); did you mean "equal gaps"?`},
		{"like the nut, at the nut", `frets = 24`, "frets = 24\nnut_spacing = \"like the nut\"", `15:15: nut spacing does not know this word ("like the nut"); use "equal centres" or "equal gaps"`},
		{"tuning missing", `tuning = "B1 E2 A2 D3 F#3 B3"`, ``, `2:2: tuning is missing in [strings]; write tuning = "B1 E2 A2 D3 F#3 B3", low string first, or a name such as "baritone B"`},
		{"high string first", `"B1 E2 A2 D3 F#3 B3"`, `"B3 F#3 D3 A2 E2 B1"`, `3:10: the tuning falls from its first note to its last ("B3 F#3 D3 A2 E2 B1"); low string first? write "B1 E2 A2 D3 F#3 B3"; a tuning that is meant so needs ordering = false under [strings]`},
		{"reference with its high string first", `"E2 A2 D3 G3 B3 E4"`, `"E4 B3 G3 D3 A2 E2"`, `6:10: the tuning falls from its first note to its last ("E4 B3 G3 D3 A2 E2"); low string first? write "E2 A2 D3 G3 B3 E4"; a tuning that is meant so needs ordering = false under [strings]`},
		{"like no reference", "[reference]\nscale = \"635 mm\"\ntuning = \"E2 A2 D3 G3 B3 E4\"\ngauges = [\"w46\", \"w36\", \"w26\", \"p17\", \"p13\", \"p10\"]\n", ``, `5:11: there is no instrument to be like ("like the reference"); describe it under [reference], or give a force such as "72 N"`},
		{"target as a word", `"like the reference"`, `"soft"`, `9:11: tension does not know this word ("soft"); use "like the reference" or "even" or "none", or a value such as "72 N"`},
		{"target misspelt", `"like the reference"`, `"like teh reference"`, `9:11: tension does not know this word ("like teh reference"); did you mean "like the reference"?`},
		{"target of another length", `"like the reference"`, `["70 N", "72 N"]`, `9:11: tension lists 2, the tuning has 6 strings; give one for each string, low string first`},
		{"target as a bare number", `"like the reference"`, `72`, `9:11: tension: a force needs a unit ("72"); write "72 N" or "72 lbf"`},
		{"scale and pair", `scale = "635 mm"`, "scale = \"635 mm\"\nbass = \"640 mm\"\ntreble = \"630 mm\"", `6:1: scale and a scale pair are both given; keep scale for straight frets, or bass with treble`},
		{"reference without a scale", `scale = "635 mm"`, ``, `4:2: the scale length is missing in [reference]; write scale = "648 mm", or bass and treble for a fan`},
		{"key given twice", `frets = 24`, "frets = 24\nfrets = 22", `15:1: "frets" stands here a second time, first in line 14; keep one of the two`},
		{"section opened twice", `[scales]`, "[strings]\n[scales]", `10:2: "strings" stands here a second time, first in line 2; keep one of the two`},
		{"section that is a key", `name = "Sound"`, `neck = 3`, `13:2: "neck" is already a number, in line 1; keep one of the two
build.toml:1:8: neck must be a table, not a number ("3"); begin it once, with [neck] on a line of its own`},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := strings.Replace(sound, c.old, c.new, 1)
			require.NotEqual(t, sound, src, "the row changes nothing")
			got := strings.Join(faultsOf(t, src), "\n")
			assertMessage(t, "build.toml:"+c.want, got)
		})
	}
}

// assertMessage compares whole messages; one that ends with a colon and blank
// stands for any that begin so, the words being another package's.
func assertMessage(t *testing.T, want, got string) {
	t.Helper()
	if strings.HasSuffix(want, ": ") {
		assert.NotContains(t, got, "\n", "one fault only")
		assert.True(t, strings.HasPrefix(got, want), "want %s..., got %s", want, got)
		return
	}
	assert.ElementsMatch(t, strings.Split(want, "\n"), strings.Split(got, "\n"))
}

// Lines added to the end of the sound file, which has 16.
func TestFaultsOfFurtherSections(t *testing.T) {
	for _, c := range []struct{ name, add, want string }{
		{"blank without blanks", "[limits]\nblank = true", `18:9: there is no blank to fit ("true"); describe the blanks on offer under [[blanks]], or leave the line out`},
		{"breaking limit too high", "[limits]\nbreaking_open_percent = 90", `18:25: breaking open percent is out of range ("90"); from 1 to 85 will do`},
		{"limits exchanged", "[limits]\nleast_tension = \"100 N\"\nmost_tension = \"50 N\"", `18:17: the least tension is above the most, 50 N ("100 N"); exchange them`},
		{"limits exchanged, in pounds", "[limits]\nleast_tension = \"20 lb\"\nmost_tension = \"17 lb\"", `18:17: the least tension is above the most, 17 lb ("20 lb"); exchange them`},
		{"blank wider than long, in inches", "[[blanks]]\nlength = \"4 in\"\nwidth = \"20 in\"", `19:9: the blank is wider than its length of 4 in ("20 in"); exchange them; the length lies along the centreline`},
		{"misspelt word", "[limits]\nblank = yes", `18:9: blank takes true or false, without quotes ("blank = yes"); write blank = true, in small letters`},
		{"true in capitals", "[limits]\nblank = True # a remark", `18:9: blank takes true or false, without quotes ("blank = True # a remark"); write blank = true, in small letters`},
		{"neither true nor false", "[limits]\nblank = perhaps", `18:9: blank takes true or false, without quotes ("blank = perhaps"); write blank = true or blank = false, in small letters`},
		{"true in quotes", "[limits]\nblank = \"yes\"", `18:9: blank must be true or false, not text ("yes"); write blank = true or blank = false, without quotes`},
		{"yes for text", "[neck]\nheel = yes", `17:2: "neck" stands here a second time, first in line 13; keep one of the two
build.toml:18:8: text needs quotes ("body end = yes"); write body end = "yes"`},
		{"blank wider than long", "[[blanks]]\nlength = \"100 mm\"\nwidth = \"500 mm\"", `19:9: the blank is wider than its length of 100 mm ("500 mm"); exchange them; the length lies along the centreline`},
		{"blank as one table", "[blanks]\nlength = \"600 mm\"", `17:2: blanks must be a list, not a table; begin each with [[blanks]]`},
		{"second blank at fault", "[[blanks]]\nlength = \"600 mm\"\nwidth = \"80 mm\"\n[[blanks]]\nlength = \"600 mm\"\nwith = \"80 mm\"", `22:1: no key of [[blanks]] ("with"); did you mean "width"?`},
		{"tails of another length", "[tails]\nnut = [\"1 mm\", \"2 mm\"]", `18:7: nut lists 2, the tuning has 6 strings; give one for each string, low string first`},
		{"chosen bass shorter", "[chosen]\nbass = \"600 mm\"\ntreble = \"650 mm\"", `18:8: the bass scale is shorter than the treble scale of 650 mm ("600 mm"); exchange them, or write reverse_fan = true under [scales] if a reverse fan is wanted`},
		{"chosen without treble", "[chosen]\nbass = \"660 mm\"", `17:2: treble is missing in [chosen]; a scale pair needs both lengths`},
		{"flat wrap without packing", "[[constructions]]\ngauge = \"f42\"\ncore = \"0.4 mm\"\nconstruction = \"flat\"\nwraps = [{ wire = \"0.2 mm\", material = \"nickel\", form = \"flat\" }]", `21:10: packing is missing in [[wraps]]; flat wire needs the filled share of its layer, 0.3 to 1`},
		{"wound without a family", "[[constructions]]\ngauge = \"f42\"\ncore = \"0.4 mm\"\nwraps = [{ wire = \"0.2 mm\", material = \"nickel\" }]", `17:3: construction is missing in [[constructions]]; name its family, such as construction = "nickel wound"`},
		{"tunings of unlike number", "[[tunings]]\ntuning = \"E2 A2 D3\"", `18:10: this tuning has 3 strings, the build has 6 ("E2 A2 D3"); all tunings of one build have the same number of strings`},
		{"tuning beside others", "[[tunings]]\ntuning = \"A1 E2 A2 D3 F#3 B3\"", `3:10: the tuning of [strings] counts for nothing beside [[tunings]], none of which is the same ("B1 E2 A2 D3 F#3 B3"); add it as one more of [[tunings]], or leave it out`},
		{"two tunings of one name", "[[tunings]]\ntuning = \"B1 E2 A2 D3 F#3 B3\"\nname = \"B\"\n[[tunings]]\ntuning = \"A1 E2 A2 D3 F#3 B3\"\nname = \"b\"", `22:8: two tunings of one name ("b"); give each its own: name = "with capo"`},
		{"the same tuning twice", "[[tunings]]\ntuning = \"B1 E2 A2 D3 F#3 B3\"\n[[tunings]]\ntuning = \"B1 E2 A2 D3 F#3 B3\"", `20:10: two tunings of one name ("B1 E2 A2 D3 F#3 B3"); give each its own: name = "with capo"`},
		{"slant given twice", "[[lines]]\nfrom_saddle = \"40 mm\"\nalong = \"square\"\nslant_deg = 3", `20:1: the line's slant is given twice; keep along or slant_deg`},
		{"line nowhere", "[[lines]]\nname = \"pickup\"", `17:3: the line's place is missing; write from_saddle = "40 mm", along the centreline`},
		{"played range reversed", "[playing]\nfrom_fret = 12\nto_fret = 3", `18:13: the frets played begin above their end ("12"); exchange from_fret and to_fret`},
		{"bend fret twice", "[dots]\nface = [3, 5, 3]", `18:15: face names this twice ("3"); keep one of them`},
		{"dot off the board", "[dots]\nface = [3, 25]", `18:12: face is out of range ("25"); from 1 to 24 will do`},
		{"step as a mass", "[measuring]\nbalance_resolution = \"0.01 mm\"", `18:16: balance step: `},
		{"no such gravity", "[measuring]\ngravity_m_s2 = 98.1", `18:16: gravity m s2 is out of range ("98.1"); from 9.76 to 9.84 will do`},
		{"tolerance twice", "[marking]\ntolerance = \"0.1 mm\"\ntolerance_cents = 2", `19:1: the tolerance is given twice; keep tolerance or tolerance_cents`},
		{"tunings_by is no key of a section", "[confidence]\ntunings_by = \"worst\"", `18:1: no key of [confidence] ("tunings_by"); it belongs in the top of the file, above the first [section]`},
	} {
		t.Run(c.name, func(t *testing.T) {
			assertMessage(t, "build.toml:"+c.want, strings.Join(faultsOf(t, sound+c.add), "\n"))
		})
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	src := "[strings]\ntuning = \"E2 A2 D3 H3 B3 E4\"\n[scales]\nbass = 648,5\ntreble = \"650\"\n[neck]\nfrets = nan\nfretz = 2\n[limits\nblank = true\n"
	var places []string
	for _, m := range faultsOf(t, src) {
		places = append(places, m[:strings.Index(m, ": ")])
	}
	assert.Equal(t, []string{"build.toml:2:10", "build.toml:4:11", "build.toml:5:10", "build.toml:7:9", "build.toml:8:1", "build.toml:9:8"}, places[:6])
}

// A list that is never closed is one fault, and what follows is read.
func TestReadingGoesOnBehindABrokenList(t *testing.T) {
	src := strings.Replace(sound, `"p13", "p10"]`, `"p13", "p10"`, 1)
	assert.Equal(t, []string{`build.toml:8:1: the list before this line has no end ("[feel]"); put ] behind its last entry`}, faultsOf(t, src))
	src = strings.Replace(src, "string_spread_at_nut", "nut_spam", 1)
	assert.Len(t, faultsOf(t, src), 2)
}

func TestColumnsCountCharacters(t *testing.T) {
	src := strings.Replace(sound, `"690 mm"`, `"690 mm" # é ½ ü
apart = [ "ééé", 3 ]`, 1)
	assert.Contains(t, faultsOf(t, src)[0], "build.toml:12:9: apart must be text with a unit, not a list")
	got := faultsOf(t, "\"é\" = 1\n"+sound)
	assert.Contains(t, got[0], `build.toml:1:1: no key of the top`)
	got = faultsOf(t, strings.Replace(sound, `"p13"`, `"é", 13`, 1))
	assert.Contains(t, got[0], "build.toml:7:44: an entry of gauges must be text")
}

func TestFilesThatAreNoText(t *testing.T) {
	var utf16le strings.Builder
	for _, u := range utf16.Encode([]rune("\uFEFF" + sound)) {
		utf16le.WriteByte(byte(u))
		utf16le.WriteByte(byte(u >> 8))
	}
	for _, c := range []struct{ name, src, want string }{
		{"empty", "", "build.toml: the build file is empty; 'scalepair init' writes one to begin with"},
		{"blanks only", " \r\n\t\n", "build.toml: the build file is empty; 'scalepair init' writes one to begin with"},
		{"mark only", "\uFEFF", "build.toml: the build file is empty; 'scalepair init' writes one to begin with"},
		{"UTF-16", utf16le.String(), "build.toml: the file is in UTF-16; save it as UTF-8"},
		{"UTF-16 without a mark", utf16le.String()[2:], "build.toml: the file is in UTF-16; save it as UTF-8"},
		{"Latin-1", "name = \"x\"\nreadings = \"\xe9\"", "build.toml:2:13: a character here is not UTF-8; save the file as UTF-8"},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, []string{c.want}, faultsOf(t, c.src))
		})
	}
}

func TestMarkAndLineEndsMakeNoDifference(t *testing.T) {
	want := read(t, sound)
	crlf := strings.ReplaceAll(sound, "\n", "\r\n")
	for _, src := range []string{"\uFEFF" + sound, crlf, "\uFEFF" + crlf, strings.TrimSpace(sound)} {
		assert.Equal(t, want, read(t, src))
	}
	assert.Equal(t, faultsOf(t, strings.Replace(sound, "24", "240", 1)), faultsOf(t, "\uFEFF"+strings.Replace(crlf, "24", "240", 1)))
}
