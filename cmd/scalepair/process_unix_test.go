//go:build unix

package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
)

// ended is how a process ended and what it said.
type ended struct {
	out, err string
	code     int            // -1 where a signal ended it
	signal   syscall.Signal // 0 where none did
}

// process runs the program in a folder, as a shell would start it, with its
// result sent to a file; to nil it is kept.
func process(t *testing.T, dir, line string, to *os.File) ended {
	t.Helper()
	var out, errOut bytes.Buffer
	c := exec.Command("scalepair", strings.Fields(line)...)
	c.Dir, c.Stdout, c.Stderr = dir, &out, &errOut
	if to != nil {
		c.Stdout = to
	}
	err := c.Run()
	require.NotNil(t, c.ProcessState, "%v", err)
	e := ended{out: out.String(), err: errOut.String(), code: c.ProcessState.ExitCode()}
	if s := c.ProcessState.Sys().(syscall.WaitStatus); s.Signaled() {
		e.signal = s.Signal()
	}
	assert.NotContains(t, e.err, "goroutine", "a bug, and not an error")
	return e
}

// printers are command lines that print, in every way that there is.
var printers = []string{"layout --format json", "gauges --format html", "tension", "completion bash", "version", "--help"}

// Whatever is printed to a full disk is reported as lost.
func TestFullOutput(t *testing.T) {
	full, err := os.OpenFile(testutil.NeedPath(t, "/dev/full", "Linux has it"), os.O_WRONLY, 0)
	require.NoError(t, err)
	defer full.Close()
	for _, line := range printers {
		e := process(t, t.TempDir(), line, full)
		assert.Equal(t, exitInput, e.code, line)
		assert.Contains(t, e.err, "standard output: the result cannot be printed: no space left on device; send it elsewhere\n", line)
	}
}

// A pipe that nobody reads ends the run without a word, as shells expect.
func TestClosedPipe(t *testing.T) {
	for _, line := range printers {
		r, w, err := os.Pipe()
		require.NoError(t, err)
		require.NoError(t, r.Close())
		e := process(t, t.TempDir(), line, w)
		require.NoError(t, w.Close())
		assert.Equal(t, syscall.SIGPIPE, e.signal, line)
		assert.NotContains(t, e.err, "standard output", line)
	}
}

// writers are the ways in which the program writes files.
var writers = []struct {
	line    string
	targets []string
}{
	{"draw --bass 914mm --treble 851mm --out fan.pdf --out fan.svg --out fan.dxf", []string{"fan.pdf", "fan.svg", "fan.dxf"}},
	{"bench --bass 914mm --treble 851mm --out bench.html", []string{"bench.html"}},
	{"gauges --plot fit.svg", []string{"fit.svg"}},
	{"advise --plot map.svg", []string{"map.svg"}},
	{"init new", []string{"new/build.toml", "new/readings.csv"}},
}

// Nothing that exists is written over without --force, and every file in the
// way is named; a run that is interrupted before it writes leaves all as it was.
func TestNothingIsWrittenOver(t *testing.T) {
	for _, w := range writers {
		t.Run(w.line, func(t *testing.T) {
			dir := t.TempDir()
			require.NoError(t, os.CopyFS(dir, os.DirFS("../../testdata/builds/bass_five")))
			for _, name := range w.targets {
				require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o755))
				require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("old"), 0o644))
			}
			before := snapshot(t, dir)
			e := process(t, dir, w.line, nil)
			assert.Equal(t, exitInput, e.code)
			assert.Empty(t, e.out)
			for _, name := range w.targets {
				assert.Contains(t, e.err, name+": the file exists already; name another, or say --force to replace it\n")
			}
			assert.Equal(t, before, snapshot(t, dir))

			t.Chdir(dir)
			ctx, cancel := context.WithCancel(t.Context())
			cancel()
			var out, errOut bytes.Buffer
			assert.Equal(t, exitInterrupted, run(ctx, strings.Fields(w.line+" --force"), &out, &errOut))
			assert.Contains(t, errOut.String(), "interrupted; nothing was written\n")
			assert.Equal(t, before, snapshot(t, dir))

			e = process(t, dir, w.line+" --force", nil)
			assert.Equal(t, exitDone, e.code, e.err)
			for _, name := range w.targets {
				text, err := os.ReadFile(filepath.Join(dir, name))
				require.NoError(t, err)
				assert.NotEqual(t, "old", string(text))
			}
		})
	}
}

// What this run has read is not written over, with --force neither.
func TestInputsAreNotWrittenOver(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../testdata/builds/bass_five")))
	require.NoError(t, os.Symlink("readings.csv", filepath.Join(dir, "fit.svg")))
	before := snapshot(t, dir)
	e := process(t, dir, "gauges --plot fit.svg --force", nil)
	assert.Equal(t, exitInput, e.code)
	assert.Contains(t, e.err, "fit.svg: this run reads that file, and does not write over it; name another file\n")
	assert.Equal(t, before, snapshot(t, dir))
}
