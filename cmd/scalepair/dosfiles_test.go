package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Editors on Windows end lines with CR LF and may put a byte order mark before
// the first.
var windowsEditors = map[string]func(string) string{
	"CR LF":                            crlf,
	"byte order mark":                  func(s string) string { return "\ufeff" + s },
	"CR LF behind a byte order mark":   func(s string) string { return "\ufeff" + crlf(s) },
	"CR LF and no end to the last row": func(s string) string { return strings.TrimSuffix(crlf(s), "\r\n") },
}

func crlf(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }

// savedBy copies a build with its readings as an editor would save them.
func savedBy(t *testing.T, build string, editor func(string) string) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"build.toml", "readings.csv"} {
		text, err := os.ReadFile(filepath.Join("../../testdata/builds", build, name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(editor(string(text))), 0o644))
	}
	return filepath.Join(dir, "build.toml")
}

func output(t *testing.T, line ...string) string {
	t.Helper()
	var out, errOut bytes.Buffer
	require.Equal(t, exitDone, run(context.Background(), line, &out, &errOut), errOut.String())
	return out.String()
}

// A build and its readings say the same however the lines end.
func TestFilesSavedOnWindows(t *testing.T) {
	for _, build := range []string{"seven", "eight_inch", "bass_five"} {
		want := output(t, "advise", savedBy(t, build, func(s string) string { return s }))
		assert.NotContains(t, want, "\r")
		for name, editor := range windowsEditors {
			t.Run(build+", "+name, func(t *testing.T) {
				assert.Equal(t, want, output(t, "advise", savedBy(t, build, editor)))
			})
		}
	}
}

// A file keeps its line ends when a choice is saved into it.
func TestSaveKeepsLineEnds(t *testing.T) {
	unix := savedBy(t, "seven", func(s string) string { return s })
	output(t, "advise", unix, "--save", "--trials", "0")
	want, err := os.ReadFile(unix)
	require.NoError(t, err)
	for name, editor := range windowsEditors {
		t.Run(name, func(t *testing.T) {
			path := savedBy(t, "seven", editor)
			output(t, "advise", path, "--save", "--trials", "0")
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			assert.Contains(t, string(text), "[chosen]")
			if strings.Contains(name, "CR LF") {
				assert.Equal(t, strings.Count(string(text), "\n"), strings.Count(string(text), "\r\n"))
			}
			assert.Equal(t, string(want), strings.ReplaceAll(strings.TrimPrefix(string(text), "\ufeff"), "\r\n", "\n"))
			output(t, "tension", path)
		})
	}
}
