package show_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/show"
)

func TestConsoleNeedsASCII(t *testing.T) {
	for name, c := range map[string]struct {
		env  map[string]string
		goos string
		page int
		want bool
	}{
		"windows utf-8":             {nil, "windows", 65001, false},
		"windows western":           {nil, "windows", 1252, true},
		"windows old":               {nil, "windows", 850, true},
		"windows without console":   {nil, "windows", 0, true},
		"windows ignores LANG":      {map[string]string{"LANG": "en_GB.UTF-8"}, "windows", 437, true},
		"utf-8 locale":              {map[string]string{"LANG": "en_GB.UTF-8"}, "linux", 0, false},
		"utf8 spelt short":          {map[string]string{"LANG": "de_DE.utf8"}, "darwin", 0, false},
		"latin locale":              {map[string]string{"LANG": "de_DE.ISO-8859-1"}, "linux", 0, true},
		"LC_ALL goes before":        {map[string]string{"LC_ALL": "C", "LC_CTYPE": "en_GB.UTF-8", "LANG": "en_GB.UTF-8"}, "linux", 0, true},
		"LC_CTYPE goes before LANG": {map[string]string{"LC_CTYPE": "C.UTF-8", "LANG": "C"}, "linux", 0, false},
		"nothing set":               {nil, "linux", 0, true},
	} {
		t.Run(name, func(t *testing.T) {
			env := func(k string) string { return c.env[k] }
			assert.Equal(t, c.want, show.ConsoleNeedsASCII(env, c.goos, func() int { return c.page }))
		})
	}
}

func TestFileIsNoTerminal(t *testing.T) {
	t.Setenv("COLUMNS", "44")
	f, err := os.Create(filepath.Join(t.TempDir(), "out"))
	require.NoError(t, err)
	defer f.Close()
	assert.False(t, show.IsTerminal(f))
	assert.Zero(t, show.TerminalWidth(f))
	latin := func(k string) string { return map[string]string{"LANG": "C"}[k] }
	assert.Equal(t, show.Options{Width: 80}, show.ForConsole(f, latin), "files and pipes are 80 wide, UTF-8, without colour")
}
