//go:build linux || darwin

package main

import (
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Of several runs at once that write files of the same names, one does where
// nothing may be replaced, and the others say so; with --force each does, and
// the last to come stays. No file is a mixture.
func TestSeveralRunsAtOnce(t *testing.T) {
	w := writers[2]
	before, after := w.undisturbed(t)
	for _, force := range []bool{false, true} {
		dir := t.TempDir()
		w.lay(t, dir)
		line := w.args
		if !force {
			line = strings.ReplaceAll(strings.ReplaceAll(w.args, "bench.html", "new.html"), " --force", "")
		}
		runs := make([]ended, 6)
		var all sync.WaitGroup
		for i := range runs {
			all.Go(func() { runs[i] = runIn(t, dir, strings.Fields(line)...) })
		}
		all.Wait()
		done := 0
		for _, e := range runs {
			if e.code == exitDone {
				done++
				continue
			}
			assert.Equal(t, exitInput, e.code)
			assert.Regexp(t, `(?m)^new\.html: (the file exists already|a file of that name has come meanwhile); `, e.err)
		}
		found := filesOf(t, dir)
		if force {
			assert.Equal(t, len(runs), done)
			assert.Equal(t, after, found)
			continue
		}
		assert.Equal(t, 1, done)
		assert.Equal(t, after["bench.html"], found["new.html"])
		delete(found, "new.html")
		assert.Equal(t, before, found)
	}
}
