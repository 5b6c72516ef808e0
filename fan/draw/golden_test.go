package draw_test

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/fan/draw/dxf"
	"scalepair/fan/draw/pdf"
	"scalepair/fan/draw/svg"
	"scalepair/fan/draw/tile"
)

var update = flag.Bool("update", false, "rewrite the golden drawings")

// goldens is where the golden drawings stand.
const goldens = "../../testdata/drawings"

// files gives a trial instrument's drawings by file name.
func files(t testing.TB, name string) map[string][]byte {
	t.Helper()
	d := drawingOf(t, name)
	one := onePlan(t, name)
	sheets := tile.DefaultOptions()
	sheets.Unit = optionsOf(layoutOf(t, name)).Unit
	if name == "eight" {
		sheets.Paper = paper("Letter")
	}
	tiled, err := tile.Lay(d, sheets)
	require.NoError(t, err)
	sheets.Paper, sheets.Strips = paper("A4"), true
	strips, err := tile.Lay(d, sheets)
	require.NoError(t, err)

	out := map[string][]byte{}
	write := func(file string, to func(*bytes.Buffer) error) {
		var b bytes.Buffer
		require.NoError(t, to(&b), file)
		out[name+file] = b.Bytes()
	}
	write(".svg", func(b *bytes.Buffer) error { return svg.Write(b, one.Sheets[0]) })
	write(".dxf", func(b *bytes.Buffer) error { return dxf.Write(b, d) })
	write("_one.pdf", func(b *bytes.Buffer) error { return pdf.Write(b, d.Title, one.Sheets) })
	write("_tiles.pdf", func(b *bytes.Buffer) error { return pdf.Write(b, d.Title, tiled.Sheets) })
	write("_strips.pdf", func(b *bytes.Buffer) error { return pdf.Write(b, d.Title, strips.Sheets) })
	return out
}

// golden are the files kept. A PDF holds a face and is no text: its pages are read
// back instead.
var golden = []struct{ name, file string }{{"six", "six.svg"}, {"six", "six.dxf"}, {"bass", "bass.dxf"}}

func TestGoldens(t *testing.T) {
	for _, g := range golden {
		t.Run(g.file, func(t *testing.T) {
			got := files(t, g.name)[g.file]
			path := filepath.Join(goldens, g.file)
			if *update {
				require.NoError(t, os.MkdirAll(goldens, 0o755))
				require.NoError(t, os.WriteFile(path, got, 0o644))
			}
			want, err := os.ReadFile(path)
			require.NoError(t, err)
			assert.True(t, bytes.Equal(want, got), "%s differs from the golden drawing; look at both, then run with -update", g.file)
		})
	}
}

func TestTheSameBytesEveryTime(t *testing.T) {
	for _, name := range instruments() {
		first, second := files(t, name), files(t, name)
		for file, bytes := range first {
			assert.True(t, string(bytes) == string(second[file]), file)
		}
	}
}

func TestFailsWhenTheWriterDoes(t *testing.T) {
	r, w := io.Pipe()
	require.NoError(t, r.CloseWithError(errors.New("disk full")))
	sheets := onePlan(t, "six").Sheets
	assert.EqualError(t, svg.Write(w, sheets[0]), "disk full")
	assert.EqualError(t, pdf.Write(w, "t", sheets), "disk full")
	assert.EqualError(t, dxf.Write(w, drawingOf(t, "six")), "disk full")
}

// No file holds what no number may print as.
func TestNoNumberIsNone(t *testing.T) {
	for _, name := range instruments() {
		for file, content := range files(t, name) {
			for _, hostile := range []string{"NaN", "+Inf", "-Inf", "-0.0000", "e-0", "e+0"} {
				assert.False(t, bytes.Contains(content, []byte(hostile)), "%s holds %s", file, hostile)
			}
		}
	}
}
