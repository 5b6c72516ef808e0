package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReadNamesEveryBadLine(t *testing.T) {
	path := filepath.Join(t.TempDir(), "errors.txt")
	require.NoError(t, os.WriteFile(path, []byte("# head\n\na.go | x || y | x && y | and for or\nb.go | x\n"), 0o600))
	_, err := read(path)
	assert.ErrorContains(t, err, "errors.txt:4: wants")
	require.NoError(t, os.WriteFile(path, []byte("a.go | x || y | x && y | and for or\n"), 0o600))
	list, err := read(path)
	require.NoError(t, err)
	assert.Equal(t, []slip{{"a.go | x || y | x && y | and for or", "a.go", "x || y", "x && y", "and for or"}}, list)
}

func TestAnErrorStandsInOnePlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.go")
	require.NoError(t, os.WriteFile(path, []byte("a + b, a - b, a * b"), 0o600))
	text, err := slip{file: path, old: "a - b", new: "b - a"}.changed()
	require.NoError(t, err)
	assert.Equal(t, "a + b, b - a, a * b", text)
	for _, bad := range []string{"b, a", "c"} {
		_, err = slip{file: path, old: bad}.changed()
		assert.ErrorContains(t, err, "times, not once")
	}
}

func TestASampleGoesRound(t *testing.T) {
	list := []slip{{what: "a"}, {what: "b"}, {what: "c"}}
	assert.Equal(t, []slip{{what: "c"}, {what: "a"}}, ofDay(list, 2, 1))
	assert.Len(t, ofDay(list, 9, 7), 3)
}

// The list itself fits the code: run by "go test ./.ci/mutate" from the top.
func TestTheListFits(t *testing.T) {
	t.Chdir("../..")
	list, err := read(listFile)
	require.NoError(t, err)
	assert.GreaterOrEqual(t, len(list), 25)
	for _, e := range list {
		_, err := e.changed()
		assert.NoError(t, err)
	}
}
