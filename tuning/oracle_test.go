package tuning_test

import (
	"bufio"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/tuning"
)

// A general note library has its own reading of note names and its own
// frequencies: it is the second opinion on every spelling, single and double
// accidentals included, over the whole range. Both sides take one power of two,
// hence the tolerance of a few units of the last place.
func TestNotesAgreeWithAGeneralNoteLibrary(t *testing.T) {
	node := testutil.NeedTool(t, "node")
	folder := filepath.Join(testutil.Root(t), ".ci", "oracle")
	testutil.NeedPath(t, filepath.Join(folder, "node_modules"), "run npm ci in "+filepath.Join(".ci", "oracle"))
	names := spellings()
	cmd := exec.Command(node, "pitch.mjs")
	cmd.Dir, cmd.Stdin = folder, strings.NewReader(strings.Join(names, "\n"))
	out, err := cmd.Output()
	require.NoError(t, err)
	compared := 0
	lines := bufio.NewScanner(strings.NewReader(string(out)))
	for lines.Scan() {
		var name string
		var midi int
		var freq float64
		_, err := fmt.Sscan(lines.Text(), &name, &midi, &freq)
		require.NoError(t, err, lines.Text())
		n, err := tuning.ParseNote(name)
		require.NoError(t, err, name)
		assert.Equal(t, midi, n.Semitone, name)
		assert.InEpsilon(t, freq, n.Pitch(tuning.ConcertA).Hz(), 4*0x1p-52, name)
		assert.Equal(t, name, n.String())
		compared++
	}
	assert.Equal(t, len(names), compared)
	assert.Greater(t, compared, 350)
}

// spellings returns every letter with up to two accidentals in every octave whose
// note lies within C-1 to G9.
func spellings() []string {
	var out []string
	for octave := -1; octave <= 9; octave++ {
		for _, letter := range "CDEFGAB" {
			for _, accidental := range []string{"", "#", "b", "##", "bb"} {
				name := fmt.Sprintf("%c%s%d", letter, accidental, octave)
				if _, err := tuning.ParseNote(name); err == nil {
					out = append(out, name)
				}
			}
		}
	}
	return out
}
