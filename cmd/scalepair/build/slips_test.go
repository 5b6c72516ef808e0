package build_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/build"
)

var update = flag.Bool("update", false, "write the messages of testdata/bad/builds.txtar")

const (
	slipsFile = "../../../testdata/bad/builds.txtar"
	soundFile = "../../../testdata/bad/good/build.toml"
)

// slip is one entry of the archive: texts of the sound build and what stands in
// their place.
type slip struct {
	edits   [][2]string
	message string
}

func parseSlip(text string) slip {
	var s slip
	adding := true
	for line := range strings.Lines(text) {
		switch sign, rest := line[0], line[1:]; sign {
		case '-':
			if adding {
				s.edits = append(s.edits, [2]string{})
			}
			s.edits[len(s.edits)-1][0] += rest
			adding = false
		case '+':
			s.edits[len(s.edits)-1][1] += rest
			adding = true
		case '>':
			s.message += strings.TrimPrefix(rest, " ")
		}
	}
	return s
}

func (s slip) apply(t *testing.T, sound string) string {
	t.Helper()
	for _, e := range s.edits {
		require.Equal(t, 1, strings.Count(sound, e[0]), "the sound build has this once: %q", e[0])
		sound = strings.Replace(sound, e[0], e[1], 1)
	}
	return sound
}

func sound(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(soundFile)
	require.NoError(t, err)
	return string(text)
}

// Every slip of a builder is refused with the message that stands beside it.
func TestSlips(t *testing.T) {
	good := sound(t)
	_, err := build.Read([]byte(good), "build.toml", nil)
	require.NoError(t, err)
	archive, err := txtar.ParseFile(slipsFile)
	require.NoError(t, err)
	assert.Greater(t, len(archive.Files), 50)
	for i, f := range archive.Files {
		t.Run(f.Name, func(t *testing.T) {
			s := parseSlip(string(f.Data))
			b, err := build.Read([]byte(s.apply(t, good)), "build.toml", nil)
			require.Error(t, err)
			assert.Nil(t, b)
			got := err.Error() + "\n"
			if *update {
				archive.Files[i].Data = withMessage(string(f.Data), got)
				return
			}
			assert.Equal(t, s.message, got)
		})
	}
	if *update {
		require.NoError(t, os.WriteFile(slipsFile, txtar.Format(archive), 0o644))
	}
}

// withMessage puts a message in the place of an entry's own.
func withMessage(entry, message string) []byte {
	var out strings.Builder
	for line := range strings.Lines(entry) {
		if line[0] != '>' {
			out.WriteString(line)
		}
	}
	for line := range strings.Lines(message) {
		out.WriteString("> " + line)
	}
	return []byte(out.String())
}
