package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shell runs command lines one after another in one folder, as a user would
// paste them. The folder has the builds of testdata.
type shell struct {
	dir    string
	status int // of the line before
}

func newShell(t *testing.T) shell {
	t.Helper()
	if os.PathSeparator == '\\' {
		t.Skip("the examples need a POSIX shell")
	}
	t.Setenv("LC_ALL", "C.UTF-8")
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(filepath.Join(dir, "testdata", "builds"), os.DirFS("../../testdata/builds")))
	return shell{dir: dir}
}

// run returns what a line prints on stdout and on stderr.
func (s *shell) run(line string) (out, errOut string, err error) {
	if to, ok := strings.CutPrefix(line, "cd "); ok {
		s.dir = filepath.Join(s.dir, to)
		return "", "", nil
	}
	c := exec.Command("sh", "-c", fmt.Sprintf("(exit %d)\n%s", s.status, line))
	var o, e bytes.Buffer
	c.Dir, c.Stdout, c.Stderr = s.dir, &o, &e
	err = c.Run()
	s.status = c.ProcessState.ExitCode()
	return o.String(), e.String(), err
}

// Every example of every command's help runs, in order, in an empty folder.
func TestHelpExamples(t *testing.T) {
	for _, c := range append([]*cobra.Command{tree()}, tree().Commands()...) {
		t.Run(c.Name(), func(t *testing.T) {
			s := newShell(t)
			for _, line := range strings.Split(c.Example, "\n") {
				_, errOut, err := s.run(strings.TrimSpace(line))
				assert.NoError(t, err, "%s\n%s", line, errOut)
			}
		})
	}
}

// consoleBlock is a block of the README: command lines behind "$ ", each with
// the output below it, in which "..." stands for any number of lines.
var consoleBlock = regexp.MustCompile("(?s)```console\n(.*?)```")

// Every command line of the README runs, in order, and prints what the README
// shows below it.
func TestReadmeExamples(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	s := newShell(t)
	for _, block := range consoleBlock.FindAllStringSubmatch(string(text), -1) {
		for _, example := range strings.Split("\n"+block[1], "\n$ ")[1:] {
			for strings.Contains(example, "\\\n> ") {
				example = strings.Replace(example, "\\\n> ", "", 1)
			}
			line, shown, _ := strings.Cut(example, "\n")
			if command, _, _ := strings.Cut(line, " "); command == "go" || command == "git" {
				continue
			}
			out, errOut, err := s.run(line)
			if shown = strings.TrimSpace(shown); shown == "" {
				assert.NoError(t, err, "%s\n%s", line, errOut)
				continue
			}
			assert.True(t, shows(shown, out) || shows(shown, errOut+out) || shows(shown, out+errOut), "README.md: %s\nshows\n%s\nprints\n%s%s", line, shown, errOut, out)
		}
	}
}

// shows reports whether a text stands for what was printed.
func shows(text, printed string) bool {
	pattern := regexp.QuoteMeta("\n" + text + "\n")
	pattern = strings.ReplaceAll(pattern, "\n"+regexp.QuoteMeta("...")+"\n", "\n(.*\n)?")
	return regexp.MustCompile("(?s)^" + pattern + "$").MatchString("\n" + strings.Trim(printed, "\n") + "\n")
}

func TestShows(t *testing.T) {
	for _, c := range []struct {
		text, printed string
		want          bool
	}{
		{"one\ntwo", "one\ntwo\n", true},
		{"one", "one\ntwo\n", false},
		{"a\n...\nd", "a\nb\nc\nd\n", true},
		{"a\n...\nd", "a\nd\n", true},
		{"...\nb\n...", "a\nb\nc\n", true},
		{"...\nb\n...", "a\nc\n", false},
		{"a\n...\na", "a\n", false},
	} {
		assert.Equal(t, c.want, shows(c.text, c.printed), "%q for %q", c.text, c.printed)
	}
}

// The README's picture is the demo's drawing.
func TestReadmePicture(t *testing.T) {
	s := newShell(t)
	_, errOut, err := s.run("scalepair draw --out fan.svg --hide key,dots,check-bars,title,centreline")
	require.NoError(t, err, errOut)
	drawn, err := os.ReadFile(filepath.Join(s.dir, "fan.svg"))
	require.NoError(t, err)
	shown, err := os.ReadFile("../../testdata/drawings/demo_fan.svg")
	require.NoError(t, err)
	assert.Equal(t, string(shown), string(drawn), "draw it again with the command above")
}
