package testutil_test

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/testutil"
)

// stopped is what the recorder panics with where a test would end.
type stopped struct{}

// recorder stands in for a test and notes how it ended.
type recorder struct {
	testing.TB
	skipped, failed string
}

func (r *recorder) Helper()      {}
func (r *recorder) Name() string { return "recorder" }
func (r *recorder) FailNow()     { panic(stopped{}) }
func (r *recorder) Errorf(format string, args ...any) {
	r.failed += fmt.Sprintf(format, args...)
}
func (r *recorder) Fatalf(format string, args ...any) {
	r.Errorf(format, args...)
	r.FailNow()
}
func (r *recorder) Skipf(format string, args ...any) {
	r.skipped = fmt.Sprintf(format, args...)
	panic(stopped{})
}

// record runs a check, which may end the test, and returns how it ended.
func record(check func(r *recorder)) (r *recorder) {
	r = &recorder{}
	defer func() {
		if p := recover(); p != nil && p != (stopped{}) {
			panic(p)
		}
	}()
	check(r)
	return r
}

func TestAMissingToolIsSkippedOrFailed(t *testing.T) {
	here, err := os.Executable()
	require.NoError(t, err)
	t.Setenv("PATH", filepath.Dir(here))
	assert.Equal(t, here, testutil.NeedTool(t, filepath.Base(here)))
	assert.Equal(t, here, testutil.NeedPath(t, here, "built"))
	for name, need := range map[string]func(r *recorder){
		"a program": func(r *recorder) { testutil.NeedTool(r, "no-such-program") },
		"a file":    func(r *recorder) { testutil.NeedPath(r, "nowhere/such", "run npm ci") },
	} {
		t.Setenv("CI", "")
		r := record(need)
		assert.Contains(t, r.skipped, "==== NOT CHECKED: ", name)
		assert.Empty(t, r.failed, name)
		t.Setenv("CI", "true")
		r = record(need)
		assert.Contains(t, r.failed, "NOT INSTALLED: ", name)
		assert.Empty(t, r.skipped, name)
	}
}

func TestFull(t *testing.T) {
	t.Setenv("SCALEPAIR_TESTS", "")
	assert.Equal(t, 1, testutil.Times(1000, 1))
	t.Setenv("SCALEPAIR_TESTS", "full")
	assert.Equal(t, 1000, testutil.Times(1000, 1))
}

func TestCheckFaults(t *testing.T) {
	one := fault.Fault{Place: fault.Place{Input: "f", Line: 2}, What: "wrong", Given: "\x1b"}
	for name, c := range map[string]struct {
		err  error
		fail bool
	}{
		"sound":          {fault.List{one}, false},
		"no list":        {errors.New("f:2: wrong"), true},
		"none":           {fault.List{}, true},
		"another input":  {fault.List{{Place: fault.Place{Input: "g"}, What: "wrong"}}, true},
		"behind the end": {fault.List{{Place: fault.Place{Input: "f", Line: 3}, What: "wrong"}}, true},
		"nothing said":   {fault.List{{Place: fault.Place{Input: "f", Line: 1}}}, true},
	} {
		r := record(func(r *recorder) { testutil.CheckFaults(r, c.err, "f", "a\nb") })
		assert.Equal(t, c.fail, r.failed != "", name)
	}
}

func TestCheckFinite(t *testing.T) {
	type inner struct{ Xs []float64 }
	type outer struct {
		P     *inner
		Limit float64
		own   float64
	}
	fails := func(x float64, except ...string) bool {
		v := outer{&inner{[]float64{0, -1, x}}, math.Inf(1), math.NaN()}
		return record(func(r *recorder) { testutil.CheckFinite(r, v, except...) }).failed != ""
	}
	assert.False(t, fails(2, "Limit"))
	assert.True(t, fails(2))
	for _, x := range []float64{math.NaN(), math.Inf(-1), math.Copysign(0, -1)} {
		assert.True(t, fails(x, "Limit"), "%v", x)
	}
}

func TestLoadPublishedFailsOn(t *testing.T) {
	const heads = "id,quantity,l_mm,note,wanted,tolerance,source,locator,confidence\n"
	const sound = "a,length,648,E4,1.5,0.05,A Book,p. 3,read\n"
	load := func(text string) (rows []testutil.Published, failed string) {
		dir := t.TempDir()
		require.NoError(t, os.MkdirAll(filepath.Join(dir, "testdata", "published"), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(dir, "go.mod"), nil, 0o644))
		require.NoError(t, os.WriteFile(filepath.Join(dir, "testdata", "published", "x.csv"), []byte(text), 0o644))
		t.Chdir(dir)
		return rows, record(func(r *recorder) { rows = testutil.LoadPublished(r, "x.csv") }).failed
	}
	_, failed := load("# about\n" + heads + sound + "b,length,,E2,2,0,,,\"common practice, no source\"\n")
	assert.Empty(t, failed)
	for name, rows := range map[string]string{
		"no rows":              "",
		"no source":            "a,q,1,,1.5,0.05,,p. 3,read\n",
		"no locator":           "a,q,1,,1.5,0.05,A Book,,read\n",
		"no tolerance":         "a,q,1,,1.5,,A Book,p. 3,read\n",
		"a negative tolerance": "a,q,1,,1.5,-1,A Book,p. 3,read\n",
		"an endless value":     "a,q,1,,inf,1,A Book,p. 3,read\n",
		"another confidence":   "a,q,1,,1.5,0.05,A Book,p. 3,sure\n",
		"no id":                ",q,1,,1.5,0.05,A Book,p. 3,read\n",
		"an id twice":          sound + sound,
	} {
		_, failed := load(heads + rows)
		assert.NotEmpty(t, failed, name)
	}
}

func TestPublishedCheck(t *testing.T) {
	row := testutil.Published{ID: "a", Wanted: 1.5, Tol: 0.25}
	for got, passes := range map[float64]bool{1.5: true, 1.75: true, 1.25: true, 1.76: false, 1.24: false, math.NaN(): false} {
		r := record(func(r *recorder) { row.Check(r, got) })
		assert.Equal(t, passes, r.failed == "", "%v", got)
	}
}

// Every file of the repo keeps the rules, also one that no package reads yet.
func TestEveryPublishedFileKeepsTheRules(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(testutil.Root(t), "testdata", "published", "*.csv"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) { testutil.LoadPublished(t, filepath.Base(f)) })
	}
}

// A work is as sure wherever it is named: one mark in all the files.
func TestAWorkHasOneMark(t *testing.T) {
	marks := map[string]string{}
	files, err := filepath.Glob(filepath.Join(testutil.Root(t), "testdata", "published", "*.csv"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		for _, r := range testutil.LoadPublished(t, filepath.Base(file)) {
			mark, seen := marks[r.Source]
			if r.Source != "" && seen {
				assert.Equal(t, mark, r.Text("confidence"), "%s: %s", r.ID, r.Source)
			}
			marks[r.Source] = r.Text("confidence")
		}
	}
}
