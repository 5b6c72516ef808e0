package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// badFolder holds the corpus of bad input: one slip a file, with the file that
// says what is wanted beside it. DEVELOPERS.md tells how to add one.
const badFolder = "../../testdata/bad"

// standsFor are the groups of the corpus, and the file of the sound build that
// a bad file of each takes the place of; "" where the slip is in the command
// line alone.
var standsFor = map[string]string{"readings": "readings.csv", "marks": "measured.csv", "builds": "build.toml", "line": ""}

// badInput is one slip and what is to come of it.
type badInput struct {
	name  string // "readings/decimal-commas"
	want  string // path of its .want
	file  string // path of the bad file, "" for none
	under string // the name that the bad file gets
	runs  []badRun
}

// badRun is one command on a bad input: its line without the program's name,
// the whole message on stderr, and the exit code.
type badRun struct {
	line    string
	message string
	exit    string
}

// badInputs reads the corpus.
func badInputs(t *testing.T) []badInput {
	t.Helper()
	var out []badInput
	wants, err := filepath.Glob(badFolder + "/*/*.want")
	require.NoError(t, err)
	for _, want := range wants {
		group := filepath.Base(filepath.Dir(want))
		under, known := standsFor[group]
		require.True(t, known, "no such group: %s", want)
		b := badInput{name: group + "/" + strings.TrimSuffix(filepath.Base(want), ".want"), want: want, under: under}
		files, err := filepath.Glob(strings.TrimSuffix(want, ".want") + ".[^w]*")
		require.NoError(t, err)
		if under == "" {
			require.Empty(t, files, "%s: a slip of the command line needs no file", b.name)
		} else {
			require.Len(t, files, 1, "%s needs one bad file beside it", b.name)
			b.file = files[0]
		}
		b.runs = readWant(t, want)
		out = append(out, b)
	}
	return out
}

// readWant reads what is wanted: remarks behind #, then for every command a
// line "$ scalepair ...", the message, and a line "exit 1".
func readWant(t *testing.T, path string) []badRun {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, strings.HasPrefix(string(text), "# "), "%s begins with a remark that says what the slip is", path)
	var out []badRun
	open := false
	for _, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		command, isCommand := strings.CutPrefix(line, "$ scalepair")
		code, isExit := strings.CutPrefix(line, "exit ")
		switch {
		case isCommand:
			out, open = append(out, badRun{line: strings.TrimSpace(command)}), true
		case isExit && open:
			out[len(out)-1].exit, open = code, false
		case open:
			out[len(out)-1].message += line + "\n"
		default:
			require.True(t, strings.HasPrefix(line, "#"), "%s: this line belongs to no command: %s", path, line)
		}
	}
	require.NotEmpty(t, out, path)
	return out
}

// Every slip of the corpus is refused: exit code 1 or 2, nothing on stdout, the
// wanted message whole on stderr, nothing written. Each message has a place, a
// fault and a remedy, whatever is wanted of it.
func TestBadInput(t *testing.T) {
	corpus := badInputs(t)
	assert.GreaterOrEqual(t, len(corpus), 120)
	for _, b := range corpus {
		t.Run(b.name, func(t *testing.T) {
			dir := soundFolder(t)
			if b.file != "" {
				bad, err := os.ReadFile(b.file)
				require.NoError(t, err)
				good, err := os.ReadFile(filepath.Join(dir, b.under))
				require.NoError(t, err)
				require.NotEqual(t, good, bad, "there is no slip in this file")
				require.NoError(t, os.WriteFile(filepath.Join(dir, b.under), bad, 0o644))
			}
			t.Chdir(dir)
			var got []badRun
			for _, wanted := range b.runs {
				got = append(got, refused(t, dir, wanted))
			}
			if *update {
				rewriteWant(t, b, got)
			}
		})
	}
}

// refused runs one command on a bad input and holds it to what is wanted.
func refused(t *testing.T, dir string, wanted badRun) badRun {
	t.Helper()
	before := snapshot(t, dir)
	args := argumentsOf(t, wanted.line)
	var out, errOut bytes.Buffer
	code := run(context.Background(), args, &out, &errOut)
	got := badRun{wanted.line, errOut.String(), fmt.Sprint(code)}
	assert.Contains(t, []int{exitInput, exitUsage}, code, "scalepair %s", wanted.line)
	assert.Empty(t, out.String(), "stdout of scalepair %s", wanted.line)
	assert.Equal(t, before, snapshot(t, dir), "the folder after scalepair %s", wanted.line)
	for _, problem := range messageProblems(got.message, args, dir) {
		t.Error(problem)
	}
	if !*update {
		assert.Equal(t, wanted.message, got.message, "scalepair %s", wanted.line)
		assert.Equal(t, wanted.exit, got.exit, "exit code of scalepair %s", wanted.line)
	}
	return got
}

