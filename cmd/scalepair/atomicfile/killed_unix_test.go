//go:build unix

package atomicfile_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/atomicfile"
	"scalepair/data/testutil"
)

// The two texts that a writer puts in place in turn: large, so that a kill finds
// it writing, and each of one letter, so that a mixture shows.
var texts = [2]string{strings.Repeat("a", 1<<20), strings.Repeat("b", 1<<20)}

// TestMain writes without end where it was started to be killed.
func TestMain(m *testing.M) {
	if path := os.Getenv("WRITE_UNTIL_KILLED"); path != "" {
		for i := 0; ; i++ {
			if err := atomicfile.Write(path, []byte(texts[i%2]), true); err != nil {
				panic(err)
			}
		}
	}
	os.Exit(m.Run())
}

// A writer that is killed, at whatever moment, leaves a whole file, and no more
// than one unfinished one beside it.
func TestKilledWhileWriting(t *testing.T) {
	here, err := os.Executable()
	require.NoError(t, err)
	for n := range testutil.Times(200, 10) {
		dir := t.TempDir()
		path := filepath.Join(dir, "a.txt")
		require.NoError(t, os.WriteFile(path, []byte(texts[0]), 0o644))
		c := exec.Command(here)
		c.Env = append(os.Environ(), "WRITE_UNTIL_KILLED="+path)
		require.NoError(t, c.Start())
		time.Sleep(20*time.Millisecond + time.Duration(n)*time.Millisecond/3)
		require.NoError(t, c.Process.Kill())
		_ = c.Wait()
		assert.Contains(t, texts, read(t, path), "run %d", n)
		entries, err := os.ReadDir(dir)
		require.NoError(t, err)
		assert.LessOrEqual(t, len(entries), 2)
	}
}
