package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Bad files that are too large to keep, or that are no files.

// hangs is how long a run may take before the test gives it up for hung.
const hangs = 30 * time.Second

// inTime runs one command line, and fails where it does not come back.
func inTime(t *testing.T, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, errOut bytes.Buffer
	done := make(chan int, 1)
	go func() { done <- run(context.Background(), args, &out, &errOut) }()
	select {
	case code = <-done:
		return code, out.String(), errOut.String()
	case <-time.After(hangs):
		require.Fail(t, "the run hangs", "scalepair %v", args)
		return 0, "", ""
	}
}

// holdsRefusal fails unless a run is refused with a message, whole, and nothing
// else.
func holdsRefusal(t *testing.T, dir, want string, args ...string) {
	t.Helper()
	code, out, errOut := inTime(t, args...)
	assert.Equal(t, exitInput, code, "%v", args)
	assert.Empty(t, out, "%v", args)
	assert.Equal(t, want+"\n", errOut, "%v", args)
	for _, problem := range messageProblems(errOut, args, dir) {
		t.Error(problem)
	}
}

// readingsAt makes a build file that names other readings.
func readingsAt(t *testing.T, dir, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, "build.toml"))
	require.NoError(t, err)
	path := filepath.Join(dir, "other.toml")
	require.NoError(t, os.WriteFile(path, bytes.Replace(text, []byte(`"readings.csv"`), []byte(fmt.Sprintf("%q", name)), 1), 0o644))
	return "other.toml"
}

const (
	needsReadings = `; weigh some string ends and list them there, or name the file with readings = "..." in other.toml`
	needsMarks    = "; give the file of measured marks, or make a form: scalepair check --form > measured.csv"
	needsBuild    = "; give the path of a build file, or make one: scalepair init"
)

func TestMissingFiles(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	holdsRefusal(t, dir, "no.toml: there is no such file"+needsBuild, "advise", "no.toml")
	holdsRefusal(t, dir, "no.csv: there is no such file"+needsMarks, "check", "no.csv")
	holdsRefusal(t, dir, "no.csv: there is no such file"+needsReadings, "gauges", readingsAt(t, dir, "no.csv"))
	holdsRefusal(t, dir, filepath.Join("no", "r.csv")+": there is no such file"+needsReadings, "gauges", readingsAt(t, dir, "no/r.csv"))
}

func TestFoldersForFiles(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	require.NoError(t, os.Mkdir("shelf", 0o755))
	const folder = "shelf: this is a folder, not a file; name the file in it"
	holdsRefusal(t, dir, folder, "advise", "shelf")
	holdsRefusal(t, dir, folder, "check", "shelf")
	holdsRefusal(t, dir, folder, "gauges", readingsAt(t, dir, "shelf"))
}

func TestEmptyFiles(t *testing.T) {
	dir := soundFolder(t)
	t.Chdir(dir)
	require.NoError(t, os.WriteFile("nothing", nil, 0o644))
	const table = "nothing: the file is empty; it needs a heading row and a row for each entry"
	holdsRefusal(t, dir, "nothing: the build file is empty; 'scalepair init' writes one to begin with", "advise", "nothing")
	holdsRefusal(t, dir, table, "check", "nothing")
	holdsRefusal(t, dir, table, "gauges", readingsAt(t, dir, "nothing"))
}

