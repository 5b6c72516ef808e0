//go:build unix

package whole

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The rights of a new file are what the umask leaves of rw-rw-rw-; one that is
// replaced keeps its own.
func TestRights(t *testing.T) {
	for _, umask := range []int{0o022, 0o002, 0o077} {
		t.Run(fmt.Sprintf("umask %03o", umask), func(t *testing.T) {
			dir := t.TempDir()
			write(t, dir, before)
			require.NoError(t, os.Chmod(filepath.Join(dir, "a"), 0o600))
			require.NoError(t, os.Chmod(filepath.Join(dir, "c"), 0o664))
			defer syscall.Umask(syscall.Umask(umask))
			require.NoError(t, orderIn(dir).Write())
			for name, want := range map[string]fs.FileMode{"a": 0o600, "b": 0o666 &^ fs.FileMode(umask), "c": 0o664} {
				info, err := os.Stat(filepath.Join(dir, name))
				require.NoError(t, err)
				assert.Equal(t, want, info.Mode().Perm(), name)
			}
		})
	}
}

// Whoever may give files away gives them to whom they belonged.
func TestOwner(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("needs the rights of root")
	}
	dir := t.TempDir()
	write(t, dir, before)
	require.NoError(t, os.Chown(filepath.Join(dir, "a"), 65534, 65533))
	require.NoError(t, os.Chmod(filepath.Join(dir, "a"), 0o640))
	require.NoError(t, orderIn(dir).Write())
	info, err := os.Stat(filepath.Join(dir, "a"))
	require.NoError(t, err)
	uid, gid, ok := ownerOf(info)
	require.True(t, ok)
	assert.Equal(t, []int{65534, 65533}, []int{uid, gid})
	assert.Equal(t, fs.FileMode(0o640), info.Mode().Perm())
}

// grudgingFile cannot be given away.
type grudgingFile struct {
	openFile
	mode fs.FileMode
}

func (f *grudgingFile) Chown(int, int) error         { return syscall.EPERM }
func (f *grudgingFile) Chmod(mode fs.FileMode) error { f.mode = mode; return nil }

// Where the group cannot be kept, ours must not see more than all the world.
func TestGroupThatCannotBeKept(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x")
	for was, want := range map[fs.FileMode]fs.FileMode{0o640: 0o600, 0o664: 0o644, 0o666: 0o666, 0o604: 0o604, 0o600: 0o600} {
		require.NoError(t, os.WriteFile(path, nil, 0o600))
		require.NoError(t, os.Chmod(path, was))
		info, err := os.Stat(path)
		require.NoError(t, err)
		f := &grudgingFile{}
		require.NoError(t, keepRights(f, info))
		assert.Equal(t, want, f.mode, "of %o", was)
	}
}

// While it is unfinished a file shows no more than the one it replaces.
func TestUnfinishedFileIsPrivate(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, before)
	require.NoError(t, os.Chmod(filepath.Join(dir, "a"), 0o600))
	d := &trialDisk{dies: true, at: 1} // created, and no more
	require.Error(t, orderIn(dir).write(d))
	for name := range ours(folder(t, dir), after) {
		info, err := os.Stat(filepath.Join(dir, name))
		require.NoError(t, err)
		assert.Equal(t, fs.FileMode(0o600), info.Mode().Perm())
	}
	assert.Equal(t, []string{"create", "write"}, d.steps[:2])
}
