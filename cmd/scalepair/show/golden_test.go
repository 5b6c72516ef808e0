package show_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/show"
)

var update = flag.Bool("update", false, "rewrite the goldens")

const goldens = "../../../testdata/show"

func written(t require.TestingT, r *show.Report, o show.Options) string {
	var b bytes.Buffer
	require.NoError(t, show.Write(&b, r, o))
	return b.String()
}

func TestGoldens(t *testing.T) {
	for name, o := range map[string]show.Options{
		"unlimited.txt":  {},
		"80.txt":         {Width: 80},
		"80-ascii.txt":   {Width: 80, ASCII: true},
		"80-colour.txt":  {Width: 80, Color: true},
		"44.txt":         {Width: 44},
		"only.txt":       {Width: 80, Only: []string{"dropped"}},
		"report.md":      {Format: show.Markdown},
		"report.csv":     {Format: show.CSV},
		"strings.csv":    {Format: show.CSV, Only: []string{"strings"}},
		"report.html":    {Format: show.HTML},
		"ascii-only.csv": {Format: show.CSV, Only: []string{"strings"}, ASCII: true},
	} {
		t.Run(name, func(t *testing.T) {
			got := written(t, sample(), o)
			file := filepath.Join(goldens, name)
			if *update {
				require.NoError(t, os.MkdirAll(goldens, 0o755))
				require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
			}
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.Equal(t, string(want), got)
			assert.Equal(t, got, written(t, sample(), o), "the same report gives the same bytes")
		})
	}
}
