package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/unit"
)

// realBuild is a build of the demo or of testdata, with its readings and a pair
// that it might have chosen.
type realBuild struct{ toml, readings string }

// chosen adds a pair to a build that has none, so that a command need not search.
var chosen = map[string]string{
	"../../data/demo":                  "\n[chosen]\nbass = \"710 mm\"\ntreble = \"690 mm\"\ngauges = [\"w54\", \"w42\", \"w32\", \"w22\", \"p17\", \"p13\"]\n",
	"../../testdata/builds/seven":      "\n[chosen]\nbass = \"686 mm\"\ntreble = \"648 mm\"\n",
	"../../testdata/builds/eight_inch": "\n[chosen]\nbass = \"28 in\"\ntreble = \"26 in\"\n",
	"../../testdata/builds/bass_five":  "\n[chosen]\nbass = \"900 mm\"\ntreble = \"850 mm\"\n",
}

// steps matches the step of a range of lengths.
var steps = regexp.MustCompile(`step = "([^"]*)" }`)

// coarser searches with steps ten times as wide, so that a fuzzer gets on.
func coarser(t testing.TB, toml string) string {
	return steps.ReplaceAllStringFunc(toml, func(found string) string {
		step, err := unit.ParseLength(steps.FindStringSubmatch(found)[1])
		require.NoError(t, err)
		return `step = "` + (10 * step).String() + `" }`
	})
}

// realBuilds gives every build twice, as it is but for a coarser search, and with
// a pair chosen, in a fixed order.
func realBuilds(t testing.TB) []realBuild {
	var out []realBuild
	for _, folder := range []string{"../../data/demo", "../../testdata/builds/seven", "../../testdata/builds/eight_inch", "../../testdata/builds/bass_five"} {
		toml, readings := contents(t, filepath.Join(folder, "build.toml")), contents(t, filepath.Join(folder, "readings.csv"))
		toml = coarser(t, toml)
		out = append(out, realBuild{toml, readings})
		if !strings.Contains(toml, "\n[chosen]") {
			out = append(out, realBuild{toml + chosen[folder], readings})
		}
	}
	return out
}

func contents(t require.TestingT, file string) string {
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	return string(src)
}

// bench is a folder that takes the files of one run after the other.
type bench struct{ folder string }

func newBench(f *testing.F) bench { return bench{f.TempDir()} }

// outcome is what a run left behind.
type outcome struct {
	code        int
	out, errOut string
	files       map[string]string // what stands in the files that it was to write; those not there are left out
}

// fileName matches a file of a command line.
var fileName = regexp.MustCompile(`^\w+\.(toml|csv|html|svg|dxf|pdf)$`)

// run writes the files and runs a command line in which names stand for files
// of the bench's folder; those behind --out are the ones that it is to write.
func (b bench) run(t *testing.T, files map[string]string, args ...string) outcome {
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(b.folder, name), []byte(text), 0o600))
	}
	line := make([]string, len(args))
	var wanted []string
	for i, arg := range args {
		if line[i] = arg; fileName.MatchString(arg) {
			line[i] = filepath.Join(b.folder, arg)
		}
		if i > 0 && args[i-1] == "--out" {
			wanted = append(wanted, line[i])
			_ = os.Remove(line[i]) // left by the run before, or not there
		}
	}
	var stdout, stderr bytes.Buffer
	o := outcome{files: map[string]string{}}
	o.code = run(context.Background(), line, &stdout, &stderr)
	o.out, o.errOut = stdout.String(), stderr.String()
	for _, file := range wanted {
		if src, err := os.ReadFile(file); err == nil {
			o.files[filepath.Base(file)] = string(src)
		}
	}
	return o
}

// searched is the largest grid that a fuzzer searches; the program itself takes
// five million pairs.
const searched = 50

// tooWide tells whether a build would search too long for a fuzzer, or read
// anything but the readings beside it.
func tooWide(toml string) bool {
	b, err := build.Read([]byte(toml), "build.toml", nil)
	if err != nil {
		return false // refused at once
	}
	return len(b.Scales.Bass)*len(b.Scales.Treble) > searched || b.Readings != "readings.csv"
}

// commands are the command lines that the fuzzers try.
var commands = [][]string{
	{"tension", "build.toml"},
	{"layout", "build.toml"},
	{"setout", "build.toml"},
	{"check", "marks.csv", "build.toml"},
	{"gauges", "build.toml"},
	{"explain", "1", "build.toml"},
	{"neutral", "build.toml"},
	{"tension", "build.toml", "--format", "json"},
	{"layout", "build.toml", "--format", "json"},
	{"check", "marks.csv", "build.toml", "--format", "json"},
	{"gauges", "build.toml", "--format", "json"},
	{"tension", "build.toml", "--lengths", "in64", "--forces", "lbf", "--format", "csv"},
	{"advise", "build.toml", "--trials", "50"},
	{"weigh", "build.toml"},
	{"compare", "build.toml"},
	{"sheet", "build.toml", "--out", "sheet.html"},
	{"draw", "build.toml", "--out", "fan.svg", "--out", "fan.dxf"},
	{"draw", "build.toml", "--out", "fan.pdf"},
}

