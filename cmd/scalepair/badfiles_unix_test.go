//go:build linux || darwin

package main

import (
	"os"
	"path/filepath"
	"strconv"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pipe that nobody writes to does not hold the program.
func TestPipesWithoutAWriter(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	require.NoError(t, syscall.Mkfifo("pipe", 0o644))
	const nothing = "pipe: nothing comes through this pipe; name a file, or start what writes to the pipe first"
	holdsRefusal(t, openFolder(t), nothing, "advise", "pipe")
	holdsRefusal(t, openFolder(t), nothing, "check", "pipe")
	other := readingsAt(t, dir, "pipe")
	code, out, errOut := inTime(t, "gauges", other)
	assert.Equal(t, exitInput, code)
	assert.Empty(t, out)
	assert.Equal(t, nothing+"\n", errOut)
}

// A pipe with a writer is as good as the file: shells make one of <(...).
func TestPipesWithAWriter(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	_, want, _ := inTime(t, "check", "measured.csv")
	text, err := os.ReadFile("measured.csv")
	require.NoError(t, err)
	read, write, err := os.Pipe()
	require.NoError(t, err)
	defer read.Close()
	go func() {
		_, _ = write.Write(text)
		write.Close()
	}()
	code, got, errOut := inTime(t, "check", filepath.Join("/dev/fd", strconv.Itoa(int(read.Fd()))))
	assert.Equal(t, exitDone, code, errOut)
	assert.Equal(t, want, got)
}

func TestLinksThatLeadNowhere(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	require.NoError(t, os.Symlink("gone", "lost"))
	require.NoError(t, os.Symlink("second", "first"))
	require.NoError(t, os.Symlink("first", "second"))
	const (
		lost  = "lost: this link leads to no file; put the file back, or name the file itself"
		round = "first: this link leads round in a circle; remove the link, or name the file itself"
	)
	for _, c := range []struct{ name, want string }{{"lost", lost}, {"first", round}} {
		holdsRefusal(t, dir, c.want, "advise", c.name)
		holdsRefusal(t, dir, c.want, "check", c.name)
		holdsRefusal(t, dir, c.want, "gauges", readingsAt(t, dir, c.name))
	}
}

// A device that never ends is cut off, and one that holds nothing is empty.
func TestDevices(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	const table = ": the file is larger than 4 MB, which no table of this kind is; name the right file, or keep the rows that belong here"
	holdsRefusal(t, dir, "/dev/zero: the file is larger than 1 MB, which no build file is; name the right file", "advise", "/dev/zero")
	holdsRefusal(t, dir, "/dev/zero"+table, "check", "/dev/zero")
	holdsRefusal(t, dir, "/dev/zero"+table, "gauges", readingsAt(t, dir, "/dev/zero"))
	holdsRefusal(t, dir, "/dev/null: the file is empty; it needs a heading row and a row for each entry", "check", "/dev/null")
}

// Files that may not be read, seen by somebody without the right to.
func TestFilesThatMayNotBeRead(t *testing.T) {
	const may = ": the file may not be read; give yourself the right to read it, or copy it"
	v := newVisitor(t)
	for _, c := range []struct{ file, line, want string }{
		{"build.toml", "layout", "build.toml" + may},
		{"build.toml", "advise build.toml", "build.toml" + may},
		{"readings.csv", "gauges", "readings.csv" + may},
		{"readings.csv", "tension", "readings.csv" + may},
		{"measured.csv", "check measured.csv", "measured.csv" + may},
	} {
		t.Run(c.line+" without "+c.file, func(t *testing.T) {
			dir := openFolder(t)
			require.NoError(t, os.CopyFS(dir, os.DirFS(filepath.Join(badFolder, "good"))))
			v.protect(t, dir, 0o755, 0o644)
			require.NoError(t, os.Chmod(filepath.Join(dir, c.file), 0o200))
			e := v.run(t, dir, c.line)
			assert.Equal(t, exitInput, e.code)
			assert.Empty(t, e.out)
			assert.Equal(t, c.want+"\n", e.err)
		})
	}
}
