//go:build linux || darwin

package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nobody is a user without any rights.
const nobody = 65534

// visitor runs the program as somebody who must keep to the rights of files,
// which an administrator need not.
type visitor struct {
	program string
	root    bool
}

func newVisitor(t *testing.T) visitor {
	t.Helper()
	v := visitor{root: os.Geteuid() == 0, program: filepath.Join(openFolder(t), "scalepair")}
	from, err := os.Open(lookUp(t, "scalepair"))
	require.NoError(t, err)
	defer from.Close()
	to, err := os.OpenFile(v.program, os.O_WRONLY|os.O_CREATE, 0o755)
	require.NoError(t, err)
	_, err = io.Copy(to, from)
	require.NoError(t, err)
	require.NoError(t, to.Close())
	return v
}

// openFolder is a folder that everybody can reach.
func openFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.Chmod(dir, 0o755))
	require.NoError(t, os.Chmod(filepath.Dir(dir), 0o755))
	return dir
}

func (v visitor) run(t *testing.T, dir, line string) ended {
	t.Helper()
	c, out, errOut := process(dir)
	c.Path, c.Args, c.Err = v.program, append([]string{"scalepair"}, strings.Fields(line)...), nil
	v.as(c)
	return finish(t, c, c.Run(), out, errOut)
}

func (v visitor) as(c *exec.Cmd) {
	if v.root {
		c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
}

// protect gives the files of a folder, and the folders in it, to the visitor
// with these rights; the folder itself has its own.
func (v visitor) protect(t *testing.T, dir string, folders, files os.FileMode) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		require.NoError(t, err)
		mode := files
		if e.IsDir() {
			mode = folders
			t.Cleanup(func() { _ = os.Chmod(path, 0o755) })
		}
		if v.root {
			require.NoError(t, os.Chown(path, nobody, nobody))
		}
		return os.Chmod(path, mode)
	}))
}

// In a folder or over a file that does not allow writing nothing is changed,
// with --force neither, and the message says what forbids it.
func TestProtectedFilesAndFolders(t *testing.T) {
	v := newVisitor(t)
	for _, w := range writers {
		for _, c := range []struct {
			name           string
			folders, files os.FileMode
			wants          string
		}{
			{"folder", 0o555, 0o644, "the folder does not allow writing; name a path in a folder of yours"},
			{"file", 0o755, 0o444, "the file is protected against writing; allow it, or name another file"},
		} {
			t.Run(w.name+", "+c.name, func(t *testing.T) {
				dir := openFolder(t)
				before := w.lay(t, dir)
				v.protect(t, dir, c.folders, c.files)
				e := v.run(t, dir, w.args)
				assert.Equal(t, exitInput, e.code)
				assert.Empty(t, e.out)
				for _, name := range w.targets {
					assert.Contains(t, e.err, name+": "+c.wants+"\n")
				}
				assert.Equal(t, before, filesOf(t, dir))
			})
		}
	}
}

// reads are command lines of every command that writes no file: they must do
// where nothing may be written.
var reads = map[string][]string{
	"advise": {"advise --trials 0", "advise --front --format json"}, "tension": {"tension"}, "layout": {"layout --bass 914mm --treble 851mm"},
	"gauges": {"gauges", "gauges --format html"}, "compare": {"compare"}, "explain": {"explain 1"},
	"weigh": {"weigh"}, "setout": {"setout"}, "check": {"check --form"}, "neutral": {"neutral"}, "help": {"help advise"},
	"version": {"version"}, "completion": {"completion bash"},
	"draw": {"draw --help"}, "sheet": {"sheet --help"}, "init": {"init --help"}, // they only write
}

// A command that has no file to write opens none for writing, least of all the
// build and its readings: all goes well where nothing may be written. Where a
// file is written, the others are as they were: see writer.state.
func TestReadingChangesNothing(t *testing.T) {
	v := newVisitor(t)
	dir := openFolder(t)
	before := writers[0].lay(t, dir)
	v.protect(t, dir, 0o555, 0o444)
	for _, c := range tree().Commands() {
		require.Contains(t, reads, c.Name())
	}
	for _, lines := range reads {
		for _, line := range lines {
			t.Run(line, func(t *testing.T) {
				e := v.run(t, dir, line)
				assert.Equal(t, exitDone, e.code, e.err)
				assert.NotEmpty(t, e.out)
				assert.Equal(t, before, filesOf(t, dir))
			})
		}
	}
}