// A bad file is refused by every command that reads it, with the same message:
// nobody works on with one command what another would refuse.
func TestBadInputIsRefusedByEveryCommand(t *testing.T) {
	for _, b := range badInputs(t) {
		if first := b.runs[0].line; b.file == "" || first != "gauges" && first != "advise" {
			continue
		}
		t.Run(b.name, func(t *testing.T) {
			dir := soundFolder(t)
			bad, err := os.ReadFile(b.file)
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(filepath.Join(dir, b.under), bad, 0o644))
			t.Chdir(dir)
			for _, line := range []string{"advise", "tension", "layout", "check measured.csv", "weigh"} {
				var out, errOut bytes.Buffer
				assert.Equal(t, exitInput, run(context.Background(), argumentsOf(t, line), &out, &errOut), "scalepair %s", line)
				assert.Empty(t, out.String(), "scalepair %s", line)
				assert.Equal(t, b.runs[0].message, errOut.String(), "scalepair %s", line)
			}
		})
	}
}

// rewriteWant puts what came out in the place of what was wanted, and keeps the
// remarks.
func rewriteWant(t *testing.T, b badInput, got []badRun) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(startFolder, b.want))
	require.NoError(t, err)
	var out strings.Builder
	for _, line := range strings.SplitAfter(string(text), "\n") {
		if strings.HasPrefix(line, "#") {
			out.WriteString(line)
		}
	}
	for _, g := range got {
		fmt.Fprintf(&out, "$ scalepair %s\n%sexit %s\n", g.line, g.message, g.exit)
	}
	require.NoError(t, os.WriteFile(filepath.Join(startFolder, b.want), []byte(out.String()), 0o644))
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

// snapshot tells everything of the files in a folder: name, rights, content.
func snapshot(t *testing.T, dir string) []string {
	t.Helper()
	var out []string
	require.NoError(t, filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		require.NoError(t, err)
		info, err := e.Info()
		require.NoError(t, err)
		told := fmt.Sprintf("%s %v", path, info.Mode())
		if info.Mode().IsRegular() {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			told += fmt.Sprintf(" %v %x", info.ModTime(), sha256.Sum256(text))
		}
		out = append(out, told)
		return nil
	}))
	return out
}

// argumentsOf cuts a command line into arguments as a shell does, with quotation
// marks of both kinds and nothing else of a shell's.
func argumentsOf(t *testing.T, line string) []string {
	t.Helper()
	var out []string
	var word strings.Builder
	quote, begun := rune(0), false
	for _, r := range line {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote == 0 && (r == '"' || r == '\''):
			quote, begun = r, true
		case quote == 0 && r == ' ':
			if begun {
				out, begun = append(out, word.String()), false
				word.Reset()
			}
		default:
			word.WriteRune(r)
			begun = true
		}
	}
	require.Zero(t, quote, "a quotation mark is left open: %s", line)
	if begun {
		out = append(out, word.String())
	}
	return out
}

func TestWordsOfALine(t *testing.T) {
	assert.Equal(t, []string{"tension", "--bass", "650 mm", "", "a'b"}, argumentsOf(t, `tension  --bass "650 mm" '' "a'b"`))
	assert.Empty(t, argumentsOf(t, ""))
}

// The sound build that every bad one is made of is sound, so that what is
// refused is the slip.
func TestSoundInput(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	before := snapshot(t, dir)
	for _, line := range []string{"gauges", "advise --trials 20", "tension", "layout", "setout", "check measured.csv", "weigh", "compare", "neutral", "explain 1"} {
		var out, errOut bytes.Buffer
		assert.Equal(t, exitDone, run(context.Background(), argumentsOf(t, line), &out, &errOut), "scalepair %s\n%s", line, errOut.String())
		assert.NotEmpty(t, out.String(), "scalepair %s", line)
	}
	assert.Equal(t, before, snapshot(t, dir))
}
