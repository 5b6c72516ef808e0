package published_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/published"
)

// failure is what the recorder panics with when a test would stop.
type failure struct{}

// recorder stands in for a test.
type recorder struct {
	testing.TB
	said string
}

func (r *recorder) Helper()      {}
func (r *recorder) Name() string { return "recorder" }
func (r *recorder) FailNow()     { panic(failure{}) }
func (r *recorder) Errorf(format string, args ...any) {
	r.said += fmt.Sprintf(format, args...)
}

// load reads a file of the given text in a module of its own and tells what a
// test would have been failed with.
func load(t *testing.T, text string) (rows []published.Row, said string) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "testdata", "published"), 0o755))
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "deep", "down"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "go.mod"), nil, 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "testdata", "published", "x.csv"), []byte(text), 0o644))
	t.Chdir(filepath.Join(dir, "deep", "down"))
	r := &recorder{}
	defer func() {
		if p := recover(); p != nil {
			require.Equal(t, failure{}, p)
			said = r.said
		}
	}()
	return published.Load(r, "x.csv"), r.said
}

const heads = "id,quantity,l_mm,note,wanted,tolerance,source,locator,confidence\n"

func TestLoad(t *testing.T) {
	rows, said := load(t, "# about\n"+heads+"a,length,648,E4,1.5,0.05,A Book,p. 3,read\nb,length,,E2,2,0,,,\"common practice, no source\"\n")
	require.Empty(t, said)
	require.Len(t, rows, 2)
	assert.Equal(t, "a", rows[0].ID)
	assert.Equal(t, "length", rows[0].Quantity)
	assert.Equal(t, map[string]float64{"l_mm": 648}, rows[0].Inputs)
	assert.Equal(t, 648.0, rows[0].Input(t, "l_mm"))
	assert.Equal(t, "E4", rows[0].Text("note"))
	assert.Equal(t, 1.5, rows[0].Wanted)
	assert.Equal(t, 0.05, rows[0].Tol)
	assert.Equal(t, []string{"A Book", "p. 3", "read"}, []string{rows[0].Source, rows[0].Locator, rows[0].Confidence})
	assert.Empty(t, rows[1].Inputs)
}

func TestLoadFailsOn(t *testing.T) {
	for _, c := range []struct{ name, rows, want string }{
		{"no rows", "", "x.csv has no rows"},
		{"no source", "a,q,1,,1.5,0.05,,p. 3,read\n", "x.csv: a has no source"},
		{"no locator", "a,q,1,,1.5,0.05,A Book,,read\n", "x.csv: a has no locator"},
		{"no tolerance", "a,q,1,,1.5,,A Book,p. 3,read\n", "x.csv: a"},
		{"a negative tolerance", "a,q,1,,1.5,-1,A Book,p. 3,read\n", "x.csv: a"},
		{"an endless wanted value", "a,q,1,,nan,1,A Book,p. 3,read\n", "x.csv: a"},
		{"an unknown confidence", "a,q,1,,1.5,0.05,A Book,p. 3,sure\n", "x.csv: a"},
		{"no id", ",q,1,,1.5,0.05,A Book,p. 3,read\n", "a row without id"},
		{"an id twice", "a,q,1,,1.5,0.05,A Book,p. 3,read\na,q,1,,1.5,0.05,A Book,p. 3,read\n", "an id stands twice"},
	} {
		t.Run(c.name, func(t *testing.T) {
			rows, said := load(t, heads+c.rows)
			assert.Nil(t, rows)
			assert.Contains(t, said, c.want)
		})
	}
}

func TestCheck(t *testing.T) {
	row := published.Row{ID: "a", Wanted: 1.5, Tol: 0.25}
	for got, passes := range map[float64]bool{1.5: true, 1.75: true, 1.25: true, 1.76: false, 1.24: false} {
		r := &recorder{}
		row.Check(r, got)
		assert.Equal(t, passes, r.said == "", "%v", got)
	}
}

func TestInputFailsWithoutANumber(t *testing.T) {
	r := &recorder{}
	assert.Panics(t, func() { published.Row{ID: "a"}.Input(r, "l_mm") })
	assert.Contains(t, r.said, "published row a has no number under l_mm")
}

// Every file of the repo keeps the rules, also one that no package reads yet.
func TestEveryPublishedFileKeepsTheRules(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(published.Root(t), "testdata", "published", "*.csv"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) { published.Load(t, filepath.Base(f)) })
	}
}
