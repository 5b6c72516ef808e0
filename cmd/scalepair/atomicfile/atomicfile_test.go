package atomicfile_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/atomicfile"
)

func read(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

func TestWrite(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.txt")
	require.NoError(t, atomicfile.Write(path, []byte("old"), false))
	assert.Equal(t, "old", read(t, path))

	assert.EqualError(t, atomicfile.Write(path, []byte("new"), false), path+": the file exists already; name another, or say --force to replace it")
	assert.Equal(t, "old", read(t, path))

	require.NoError(t, os.Chmod(path, 0o600))
	require.NoError(t, atomicfile.Write(path, []byte("new"), true))
	assert.Equal(t, "new", read(t, path))
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), "rights stay")

	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, entries, 1, "nothing is left beside it")
}

func TestALinkIsFollowed(t *testing.T) {
	dir := t.TempDir()
	path, link := filepath.Join(dir, "a.txt"), filepath.Join(dir, "link")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o644))
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	require.NoError(t, atomicfile.Write(link, []byte("new"), true))
	assert.Equal(t, "new", read(t, path))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink)
}

func TestWriteRefuses(t *testing.T) {
	dir := t.TempDir()
	protected := filepath.Join(dir, "protected")
	require.NoError(t, os.WriteFile(protected, []byte("mine"), 0o444))
	for path, want := range map[string]string{
		"-":                               "nothing is written to the screen here; name a file in a folder of yours",
		dir:                               "a folder or device of that name exists; name another file",
		protected:                         "the file is protected against writing; allow it, or name another file",
		filepath.Join(dir, "no", "a.txt"): "the file cannot be written: no such file or directory; name a path in a folder of yours",
	} {
		assert.EqualError(t, atomicfile.Write(path, []byte("new"), true), path+": "+want)
	}
	assert.Equal(t, "mine", read(t, protected))
}
