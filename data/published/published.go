// Package published reads the published check values in testdata/published,
// for the tests of every package.
//
// A file has comment lines beginning with # and the columns id, quantity, any
// inputs, wanted, tolerance, source, locator, confidence. Every row needs an
// id of its own, a wanted number, a tolerance (0 for an exact value), a source
// and a locator; confidence is one of Confidences. A row of common practice
// needs no source and no locator.
package published

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

// Confidences lists what the confidence column may say.
var Confidences = []string{"read", "from memory", CommonPractice}

// Row is one published value.
type Row struct {
	ID         string
	Quantity   string             // what is checked; the test picks its formula by it
	Inputs     map[string]float64 // the numeric cells of the input columns, by heading
	Wanted     float64
	Tol        float64 // in the unit of Wanted; 0 for an exact value
	Source     string
	Locator    string
	Confidence string

	cells map[string]string
}

// Text gives a cell as it stands, "" when empty; it is for inputs that are no
// numbers, such as a note.
func (r Row) Text(column string) string { return r.cells[column] }

// Input gives a numeric input and fails the test when the row has none.
func (r Row) Input(t testing.TB, column string) float64 {
	t.Helper()
	x, ok := r.Inputs[column]
	require.True(t, ok, "published row %s has no number under %s", r.ID, column)
	return x
}

// Check fails the test when got is not within the tolerance of the wanted
// value.
func (r Row) Check(t testing.TB, got float64) {
	t.Helper()
	assert.False(t, math.IsNaN(got), r.ID)
	assert.LessOrEqual(t, math.Abs(got-r.Wanted), r.Tol,
		"%s %s: got %v, published %v (%s, %s)", r.ID, r.Quantity, got, r.Wanted, r.Source, r.Locator)
}

// Load reads testdata/published/file from the root of the module and fails the
// test on any row that breaks the rules above, or on a file without rows.
func Load(t testing.TB, file string) []Row {
	t.Helper()
	in, err := os.Open(filepath.Join(Root(t), "testdata", "published", file))
	require.NoError(t, err)
	defer in.Close()
	reader := csv.NewReader(in)
	reader.Comment = '#'
	records, err := reader.ReadAll()
	require.NoError(t, err, file)
	require.Greater(t, len(records), 1, "%s has no rows", file)
	var rows []Row
	var ids []string
	for _, record := range records[1:] {
		row := parse(t, file, records[0], record)
		require.NotContains(t, ids, row.ID, "%s: an id stands twice", file)
		rows, ids = append(rows, row), append(ids, row.ID)
	}
	return rows
}

var fixed = []string{"id", "quantity", "wanted", "tolerance", "source", "locator", "confidence"}

func parse(t testing.TB, file string, heads, record []string) Row {
	t.Helper()
	cells := map[string]string{}
	inputs := map[string]float64{}
	for i, head := range heads {
		cells[head] = record[i]
		if x, err := strconv.ParseFloat(record[i], 64); err == nil && !slices.Contains(fixed, head) {
			inputs[head] = x
		}
	}
	id := cells["id"]
	tol := number(t, file, id, cells["tolerance"])
	require.GreaterOrEqual(t, tol, 0.0, "%s: %s", file, id)
	require.NotEmpty(t, id, "%s: a row without id", file)
	require.Contains(t, Confidences, cells["confidence"], "%s: %s", file, id)
	if cells["confidence"] != CommonPractice {
		require.NotEmpty(t, cells["source"], "%s: %s has no source", file, id)
		require.NotEmpty(t, cells["locator"], "%s: %s has no locator", file, id)
	}
	return Row{
		ID: id, Quantity: cells["quantity"], Inputs: inputs, cells: cells,
		Wanted: number(t, file, id, cells["wanted"]), Tol: tol,
		Source: cells["source"], Locator: cells["locator"], Confidence: cells["confidence"],
	}
}

// number reads a wanted value or tolerance; neither may be missing or endless.
func number(t testing.TB, file, id, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err, "%s: %s", file, id)
	require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%s: %s", file, id)
	return x
}

// Root gives the module's root: the nearest folder at or above the working
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