// A file of any size is refused at once and without taking memory by its size.
func TestHugeFiles(t *testing.T) {
	const (
		heading  = "gauge,construction,outer_mm,length_mm,mass_g\n"
		tooLarge = "huge: the file is larger than 4 MB, which no table of this kind is; name the right file, or keep the rows that belong here"
	)
	sound, err := os.ReadFile(filepath.Join(badFolder, "good", "build.toml"))
	require.NoError(t, err)
	for _, c := range []struct {
		name, kind string // kind: readings, marks or build
		content    string
		want       string // the whole message, or its first line where more follow
		lines      int
	}{
		{"readings of 32 MB", "readings", heading + strings.Repeat("p10,plain,0.254,319,0.13\n", 32<<20/25), tooLarge, 1},
		{"a line of 20 MB", "readings", heading + "p10,plain,0.254,319," + strings.Repeat("0", 20<<20), tooLarge, 1},
		{"marks of 32 MB", "marks", "line,pass,fret,measured_mm\n" + strings.Repeat("bass,ruler,1,36.5\n", 32<<20/18), tooLarge, 1},
		{"a build file of 32 MB", "build", string(sound) + strings.Repeat("# a remark\n", 32<<20/11),
			"huge: the file is larger than 1 MB, which no build file is; name the right file", 1},
		{"a cell of 4 MB", "readings", heading + "p10,plain,0.254,319," + strings.Repeat("7", 4<<20-200),
			`huge:2:21: mass: `, 1},
		{"a heading of 4 MB", "readings", strings.Repeat("gauge", 800_000) + ",mass_g\np10,0.13\n", "huge:1: ", 2},
		{"a million rows", "readings", "gauge,mass_g\n" + strings.Repeat("a,\n", 1_000_000), "huge:10002: more than 10000 rows; keep the rows that belong here", 1},
		{"a million bad rows", "readings", "gauge,mass_g\n" + strings.Repeat(",1\n", 1_000_000), "huge:2:1: gauge is empty, here and in 99 more places down to line 101; write it in every row", 1},
		{"a million open quotes", "marks", "line,pass,fret,measured_mm\n" + strings.Repeat("\"a\n", 1_000_000), "huge:2:1: a quotation mark is left open on this line", 1},
		{"a hundred thousand keys", "build", string(sound) + strings.Repeat("\nx = 1", 100_000), `huge:53:1: "x" stands here a second time, first in line 52, here and in 99 more places down to line 152`, 1},
		{"a hundred thousand unknown keys", "build", string(sound) + many("\nkey%d = 1", 60_000), `huge:52:1: no key of [[blanks]], here and in 99 more places down to line 151 ("key0"); the keys are name, length, width, thickness`, 1},
		{"a hundred thousand lines that are none", "build", string(sound) + strings.Repeat("\nx x", 100_000), "huge:52:3: a key needs an equals sign and a value", 1},
		{"lists within lists", "build", string(sound) + "\nx = " + strings.Repeat("[", 900_000), "huge:52:", 1},
		{"braces within braces", "build", string(sound) + "\nx = " + strings.Repeat("{a=", 300_000), "huge:52:", 1},
		{"a text of 900 kB", "build", string(sound) + "\nx = \"" + strings.Repeat("E2 ", 300_000), "huge:52:", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := soundFolder(t)
			t.Chdir(dir)
			require.NoError(t, os.WriteFile("huge", []byte(c.content), 0o644))
			args := map[string][]string{"readings": {"gauges", readingsAt(t, dir, "huge")}, "marks": {"check", "huge"}, "build": {"layout", "huge"}}[c.kind]
			before := allocated()
			code, out, errOut := inTime(t, args...)
			assert.Less(t, allocated()-before, uint64(mostMemory), "bytes of memory")
			assert.Equal(t, exitInput, code)
			assert.Empty(t, out)
			assert.True(t, strings.HasPrefix(errOut, c.want), "%.600s", errOut)
			assert.LessOrEqual(t, strings.Count(errOut, "\n"), c.lines+mostMessages-1)
			assert.Less(t, len(errOut), 20_000)
			for _, problem := range messageProblems(errOut, args, dir) {
				t.Errorf("%.600s", problem)
			}
		})
	}
}

// mostMemory is what a run may take in all for a bad file of any size.
const mostMemory = 256 << 20

// allocated is what the program has taken so far, in bytes.
func allocated() uint64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.TotalAlloc
}

// many writes a format for the numbers from 0.
func many(format string, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}
