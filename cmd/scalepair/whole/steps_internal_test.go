package whole

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Three files, of which the second is new: what stood there, what stands there
// when all went well, and the order that leads from one to the other.
var (
	before = map[string]string{"a": "old a", "c": "old c", "other": "a file of the user's"}
	after  = map[string]string{"a": "new a", "b": "new b", "c": "new c", "other": "a file of the user's"}
)

func orderIn(dir string) Order {
	o := Order{Force: true}
	for _, name := range []string{"a", "b", "c"} {
		o.Files = append(o.Files, File{Path: filepath.Join(dir, name), Text: []byte(after[name])})
	}
	return o
}

// everyStep carries the order out again and again, each time on a disk on
// which another step goes wrong, until none does.
func everyStep(t *testing.T, disk trialDisk, check func(t *testing.T, dir string, d *trialDisk, err error)) {
	for at := 0; ; at++ {
		dir := t.TempDir()
		write(t, dir, before)
		d := disk
		d.at = at
		err := orderIn(dir).write(&d)
		if d.failed() == "" {
			require.NoError(t, err)
			assert.Equal(t, after, folder(t, dir))
			require.Greater(t, at, 15, "three files take more steps than that")
			return
		}
		t.Run(fmt.Sprintf("step %d, %s", at, d.failed()), func(t *testing.T) { check(t, dir, &d, err) })
	}
}

// Whichever step fails, the folder is as it was, or all is written: then only
// clearing up, or what does without, may have failed.
func TestEveryStepMayFail(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		t.Run(fmt.Sprintf("without second names %t", noLinks), func(t *testing.T) {
			refused := 0
			everyStep(t, trialDisk{noLinks: noLinks}, func(t *testing.T, dir string, d *trialDisk, err error) {
				if err != nil {
					refused++
					assert.ErrorContains(t, err, "no space left on device")
					assert.Equal(t, before, folder(t, dir))
					return
				}
				assert.Contains(t, []string{"remove", "sync folder", "link"}, d.failed())
				left := ours(folder(t, dir), after)
				if d.failed() != "remove" {
					assert.Empty(t, left)
				}
				assert.LessOrEqual(t, len(left), 1)
			})
			assert.Greater(t, refused, 10)
		})
	}
}

// Whichever step is the last before a power cut, every path holds the old file
// or the new one, what lies beside them is ours by its name, and the next run
// goes well in spite of it.
func TestEveryStepMayBeTheLast(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		t.Run(fmt.Sprintf("without second names %t", noLinks), func(t *testing.T) {
			seen := map[string]int{}
			everyStep(t, trialDisk{dies: true, noLinks: noLinks}, func(t *testing.T, dir string, d *trialDisk, _ error) {
				found := folder(t, dir)
				left := ours(found, after)
				state := ""
				for _, name := range []string{"a", "b", "c"} {
					text, there := found[name]
					old, was := before[name]
					assert.True(t, text == after[name] || text == old && there == was, "%s: %q", name, text)
					state += map[bool]string{true: "new ", false: "old "}[text == after[name]]
				}
				seen[state]++
				for name, text := range left {
					if strings.HasPrefix(name, former) && state != "old old old " {
						assert.Contains(t, []string{"old a", "old c"}, text)
					}
				}
				assert.Equal(t, before["other"], found["other"])
				nextRun(t, dir, left)
			})
			for _, state := range []string{"old old old ", "new old old ", "new new old ", "new new new "} {
				assert.Positive(t, seen[state], state)
			}
			assert.Len(t, seen, 4)
		})
	}
}

// nextRun goes well in spite of what was left, and one that comes later clears
// it, but for old files under another name.
func nextRun(t *testing.T, dir string, left map[string]string) {
	require.NoError(t, orderIn(dir).write(&trialDisk{at: -1}))
	assert.Equal(t, left, ours(folder(t, dir), after), "it may belong to a run that goes on")
	for name := range left {
		long := time.Now().Add(-leftAfter - time.Minute)
		require.NoError(t, os.Chtimes(filepath.Join(dir, name), long, long))
	}
	require.NoError(t, orderIn(dir).write(&trialDisk{at: -1}))
	for name := range ours(folder(t, dir), after) {
		assert.True(t, strings.HasPrefix(name, former), name)
	}
}

// ours gives what a folder holds beside what it should, and is empty where all
// of that has the name of a passing file.
func ours(found, wanted map[string]string) map[string]string {
	left := map[string]string{}
	for name, text := range found {
		if _, known := wanted[name]; known {
			continue
		}
		if !strings.HasPrefix(name, unfinished) && !strings.HasPrefix(name, former) {
			panic("a file that nobody knows: " + name)
		}
		left[name] = text
	}
	return left
}

// An interrupt before the first move leaves nothing; none is heard after it.
func TestStopped(t *testing.T) {
	stop := errors.New("stopped")
	for at := 1; ; at++ {
		dir := t.TempDir()
		write(t, dir, before)
		o, asked := orderIn(dir), 0
		o.Stopped = func() error {
			if asked++; asked == at {
				assert.NotContains(t, folder(t, dir), "b", "nothing has been moved yet")
				return stop
			}
			return nil
		}
		err := o.write(&trialDisk{at: -1})
		if asked < at {
			require.NoError(t, err)
			assert.Equal(t, after, folder(t, dir))
			assert.Greater(t, at, 5)
			return
		}
		assert.ErrorIs(t, err, stop)
		assert.Equal(t, before, folder(t, dir))
	}
}

// When the program cannot put an old file back, it says where that is.
func TestOldFileThatCannotBePutBack(t *testing.T) {
	told := 0
	everyStep(t, trialDisk{dies: true}, func(t *testing.T, dir string, d *trialDisk, err error) {
		if found := folder(t, dir); found["b"] != "new b" || found["c"] == "new c" {
			return
		}
		told++ // a and b are moved, c cannot be
		lines := strings.Split(strings.ReplaceAll(err.Error(), dir+string(filepath.Separator), ""), "\n")
		require.Len(t, lines, 3)
		a, kept, _ := strings.Cut(lines[0], former)
		assert.Equal(t, "a: the new file stands here, and the old one cannot be put back: no space left on device; it is kept as ", a)
		assert.Equal(t, "b: the new file stands here, and cannot be taken away: no space left on device; remove it", lines[1])
		assert.Equal(t, "c: the file cannot be put in its place: no space left on device; close the program that holds it open, or name another file", lines[2])
		assert.Equal(t, "old a", folder(t, dir)[former+kept])
	})
	assert.Positive(t, told)
}
