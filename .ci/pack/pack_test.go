package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stage writes a staging folder; files are touched at different times and made
// in another order in each.
func stage(t *testing.T, names []string, touched time.Time) string {
	t.Helper()
	root := t.TempDir()
	for _, name := range names {
		path := filepath.Join(root, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		mode := os.FileMode(0o640)
		if filepath.Base(name) == "program" {
			mode = 0o750
		}
		require.NoError(t, os.WriteFile(path, []byte("text of "+name), mode))
		require.NoError(t, os.Chtimes(path, touched, touched))
	}
	return root
}

func TestSameBytesTwice(t *testing.T) {
	names := []string{"a-linux/program", "a-linux/b.txt", "a-linux/man/x.1", "a-windows/program", "a-windows/b.txt"}
	backwards := []string{names[4], names[3], names[2], names[1], names[0]}
	one, two := t.TempDir(), t.TempDir()
	require.NoError(t, pack(stage(t, names, time.Now()), one))
	require.NoError(t, pack(stage(t, backwards, time.Now().Add(-time.Hour)), two))
	for _, name := range []string{"a-linux.tar.gz", "a-windows.zip", "SHA256SUMS"} {
		first, err := os.ReadFile(filepath.Join(one, name))
		require.NoError(t, err)
		second, err := os.ReadFile(filepath.Join(two, name))
		require.NoError(t, err)
		assert.Equal(t, first, second, name)
	}
	archive, err := os.ReadFile(filepath.Join(one, "a-windows.zip"))
	require.NoError(t, err)
	sums, err := os.ReadFile(filepath.Join(one, "SHA256SUMS"))
	require.NoError(t, err)
	assert.Contains(t, string(sums), fmt.Sprintf("%x  a-windows.zip\n", sha256.Sum256(archive)))
}

func TestArchivesReadBack(t *testing.T) {
	out := t.TempDir()
	require.NoError(t, pack(stage(t, []string{"a-linux/program", "a-linux/b.txt", "w-windows/program"}, time.Now()), out))

	f, err := os.Open(filepath.Join(out, "a-linux.tar.gz"))
	require.NoError(t, err)
	defer f.Close()
	z, err := gzip.NewReader(f)
	require.NoError(t, err)
	unpack := tar.NewReader(z)
	for _, want := range []struct {
		name string
		mode int64
	}{{"a-linux/b.txt", 0o644}, {"a-linux/program", 0o755}} {
		h, err := unpack.Next()
		require.NoError(t, err)
		text, err := io.ReadAll(unpack)
		require.NoError(t, err)
		assert.Equal(t, want.name, h.Name)
		assert.Equal(t, want.mode, h.Mode)
		assert.True(t, h.ModTime.Equal(stamp), h.ModTime)
		assert.Equal(t, "text of "+want.name, string(text))
	}
	_, err = unpack.Next()
	assert.Equal(t, io.EOF, err)

	files, err := zip.OpenReader(filepath.Join(out, "w-windows.zip"))
	require.NoError(t, err)
	defer files.Close()
	require.Len(t, files.File, 1)
	assert.Equal(t, "w-windows/program", files.File[0].Name)
	assert.Equal(t, os.FileMode(0o755), files.File[0].Mode())
	assert.True(t, files.File[0].Modified.Equal(stamp), files.File[0].Modified)
	r, err := files.File[0].Open()
	require.NoError(t, err)
	text, err := io.ReadAll(r)
	require.NoError(t, err)
	assert.Equal(t, "text of w-windows/program", string(text))
}

func TestRefusals(t *testing.T) {
	assert.ErrorContains(t, pack(t.TempDir(), t.TempDir()), "no folder")
	assert.ErrorContains(t, pack(stage(t, []string{"loose"}, time.Now()), t.TempDir()), "not a folder")
	linked := stage(t, []string{"a/b"}, time.Now())
	require.NoError(t, os.Symlink("b", filepath.Join(linked, "a", "link")))
	assert.ErrorContains(t, pack(linked, t.TempDir()), "no plain file")
}
