package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// badFolder holds the corpus of bad input: one slip a file, with the file that
// says what is wanted beside it. DEVELOPERS.md says how to add one.
const badFolder = "../../testdata/bad"

// standsFor are the groups of the corpus, and the file of the sound build that
// a bad file of each takes the place of.
var standsFor = map[string]string{"readings": "readings.csv", "marks": "measured.csv"}

// badRun is one command on a bad input: its line without the program's name,
// and the whole message on stderr with the exit code behind it.
type badRun struct{ line, result string }

// readWant reads what is wanted: remarks behind #, then for every command a
// line "$ scalepair ...", the message, and a line "exit 1".
func readWant(t *testing.T, path string) (remarks string, runs []badRun) {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return parseWant(t, string(text))
}

func parseWant(t *testing.T, text string) (remarks string, runs []badRun) {
	t.Helper()
	remarks, rest, found := strings.Cut(text, "$ scalepair ")
	require.True(t, found && strings.HasPrefix(remarks, "# "), "a remark says what the slip is: %s", text)
	for _, one := range strings.Split(rest, "$ scalepair ") {
		line, result, _ := strings.Cut(one, "\n")
		runs = append(runs, badRun{line, result})
	}
	return remarks, runs
}

// Every slip of the corpus is refused: exit code 1 or 2, nothing on stdout, the
// wanted message whole on stderr, nothing written.
func TestBadInput(t *testing.T) {
	wants, err := filepath.Glob(filepath.Join(startFolder, badFolder, "*/*.want"))
	require.NoError(t, err)
	assert.Greater(t, len(wants), 50)
	for _, want := range wants {
		group, name := filepath.Base(filepath.Dir(want)), strings.TrimSuffix(filepath.Base(want), ".want")
		t.Run(group+"/"+name, func(t *testing.T) {
			remarks, runs := readWant(t, want)
			dir := soundFolder(t)
			under := standsFor[group]
			bad, err := os.ReadFile(strings.TrimSuffix(want, ".want") + filepath.Ext(under))
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(filepath.Join(dir, under), bad, 0o644))
			text := remarks + refused(t, dir, runs)
			if *update {
				require.NoError(t, os.WriteFile(want, []byte(text), 0o644))
			}
		})
	}
}

// refused runs commands in a folder, holds each to what every refusal keeps and
// to its own message, and returns what came out as it is wanted.
func refused(t *testing.T, dir string, runs []badRun) (text string) {
	t.Helper()
	t.Chdir(dir)
	before := snapshot(t, dir)
	for _, r := range runs {
		var out, errOut bytes.Buffer
		code := run(context.Background(), argumentsOf(t, r.line), &out, &errOut)
		result := fmt.Sprintf("%sexit %d\n", errOut.String(), code)
		text += "$ scalepair " + r.line + "\n" + result
		assert.Contains(t, []int{exitInput, exitUsage}, code, r.line)
		assert.Empty(t, out.String(), r.line)
		requireMessages(t, errOut.String())
		if !*update {
			assert.Equal(t, r.result, result, "scalepair %s", r.line)
		}
	}
	assert.Equal(t, before, snapshot(t, dir))
	return text
}

// Every slip of the command line is refused; they stand in one file.
func TestBadLines(t *testing.T) {
	path := filepath.Join(startFolder, badFolder, "line.txt")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	out := ""
	for _, one := range strings.Split(strings.TrimPrefix(string(text), "# "), "\n# ") {
		remarks, runs := parseWant(t, "# "+strings.TrimSuffix(one, "\n")+"\n")
		t.Run(runs[0].line, func(t *testing.T) { out += remarks + refused(t, soundFolder(t), runs) })
	}
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(out), 0o644))
	}
}

var (
	// messageForm is place: what; remedy. What was given stands quoted within.
	messageForm = regexp.MustCompile(`^(\S.*?)(?::\d+)?(?::\d+)?: (.+?); (.+)$`)
	quoted      = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
	// foreign are words of the language that the program is written in, of its
	// libraries and of the system below: nothing for a builder.
	foreign = regexp.MustCompile(`strconv\.|\bEOF\b|invalid syntax|%!|<nil>|\bnil\b|0x[0-9a-f]{6}|runtime error|goroutine|panic|: toml: |pflag|parse error|unmarshal|\berrno\b`)
)

