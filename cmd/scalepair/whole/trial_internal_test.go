package whole

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// trialDisk is the real disk, but its step number at, counted from 0, fails
// after half of what it has to write. Where dies is set the program ends there:
// no later step does anything, clearing up included.
type trialDisk struct {
	osDisk
	at      int
	dies    bool
	noLinks bool   // a file system without second names
	before  func() // done before the first move
	steps   []string
}

func (d *trialDisk) step(name string) error {
	n := len(d.steps)
	d.steps = append(d.steps, name)
	if n == d.at || d.dies && n > d.at {
		return syscall.ENOSPC
	}
	return nil
}

// failed names the step that failed; "" for none.
func (d *trialDisk) failed() string {
	if d.at < 0 || d.at >= len(d.steps) {
		return ""
	}
	return d.steps[d.at]
}

func (d *trialDisk) create(path string, mode fs.FileMode) (openFile, error) {
	if err := d.step("create"); err != nil {
		return nil, err
	}
	f, err := d.osDisk.create(path, mode)
	return &trialFile{f, d}, err
}

func (d *trialDisk) link(from, to string) error {
	d.moves(from)
	if err := d.step("link"); err != nil {
		return err
	}
	if d.noLinks {
		return syscall.EPERM
	}
	return d.osDisk.link(from, to)
}

func (d *trialDisk) rename(from, to string) error {
	d.moves(from)
	if err := d.step("rename"); err != nil {
		return err
	}
	return d.osDisk.rename(from, to)
}

func (d *trialDisk) moves(from string) {
	if d.before != nil && strings.HasPrefix(filepath.Base(from), unfinished) {
		d.before()
		d.before = nil
	}
}

func (d *trialDisk) remove(path string) error {
	if err := d.step("remove"); err != nil {
		return err
	}
	return d.osDisk.remove(path)
}

func (d *trialDisk) mkdir(path string) error {
	if err := d.step("mkdir"); err != nil {
		return err
	}
	return d.osDisk.mkdir(path)
}

func (d *trialDisk) syncFolder(string) error {
	return d.step("sync folder") // a disk that takes its time would take the test's
}

type trialFile struct {
	openFile
	disk *trialDisk
}

func (f *trialFile) Write(text []byte) (int, error) {
	if err := f.disk.step("write"); err != nil {
		if f.disk.failed() == "write" {
			_, _ = f.openFile.Write(text[:len(text)/2])
		}
		return len(text) / 2, err
	}
	return f.openFile.Write(text)
}

func (f *trialFile) Chmod(mode fs.FileMode) error {
	if err := f.disk.step("chmod"); err != nil {
		return err
	}
	return f.openFile.Chmod(mode)
}

func (f *trialFile) Sync() error {
	return f.disk.step("sync")
}

func (f *trialFile) Close() error {
	err := f.disk.step("close")
	_ = f.openFile.Close() // the system closes what a dead program had open
	return err
}

// folder lists a folder's files with what they hold, below one another.
func folder(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	require.NoError(t, filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		require.NoError(t, err)
		name, err := filepath.Rel(dir, path)
		require.NoError(t, err)
		if e.IsDir() {
			out[name] = "folder"
			return nil
		}
		text, err := os.ReadFile(path)
		out[name] = string(text)
		return err
	}))
	delete(out, ".")
	return out
}

// write puts files into a folder.
func write(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
	}
}
