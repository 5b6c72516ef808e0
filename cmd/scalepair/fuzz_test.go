package main

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
)

// commands are the command lines that are tried on any files.
var commands = []string{
	"tension build.toml", "layout build.toml", "bench build.toml", "check marks.csv build.toml", "gauges build.toml",
	"tension build.toml --format json", "gauges build.toml --format json", "tension build.toml --lengths in64 --forces lbf --format csv",
	"advise build.toml --trials 50", "compare build.toml", "draw build.toml --out fan.svg --out fan.dxf --out fan.pdf --force",
}

// files are what a run reads.
type files struct{ toml, readings, marks string }

// realFiles are those of the demo and of testdata, with a search that takes
// steps ten times as wide, so that a fuzzer gets on.
func realFiles(t testing.TB) []files {
	read := func(path ...string) string {
		text, err := os.ReadFile(filepath.Join(append([]string{startFolder, "../.."}, path...)...))
		require.NoError(t, err)
		return string(text)
	}
	var out []files
	for _, folder := range []string{"data/demo", "testdata/builds/seven", "testdata/builds/eight_inch", "testdata/builds/bass_five"} {
		toml := strings.NewReplacer(`by 5 mm"`, `by 50 mm"`, `by 0.25 in"`, `by 2 in"`).Replace(read(folder, "build.toml"))
		out = append(out, files{toml, read(folder, "readings.csv"), read("testdata/builds/demo_marks.csv")})
	}
	return out
}

// noNumber is what no number may look like, nowhere in what is printed: NaN, an
// infinity, a zero with a sign.
var noNumber = regexp.MustCompile(`\bNaN\b|\bInf\b|(^|[^0-9A-Za-z.)])-0(\.0*)?($|[^0-9.A-Za-z/])`)

// obeyed reports whether a terminal may obey a character rather than show it.
func obeyed(r rune) bool { return r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) }

// requireSound runs a command line on files, and holds it to what every run must
// keep: exit code 0 with a result, or 1 or 2 with faults on stderr and nothing
// on stdout; numbers only where numbers belong, and no character that a
// terminal would obey.
func requireSound(t *testing.T, f files, args ...string) {
	for name, text := range map[string]string{"build.toml": f.toml, "readings.csv": f.readings, "marks.csv": f.marks} {
		require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
	}
	var stdout, stderr bytes.Buffer
	code := run(context.Background(), args, &stdout, &stderr)
	out, errOut := stdout.String(), stderr.String()
	switch {
	case code == exitDone:
		require.True(t, out != "" || args[0] == "draw")
	case code == exitInput && args[0] == "check" && out != "": // a mark out of tolerance
	default:
		require.Contains(t, []int{exitInput, exitUsage}, code, "%q: %s", args, errOut)
		require.Empty(t, out, "%q", args)
		require.NotEmpty(t, errOut, "%q", args)
	}
	if strings.HasSuffix(strings.Join(args, " "), "json") && out != "" {
		require.True(t, json.Valid([]byte(out)), out)
	}
	require.False(t, strings.ContainsFunc(out+errOut, obeyed), "%q", args)
	if !noNumber.MatchString(f.toml + f.readings + f.marks + strings.ReplaceAll(strings.Join(args, " "), "=", " ")) {
		require.NotRegexp(t, noNumber, out)
		require.NotRegexp(t, noNumber, errOut)
	}
}

// figure matches a number of a file that is no part of a name or a note.
var figure = regexp.MustCompile(`(?m)(^|[ ",\[])(-?\d+(?:\.\d+)?)($|[ ",\]])`)

// change multiplies the n-th number of a text, counted round and round.
func change(text string, n uint16, factor float64) string {
	all := figure.FindAllStringSubmatchIndex(text, -1)
	if len(all) == 0 {
		return text
	}
	at := all[int(n)%len(all)]
	old, _ := strconv.ParseFloat(text[at[4]:at[5]], 64)
	return text[:at[4]] + strconv.FormatFloat(old*factor, 'f', -1, 64) + text[at[5]:]
}

// FuzzValues runs the whole program on real files in which single numbers are
// larger or smaller than they were: the files parse, and the numbers lie
// anywhere up to the bounds of what is taken and beyond.
func FuzzValues(f *testing.F) {
	all := realFiles(f)
	for i, factor := range []float64{0.5, 2, 0.9, 1.1, 0.01, 100, 0, -1, 1e-9, 1e9, 0.999999, 3} {
		f.Add(byte(i), byte(i), uint16(5*i), factor, uint16(11*i), factor)
		f.Add(byte(i+1), byte(i+5), uint16(13*i), factor, uint16(11*i), 1.0)
	}
	dir := f.TempDir()
	f.Fuzz(func(t *testing.T, which, command byte, n uint16, x float64, n2 uint16, x2 float64) {
		if math.IsNaN(x+x2) || math.Abs(x) > 1e12 || math.Abs(x2) > 1e12 {
			return
		}
		t.Chdir(dir)
		in := all[int(which)%len(all)]
		if strings.Contains(change(in.toml, n, x), " by "+strconv.FormatFloat(x, 'f', -1, 64)) {
			return // a step of the search so small that a fuzzer waits
		}
		in.toml, in.readings, in.marks = change(in.toml, n, x), change(in.readings, n2, x2), change(in.marks, n2, x2)
		requireSound(t, in, strings.Fields(commands[int(command)%len(commands)])...)
	})
}

// FuzzFlags gives any text to the flags that take one.
func FuzzFlags(f *testing.F) {
	in := realFiles(f)[0]
	flags := []string{"bass", "treble", "tuning", "gauges", "pitch", "capo", "neutral", "lengths", "forces", "format", "only", "width"}
	for i, value := range []string{
		"NaN", "-Inf", "1e999", "-0", "bridge", "6=A1", "B1 E2 A2 D3 F#3 B3", "baritone A", "w54 w42 w32 w22 p17 p13", "440", "24", "25 1/2 in",
		"json", "in64", "strings", "\xff\x1b\n", strings.Repeat("9", 500), "%s", "",
	} {
		f.Add(byte(i), value)
		f.Add(byte(i+5), value)
	}
	dir := f.TempDir()
	f.Fuzz(func(t *testing.T, n byte, value string) {
		t.Chdir(dir)
		requireSound(t, in, "tension", "build.toml", "--"+flags[int(n)%len(flags)]+"="+value)
	})
}

// Whatever the bytes of names, labels and remarks, every command prints lines
// that a terminal only shows.
func TestNoNameIsObeyed(t *testing.T) {
	in := realFiles(t)[0]
	in.toml = strings.Replace(in.toml, `name = "`, `name = "\u001b[31m\u202e\u0007`, 1)
	in.readings = strings.NewReplacer("retired set", "re\x1btired", "nickel wound", "nickel\x1b[1m wound").Replace(in.readings)
	t.Chdir(t.TempDir())
	for _, line := range commands {
		requireSound(t, in, strings.Fields(line)...)
	}
}
