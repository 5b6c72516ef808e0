package testutil

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// CommonPractice marks a fact of the trade that has no source.
const CommonPractice = "common practice, no source"

// Published is one row of a file in testdata/published: a printed value. Every
// row has an id of its own, a wanted number, a tolerance, a source and a
// locator; a row of common practice needs no source and no locator. How sure
// the value is stands under confidence: 'read' in the work itself, 'as quoted' by
// another page, 'from memory', or 'no source' where the page that printed it
// names no author.
type Published struct {
	ID       string
	Quantity string // what is checked; the test picks its formula by it
	Wanted   float64
	Tol      float64 // in the unit of Wanted; 0 for an exact value
	Source   string
	Locator  string

	cells map[string]string
}

// LoadPublished reads testdata/published/file and fails the test on any row
// that breaks the rules of Published, or on a file without rows.
func LoadPublished(t testing.TB, file string) []Published {
	t.Helper()
	in, err := os.Open(filepath.Join(Root(t), "testdata", "published", file))
	require.NoError(t, err)
	defer in.Close()
	reader := csv.NewReader(in)
	reader.Comment = '#'
	records, err := reader.ReadAll()
	require.NoError(t, err, file)
	require.Greater(t, len(records), 1, "%s has no rows", file)
	var rows []Published
	seen := map[string]bool{"": true}
	for _, record := range records[1:] {
		r := parsePublished(t, records[0], record)
		require.False(t, seen[r.ID], "%s: the id %q is missing or stands twice", file, r.ID)
		seen[r.ID] = true
		rows = append(rows, r)
	}
	return rows
}

func parsePublished(t testing.TB, heads, record []string) Published {
	t.Helper()
	r := Published{cells: map[string]string{}}
	for i, head := range heads {
		r.cells[head] = record[i]
	}
	r.ID, r.Quantity, r.Source, r.Locator = r.Text("id"), r.Text("quantity"), r.Text("source"), r.Text("locator")
	r.Wanted, r.Tol = r.Input(t, "wanted"), r.Input(t, "tolerance")
	require.GreaterOrEqual(t, r.Tol, 0.0, r.ID)
	confidence := r.Text("confidence")
	require.True(t, slices.Contains([]string{"read", "as quoted", "from memory", "no source", CommonPractice}, confidence), "%s: confidence %q", r.ID, confidence)
	require.True(t, confidence == CommonPractice || r.Source != "" && r.Locator != "", "%s has no source or no locator", r.ID)
	return r
}

// Text returns a cell as it stands, for inputs that are no numbers.
func (r Published) Text(column string) string { return r.cells[column] }

// Input returns the number in a cell and fails the test where there is none.
func (r Published) Input(t testing.TB, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r.cells[column], 64)
	require.True(t, err == nil && !math.IsNaN(x) && !math.IsInf(x, 0), "published row %s has no number under %s", r.ID, column)
	return x
}

// Check fails the test unless got is within the tolerance of the wanted value.
func (r Published) Check(t testing.TB, got float64) {
	t.Helper()
	assert.True(t, math.Abs(got-r.Wanted) <= r.Tol,
		"%s %s: got %v, published %v (%s, %s)", r.ID, r.Quantity, got, r.Wanted, r.Source, r.Locator)
}

// Root returns the module's root: the nearest folder at or above the working
// folder that holds go.mod.
func Root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	require.NoError(t, err)
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		require.NotEqual(t, up, dir, "no go.mod at or above the working folder")
		dir = up
	}
}