// noNumber is what no number may look like, nowhere in what is printed: NaN, an
// infinity, a zero with a sign.
var noNumber = regexp.MustCompile(`\bNaN\b|\bInf\b|(^|[^0-9A-Za-z.)])-0(\.0*)?($|[^0-9.A-Za-z/])`)

// requireSound holds what every run must keep: exit code 0 with a result and no
// more than hints on stderr, or 1 with faults on stderr, nothing on stdout and no
// file; and numbers only where numbers belong. given is all the text that the
// user wrote, which may be printed again.
func requireSound(t *testing.T, args []string, given string, o outcome) {
	wanted := strings.Count(strings.Join(args, " "), "--out ")
	outOfTolerance := o.code == exitInput && args[0] == "check" && o.out != ""
	switch {
	case o.code == exitDone:
		require.True(t, wanted > 0 || o.out != "")
		require.Len(t, o.files, wanted)
	case outOfTolerance:
	default:
		require.Equal(t, exitInput, o.code, "%q: %s", args, o.errOut)
		require.Empty(t, o.out, "%q", args)
		require.NotEmpty(t, o.errOut)
		require.Empty(t, o.files)
	}
	if strings.Contains(strings.Join(args, " "), "json") && o.out != "" {
		require.True(t, json.Valid([]byte(o.out)), o.out)
	}
	require.False(t, strings.ContainsFunc(o.out+o.errOut, terminalObeys), "%q", args)
	if noNumber.MatchString(given) || strings.Contains(given, `\`) {
		return
	}
	require.NotRegexp(t, noNumber, o.out)
	require.NotRegexp(t, noNumber, o.errOut)
	for name, text := range o.files {
		require.NotEmpty(t, text)
		if name != "fan.pdf" { // which holds the face's bytes
			require.NotRegexp(t, noNumber, text, name)
		}
	}
}

// terminalObeys tells whether a terminal may obey a character of print rather
// than show it.
func terminalObeys(r rune) bool { return r != '\n' && obeyed(r) }

// odder finds what a terminal may obey, with its surroundings.
var odder = regexp.MustCompile(`.{0,30}[^\PC\n\r].{0,30}`)

// Whatever the bytes of names, labels and remarks, every command prints lines
// that a terminal only shows.
func TestNoNameIsObeyed(t *testing.T) {
	const odd = "\\u001b[31m\\u202e\\u0007"
	b := realBuilds(t)[1]
	replace := strings.NewReplacer(`name = "`, `name = "`+odd, `"p17"`, `"p17`+odd+`"`, `"w54"`, `"w54`+odd+`"`)
	b.toml = replace.Replace(b.toml)
	b.readings = strings.NewReplacer("\np17,plain", "\np17\x1b[31m\u202e\x07,plain", "\nw54,nickel wound", "\nw54\x1b[31m\u202e\x07,nickel wound",
		"retired set", "re\x1btired").Replace(b.readings)
	b.readings = strings.ReplaceAll(b.readings, "nickel wound", "nickel\x1b[1m wound")
	files := map[string]string{"build.toml": b.toml, "readings.csv": b.readings, "marks.csv": contents(t, "../../testdata/builds/demo_marks.csv")}
	bench := bench{t.TempDir()}
	for _, args := range commands {
		o := bench.run(t, files, args...)
		requireSound(t, args, b.toml+b.readings, o)
		if o.code != exitDone && args[0] != "check" {
			t.Errorf("%q: %s", args, o.errOut)
		}
		for name, text := range o.files {
			require.False(t, name != "fan.pdf" && strings.ContainsFunc(text, func(r rune) bool { return r != '\r' && terminalObeys(r) }), "%s: %q", name, odder.FindAllString(text, 3))
		}
	}
}

// FuzzCommand runs the whole program on any build, readings and measured marks.
func FuzzCommand(f *testing.F) {
	marks := contents(f, "../../testdata/builds/demo_marks.csv")
	builds := realBuilds(f)
	for i := range commands {
		b := builds[i%len(builds)]
		f.Add(b.toml, b.readings, marks, byte(i))
	}
	for i, b := range builds {
		f.Add(b.toml, b.readings, marks, byte(i%3))
	}
	bench := newBench(f)
	f.Fuzz(func(t *testing.T, toml, readings, measured string, command byte) {
		if tooWide(toml) {
			return
		}
		args := commands[int(command)%len(commands)]
		o := bench.run(t, map[string]string{"build.toml": toml, "readings.csv": readings, "marks.csv": measured}, args...)
		requireSound(t, args, toml+readings+measured, o)
	})
}
