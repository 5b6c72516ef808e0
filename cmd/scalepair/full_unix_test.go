//go:build linux || darwin

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// limited runs a program under a limit, in bytes, on the size of its files, as
// ulimit -f sets it: writing on fails as on a full disk.
func limited() {
	bytes, err := strconv.ParseUint(os.Args[1], 10, 64)
	if err == nil {
		err = syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: bytes, Max: bytes})
	}
	path, notFound := exec.LookPath(os.Args[2])
	if err != nil || notFound != nil {
		panic(fmt.Sprint(err, notFound))
	}
	panic(syscall.Exec(path, os.Args[2:], os.Environ()))
}

// Wherever the room ends, the old files are whole, nothing lies beside them,
// and every file that has no room is named with what to do.
func TestNoRoom(t *testing.T) {
	for _, w := range writers {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			before, after := w.undisturbed(t)
			dir, most := t.TempDir(), 0
			for _, name := range w.targets {
				most = max(most, len(after[name]))
			}
			for _, room := range w.rooms(after, most) {
				w.lay(t, dir)
				c, out, errOut := process(dir)
				c.Path, c.Args = lookUp(t, "limited"), append([]string{"limited", strconv.Itoa(room), "scalepair"}, w.words()...)
				e := finish(t, c, c.Run(), out, errOut)
				found := filesOf(t, dir)
				state := w.state(t, found, before, after)
				assert.Empty(t, passing(found), "room for %d", room)
				if room >= most {
					assert.Equal(t, []any{exitDone, w.all("new")}, []any{e.code, state}, e.err)
					continue
				}
				assert.Equal(t, []any{exitInput, w.all("old"), ""}, []any{e.code, state, e.out}, "room for %d", room)
				for _, name := range w.targets {
					if len(after[name]) > room {
						assert.Regexp(t, "(?m)^"+regexp.QuoteMeta(name)+": the file cannot be written: file too large; make room there, or name a path on another disk$", e.err)
					}
				}
			}
		})
	}
}

// rooms are limits from nothing up to the largest file, and about the size of
// each.
func (w writer) rooms(after map[string]string, most int) []int {
	out := []int{0, 1, 2, most, most + 1}
	for i := 1; i < 10; i++ {
		out = append(out, most*i/10)
	}
	for _, name := range w.targets {
		out = append(out, len(after[name])-1, len(after[name]))
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func lookUp(t *testing.T, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	require.NoError(t, err)
	return path
}

// A result that goes to a file of the shell's and does not fit is a fault too.
func TestNoRoomForTheResult(t *testing.T) {
	dir := t.TempDir()
	out, err := os.Create(filepath.Join(dir, "layout.json"))
	require.NoError(t, err)
	defer out.Close()
	c, _, errOut := process(dir)
	c.Path, c.Args, c.Stdout = lookUp(t, "limited"), []string{"limited", "1000", "scalepair", "layout", "--format", "json"}, out
	e := finish(t, c, c.Run(), errOut, errOut)
	assert.Equal(t, exitInput, e.code)
	assert.Contains(t, e.err, "standard output: the result cannot be printed: file too large; make room there, or send it elsewhere\n")
}
