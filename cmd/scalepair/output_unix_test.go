//go:build linux || darwin

package main

import (
	"os"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
)

// printers are command lines that print, in every way that there is.
var printers = []string{
	"advise --trials 0", "advise --trials 0 --format json", "layout --format csv", "layout --format markdown", "gauges --format html",
	"tension", "compare", "explain 1", "weigh", "setout", "neutral", "check --form",
	"completion bash", "completion zsh", "completion fish", "completion powershell",
	"version", "--version", "help", "--help", "help advise", "advise --help", "__complete layout --format ",
}

// printing is a run of one of them with its result sent somewhere.
func printing(t *testing.T, dir, line string, to *os.File) ended {
	t.Helper()
	c, _, errOut := process(dir, strings.Split(line, " ")...)
	c.Stdout = to
	return finish(t, c, c.Run(), errOut, errOut)
}

// Whatever is printed to a full disk is told to be lost.
func TestFullOutput(t *testing.T) {
	full, err := os.OpenFile(testutil.NeedPath(t, "/dev/full", "Linux has it"), os.O_WRONLY, 0)
	require.NoError(t, err)
	defer full.Close()
	dir := t.TempDir()
	writers[0].lay(t, dir)
	for _, line := range printers {
		t.Run(line, func(t *testing.T) {
			e := printing(t, dir, line, full)
			assert.Equal(t, exitInput, e.code)
			assert.Equal(t, 1, strings.Count(e.err, "standard output: the result cannot be printed: no space left on device; make room there, or send it elsewhere\n"), e.err)
		})
	}
}

// A pipe that nobody reads ends the run without a word, as shells expect.
func TestClosedPipe(t *testing.T) {
	dir := t.TempDir()
	writers[0].lay(t, dir)
	for _, line := range printers {
		t.Run(line, func(t *testing.T) {
			e := printing(t, dir, line, closedPipe(t))
			assert.Equal(t, syscall.SIGPIPE, e.signal, e)
			assert.NotContains(t, e.err, "standard output")
		})
	}
}

func closedPipe(t *testing.T) *os.File {
	t.Helper()
	r, w, err := os.Pipe()
	require.NoError(t, err)
	require.NoError(t, r.Close())
	t.Cleanup(func() { _ = w.Close() })
	return w
}

// Where a file is written too, it is whole when the pipe is closed or the
// result is lost.
func TestFilesWithoutOutput(t *testing.T) {
	for _, w := range writers {
		for name, lay := range map[string]func(e *ended, dir string){
			"nobody reads the result": func(e *ended, dir string) { *e = printing(t, dir, w.args, closedPipe(t)) },
			"nobody reads the hints": func(e *ended, dir string) {
				c, out, errOut := process(dir, w.words()...)
				c.Stderr = closedPipe(t)
				*e = finish(t, c, c.Run(), out, errOut)
			},
		} {
			t.Run(w.name+", "+name, func(t *testing.T) {
				before, after := w.undisturbed(t)
				dir := t.TempDir()
				w.lay(t, dir)
				var e ended
				lay(&e, dir)
				found := filesOf(t, dir)
				assert.Empty(t, passing(found))
				assert.Contains(t, []string{w.all("old"), w.all("new")}, w.state(t, found, before, after), e)
				if name == "nobody reads the result" {
					assert.Equal(t, w.all("new"), w.state(t, found, before, after), e)
				}
			})
		}
	}
}
