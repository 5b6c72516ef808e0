//go:build linux || darwin

package main

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// blow ends a run from outside, some time after it began, or after it was seen
// to write.
type blow struct {
	signal  syscall.Signal
	onSight bool
	after   time.Duration
}

// strike runs the command and ends it with a blow, or lets it end before.
func (w writer) strike(t *testing.T, dir string, b blow) ended {
	t.Helper()
	c, out, errOut := process(dir, w.words()...)
	require.NoError(t, c.Start())
	over := make(chan struct{})
	var err error
	go func() { err = c.Wait(); close(over) }()
	for folder := filepath.Dir(filepath.Join(dir, w.targets[0])); b.onSight && !writesIn(folder); {
		select {
		case <-over:
			b.onSight = false
		case <-time.After(20 * time.Microsecond):
		}
	}
	select {
	case <-over:
	case <-time.After(b.after):
	}
	_ = c.Process.Signal(b.signal) // fails when the run is over
	<-over
	return finish(t, c, err, out, errOut)
}

// writesIn says whether a run is writing in a folder.
func writesIn(folder string) bool {
	found, _ := os.ReadDir(folder)
	for _, f := range found {
		if strings.HasPrefix(f.Name(), ".scalepair-") {
			return true
		}
	}
	return false
}

// battle is many blows on runs of one command, at moments spread over a run
// and a half of the time that one takes, every third once it is seen to write.
type battle struct {
	writer
	signals       []syscall.Signal
	blows         int
	before, after map[string]string
	dir           string
	rng           *rand.Rand
	takes         time.Duration
	seen          map[string]int
}

func (w writer) battle(t *testing.T, seed uint64, blows int, signals ...syscall.Signal) *battle {
	b := &battle{writer: w, signals: signals, blows: blows, dir: t.TempDir(), rng: rand.New(rand.NewPCG(seed, 0)), seen: map[string]int{}}
	b.before, b.after = w.undisturbed(t)
	began := time.Now()
	w.lay(t, b.dir)
	runIn(t, b.dir, w.words()...)
	b.takes = time.Since(began)
	return b
}

// fight strikes until all blows are struck and each kind of end was seen as
// often as needed, in four times as many at most.
func (b *battle) fight(t *testing.T, needed map[string]int, check func(e ended, found map[string]string) string) {
	for n := 0; n < 4*b.blows && (n < b.blows || !b.enough(needed)); n++ {
		b.lay(t, b.dir)
		blow := blow{signal: b.signals[n%len(b.signals)], onSight: n%3 == 0, after: time.Duration(1.5 * b.rng.Float64() * float64(b.takes))}
		if blow.onSight {
			blow.after /= 15
		}
		began := time.Now()
		e := b.strike(t, b.dir, blow)
		if e.signal == 0 { // the machine's other work slows runs down and lets go of them
			b.takes = (3*b.takes + time.Since(began)) / 4
		}
		b.seen[check(e, filesOf(t, b.dir))]++
		if t.Failed() {
			t.Fatalf("blow %d: %+v, %v", n, blow, e)
		}
	}
	for kind, times := range needed {
		assert.GreaterOrEqual(t, b.seen[kind], times, kind)
	}
	t.Log(b.seen)
}

func (b *battle) enough(needed map[string]int) bool {
	for kind, times := range needed {
		if b.seen[kind] < times {
			return false
		}
	}
	return true
}

// A run that is killed, at whatever moment, leaves every file old or new and
// the inputs as they were; what lies beside them is a passing file, and the
// next run goes well.
func TestKilledAtAnyMoment(t *testing.T) {
	for i, w := range writers {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			b := w.battle(t, uint64(i), 45, syscall.SIGKILL)
			needed := map[string]int{"before": 5, "after": 5}
			if len(w.targets) > 2 { // one small file is written too fast to be sure of hitting that
				b.blows, needed = 150, map[string]int{"before": 20, "while writing": 20, "after": 20}
			}
			b.fight(t, needed, func(e ended, found map[string]string) string { return b.killed(t, found) })
		})
	}
}

// killed looks at what a killed run leaves, and tells when it was hit.
func (b *battle) killed(t *testing.T, found map[string]string) string {
	state, left := b.state(t, found, b.before, b.after), passing(found)
	assert.LessOrEqual(t, len(left), 2*len(b.targets))
	if len(left) == 0 && state == b.all("old") {
		return "before"
	} else if len(left) == 0 && state == b.all("new") {
		return "after"
	}
	if b.seen["while writing"]%5 == 0 {
		e := runIn(t, b.dir, b.words()...)
		assert.Equal(t, exitDone, e.code, e.err)
		assert.Equal(t, b.all("new"), b.state(t, filesOf(t, b.dir), b.before, b.after))
	}
	for _, name := range left {
		if strings.Contains(name, "former") {
			assert.Contains(t, oldTexts(b), found[name], "an old file is whole under its other name too")
		}
		require.NoError(t, os.Remove(filepath.Join(b.dir, name)))
	}
	return "while writing"
}

func oldTexts(b *battle) []string {
	var out []string
	for _, name := range b.targets {
		out = append(out, b.before[name])
	}
	return out
}

// A run that is asked to end leaves nothing but the old files or the new ones,
// says which where it was writing or searching, and dies of the signal.
func TestInterruptedAtAnyMoment(t *testing.T) {
	for i, w := range writers {
		t.Run(w.name, func(t *testing.T) {
			t.Parallel()
			b := w.battle(t, uint64(i), 15, syscall.SIGTERM, syscall.SIGINT, syscall.SIGHUP)
			needed := map[string]int{}
			if len(w.targets) > 2 {
				b.blows, needed = 60, map[string]int{"said so": 5, "silent, old": 3, "done": 3}
			}
			b.fight(t, needed, func(e ended, found map[string]string) string { return b.interrupted(t, e, found) })
		})
	}
}

func (b *battle) interrupted(t *testing.T, e ended, found map[string]string) string {
	assert.Empty(t, passing(found), e)
	state := b.state(t, found, b.before, b.after)
	assert.Contains(t, []string{b.all("old"), b.all("new")}, state)
	if e.signal == 0 {
		assert.Equal(t, exitDone, e.code, e.err)
		assert.Equal(t, b.all("new"), state)
		return "done"
	}
	assert.Contains(t, b.signals, e.signal)
	switch {
	case strings.HasSuffix(e.err, "interrupted; nothing was written\n"):
		assert.Equal(t, b.all("old"), state)
		return "said so"
	case strings.HasSuffix(e.err, "interrupted; everything was written by then\n"):
		assert.Equal(t, b.all("new"), state)
		return "said so"
	}
	assert.NotContains(t, e.err, "interrupted")
	return "silent, " + map[bool]string{true: "old", false: "new"}[state == b.all("old")]
}
