package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// folder lists a folder's files with what they hold.
func folder(t *testing.T, dir string) map[string]string {
	t.Helper()
	found, err := os.ReadDir(dir)
	require.NoError(t, err)
	out := map[string]string{}
	for _, f := range found {
		text, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if f.IsDir() {
			out[f.Name()] = "folder"
			continue
		}
		require.NoError(t, err)
		out[f.Name()] = string(text)
	}
	return out
}

func TestFilesAreWrittenTogether(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.WriteFile(at("a"), []byte("old"), 0o600))
	a := &app{}
	files := []newFile{{at("a"), []byte("new a")}, {at("b"), []byte("new b")}, {at("c"), []byte("new c")}}
	assert.ErrorContains(t, a.writeFiles(files, false), "the file exists already")
	assert.Equal(t, map[string]string{"a": "old"}, folder(t, dir))
	require.NoError(t, a.writeFiles(files, true))
	assert.Equal(t, map[string]string{"a": "new a", "b": "new b", "c": "new c"}, folder(t, dir))
	info, err := os.Stat(at("a"))
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), "a file keeps its rights")
}

// Every place that cannot be written is named, and nothing is left behind.
func TestFilesThatCannotBeStaged(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.Mkdir(at("d"), 0o755))
	err := (&app{}).writeFiles([]newFile{{at("a"), nil}, {at("d"), nil}, {at("none/b"), nil}}, true)
	assert.ErrorContains(t, err, "there is a folder of that name")
	assert.ErrorContains(t, err, "there is no such folder")
	assert.Equal(t, map[string]string{"d": "folder"}, folder(t, dir))
}

// When the last file cannot be moved, those before it are as they were.
func TestFilesThatCannotBeMoved(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.WriteFile(at("a"), []byte("old"), 0o644))
	staged, err := stage([]newFile{{at("a"), []byte("new a")}, {at("b"), []byte("new b")}, {at("c"), []byte("new c")}})
	require.NoError(t, err)
	require.NoError(t, os.Mkdir(at("c"), 0o755)) // comes between staging and moving
	require.Error(t, staged.place())
	staged.clear()
	assert.Equal(t, map[string]string{"a": "old", "c": "folder"}, folder(t, dir))
}