// requireMessages holds messages to their form, so that a wanted message that
// was pasted from what the program says cannot hide a bad one: a place, what is
// wrong, what would do; short enough to be read, and in a builder's words.
func requireMessages(t *testing.T, text string) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	assert.LessOrEqual(t, len(lines), 21, "more than anybody reads")
	for _, line := range lines {
		m := messageForm.FindStringSubmatch(line)
		if !assert.NotNil(t, m, "not of the form place: fault (given); remedy: %s", line) {
			continue
		}
		assert.False(t, unicode.IsUpper([]rune(m[2])[0]), "begins with a capital: %s", line)
		assert.False(t, strings.HasSuffix(line, "."), "ends with a full stop: %s", line)
		assert.NotRegexp(t, foreign, quoted.ReplaceAllString(line, ""), line)
		assert.Less(t, len(line), 500, line)
		assert.NotContains(t, line, "\x1b")
	}
}

// The sound build that every bad one is made of is sound, so that what is
// refused is the slip.
func TestSoundInput(t *testing.T) {
	t.Chdir(soundFolder(t))
	for _, line := range []string{"gauges", "advise --trials 20", "tension", "layout", "bench", "check measured.csv", "compare"} {
		resultOf(t, line)
	}
}

// Files that are not there, that are none, and files of any size are refused
// with their name, at once, and without taking memory by their size.
func TestBadFiles(t *testing.T) {
	sound, err := os.ReadFile(filepath.Join(badFolder, "good", "build.toml"))
	require.NoError(t, err)
	const heading = "gauge,construction,outer_mm,length_mm,mass_g\n"
	for _, c := range []struct{ name, as, content, want string }{
		{"no build", "build.toml", "", "build.toml: the build file is empty; "},
		{"no readings", "readings.csv", "", "readings.csv: the file is empty; "},
		{"readings of 32 MB", "readings.csv", heading + strings.Repeat("p10,plain,0.254,319,0.13\n", 32<<20/25), "readings.csv: the file is larger than 4 MB"},
		{"a build file of 32 MB", "build.toml", string(sound) + strings.Repeat("# a remark\n", 32<<20/11), "build.toml: the file is larger than 1 MB"},
		{"a heading of 4 MB", "readings.csv", strings.Repeat("gauge", 800_000) + ",mass_g\np10,0.13\n", "readings.csv:1: "},
		{"a cell of 4 MB", "readings.csv", heading + "p10,plain,0.254,319," + strings.Repeat("7", 4<<20-200), "readings.csv:2:21: mass: "},
		{"a million bad rows", "readings.csv", "gauge,mass_g\n" + strings.Repeat(",1\n", 1_000_000), "readings.csv:2:1: gauge is empty, here and in 99 more places"},
		{"lists within lists", "build.toml", string(sound) + "\nx = " + strings.Repeat("[", 900_000), "build.toml:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Chdir(soundFolder(t))
			require.NoError(t, os.WriteFile(c.as, []byte(c.content), 0o644))
			var before, after runtime.MemStats
			var out, errOut bytes.Buffer
			runtime.ReadMemStats(&before)
			assert.Equal(t, exitInput, run(context.Background(), []string{"layout"}, &out, &errOut))
			runtime.ReadMemStats(&after)
			assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(256<<20))
			assert.Empty(t, out.String())
			assert.True(t, strings.HasPrefix(errOut.String(), c.want), "%.300s", errOut.String())
			assert.Less(t, errOut.Len(), 20_000)
		})
	}
}

// startFolder is where the tests begin.
var startFolder, _ = os.Getwd()

// soundFolder is a fresh folder with the sound build, its readings and its
// measured marks.
func soundFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(filepath.Join(startFolder, badFolder, "good"))))
	return dir
}

// snapshot lists the files in a folder with their rights and content.
func snapshot(t *testing.T, dir string) []string {
	t.Helper()
	var out []string
	require.NoError(t, filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		require.NoError(t, err)
		info, err := e.Info()
		require.NoError(t, err)
		line := fmt.Sprintf("%s %v", path, info.Mode())
		if info.Mode().IsRegular() {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			line += fmt.Sprintf(" %x", sha256.Sum256(text))
		}
		out = append(out, line)
		return nil
	}))
	return out
}

var argument = regexp.MustCompile(`"[^"]*"|'[^']*'|[^ "']+`)

// argumentsOf cuts a command line into arguments as a shell does, for lines
// with quotation marks about whole arguments and nothing else of a shell's.
func argumentsOf(t *testing.T, line string) []string {
	t.Helper()
	out := argument.FindAllString(line, -1)
	for i, arg := range out {
		if strings.ContainsAny(arg[:1], `"'`) {
			out[i] = arg[1 : len(arg)-1]
		}
	}
	return out
}

// resultOf runs a command line that must do, and returns what it prints.
func resultOf(t *testing.T, line string) string {
	t.Helper()
	var out, errOut bytes.Buffer
	require.Equal(t, exitDone, run(context.Background(), argumentsOf(t, line), &out, &errOut), "scalepair %s\n%s", line, errOut.String())
	return out.String()
}
