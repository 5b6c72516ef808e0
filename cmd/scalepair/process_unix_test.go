//go:build linux || darwin

package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ended is how a process ended and what it said.
type ended struct {
	out, err string
	code     int            // -1 where a signal ended it
	signal   syscall.Signal // 0 where none did
}

// process makes a run of the program in a folder, as a shell would start it.
func process(dir string, args ...string) (*exec.Cmd, *bytes.Buffer, *bytes.Buffer) {
	var out, errOut bytes.Buffer
	c := exec.Command("scalepair", args...)
	c.Dir, c.Stdout, c.Stderr = dir, &out, &errOut
	return c, &out, &errOut
}

// runIn runs the program in a folder to its end.
func runIn(t *testing.T, dir string, args ...string) ended {
	t.Helper()
	c, out, errOut := process(dir, args...)
	return finish(t, c, c.Run(), out, errOut)
}

func finish(t *testing.T, c *exec.Cmd, err error, out, errOut *bytes.Buffer) ended {
	t.Helper()
	if c.ProcessState == nil {
		require.NoError(t, err)
	}
	assert.NotContains(t, errOut.String(), "goroutine", "a bug, and not an error")
	e := ended{out: out.String(), err: errOut.String(), code: c.ProcessState.ExitCode()}
	if s := c.ProcessState.Sys().(syscall.WaitStatus); s.Signaled() {
		e.signal = s.Signal()
	}
	return e
}

// helpers run under their own names, as the program does.
func init() {
	programs["limited"], programs["stubborn"] = limited, stubborn
}

// writer is a command line that writes files into a folder where others of
// that name stand.
type writer struct {
	name, args string
	targets    []string
}

// writers are all the ways in which the program writes files.
var writers = []writer{
	{"a set of drawings", "draw --bass 914mm --treble 851mm --force --out fan.pdf --out fan.svg --out fan.dxf", []string{"fan.pdf", "fan.svg", "fan.dxf"}},
	{"the build file itself", "advise --save --force --trials 0", []string{"build.toml"}},
	{"a sheet", "sheet --bass 914mm --treble 851mm --force --out bench.html", []string{"bench.html"}},
	{"a plot", "gauges --plot fit.svg --force", []string{"fit.svg"}},
	{"files to begin with", "init new --force", []string{"new/build.toml", "new/readings.csv"}},
}

func (w writer) words() []string { return strings.Fields(w.args) }

// lay puts the build and the old files into a folder, and gives what it then
// holds.
func (w writer) lay(t *testing.T, dir string) map[string]string {
	t.Helper()
	for _, name := range []string{"build.toml", "readings.csv"} {
		text, err := os.ReadFile(filepath.Join("../../testdata/builds/bass_five", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), text, 0o644))
	}
	for _, name := range w.targets {
		if name == "build.toml" {
			continue
		}
		require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("the old "+name+"\n"), 0o644))
	}
	return filesOf(t, dir)
}

// undisturbed gives what the folder holds before a run and after one that
// nothing disturbs. Both hold the same names, and only the targets differ.
func (w writer) undisturbed(t *testing.T) (before, after map[string]string) {
	t.Helper()
	dir := t.TempDir()
	before = w.lay(t, dir)
	e := runIn(t, dir, w.words()...)
	require.Equal(t, exitDone, e.code, e.err)
	after = filesOf(t, dir)
	for name := range after {
		assert.Contains(t, before, name)
		assert.Equal(t, slices.Contains(w.targets, name), before[name] != after[name], name)
	}
	return before, after
}

// filesOf gives what every file of a folder holds, and of those in it.
func filesOf(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		name, err := filepath.Rel(dir, path)
		require.NoError(t, err)
		text, err := os.ReadFile(path)
		out[filepath.ToSlash(name)] = string(text)
		return err
	}))
	return out
}

// passing gives the names of the passing files among those of a folder.
func passing(files map[string]string) []string {
	var out []string
	for name := range files {
		if strings.HasPrefix(filepath.Base(name), ".scalepair-") {
			out = append(out, name)
		}
	}
	return out
}

// state tells of every target whether it is old or new; it fails the test where
// one is neither, and where anything but the targets has changed.
func (w writer) state(t *testing.T, found, before, after map[string]string) string {
	t.Helper()
	out := ""
	for name := range before {
		text, there := found[name]
		switch {
		case !slices.Contains(w.targets, name):
			assert.Equal(t, before[name], text, name)
		case !there, text != before[name] && text != after[name]:
			assert.Fail(t, "neither old nor new", "%s holds %d bytes: %q", name, len(text), text[:min(len(text), 200)])
		}
	}
	for _, name := range w.targets {
		out += map[bool]string{true: "old ", false: "new "}[found[name] == before[name]]
	}
	assert.Len(t, found, len(before)+len(passing(found)), "there are files that nobody knows")
	return strings.TrimSpace(out)
}

// all is the state in which every target is old, or new.
func (w writer) all(which string) string {
	return strings.TrimSpace(strings.Repeat(which+" ", len(w.targets)))
}

func (e ended) String() string { return fmt.Sprintf("exit %d, signal %d: %s", e.code, e.signal, e.err) }
