package draw_test

import (
	"bytes"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/fan/draw"
	"scalepair/fan/draw/dxf"
	"scalepair/fan/draw/pdf"
	"scalepair/fan/draw/svg"
	"scalepair/fan/draw/tile"
)

// labelled is a drawing with one hostile text in every place that takes any.
func labelled(t *testing.T, body string) draw.Drawing {
	t.Helper()
	l := layoutOf(t, "six")
	o := optionsOf(l)
	o.Title, o.Remarks, o.Date = body, body, body
	for i := range o.Strings {
		o.Strings[i] = draw.StringWords{Note: body, Gauge: body}
	}
	return draw.Fan(l, o)
}

func TestAnyLabelStaysWellFormedEverywhere(t *testing.T) {
	bodies := append([]string{strings.Join(hostile, " "), strings.Repeat("x", 300)}, hostile...)
	for _, body := range bodies[:testutil.Times(len(bodies), 2)] {
		d := labelled(t, body)
		plan, err := tile.Lay(d, tile.DefaultOptions())
		require.NoError(t, err)
		var b bytes.Buffer
		require.NoError(t, svg.Write(&b, plan.Sheets[0], svg.Options{}))
		readable(t, body, "rsvg-convert", "-o", filepath.Join(t.TempDir(), "hostile.png"), save(t, "hostile.svg", b.Bytes()))
		b.Reset()
		require.NoError(t, pdf.Write(&b, d.Title, plan.Sheets))
		readable(t, body, "qpdf", "--check", save(t, "hostile.pdf", b.Bytes()))
	}
}

func readable(t *testing.T, body, program string, args ...string) {
	t.Helper()
	out, err := exec.Command(testutil.NeedTool(t, program), args...).CombinedOutput()
	assert.NoError(t, err, "%q: %s", body, out)
	assert.NotContains(t, strings.ToLower(string(out)), "warning", "%q", body)
}

func TestAnyLabelComesBackFromDXF(t *testing.T) {
	bodies := [][2]string{
		{"<\"é\" ½Ж ±1°\n" + `\U+0041 %%d^J`, "<\"é\" ½Ж ±1° " + `\U+0041 % %d^J`},
		{strings.Repeat("long ", 60), "long long long long long long long..."},
	}
	for _, b := range bodies[:testutil.Times(2, 1)] {
		body, want := b[0], b[1]
		l := layoutOf(t, "six")
		d := draw.Fan(l, draw.Options{Date: body})
		var b bytes.Buffer
		require.NoError(t, dxf.Write(&b, d))
		found := ezdxf(t, b.Bytes())
		assert.Contains(t, strings.Join(found.Words, "\n"), "date "+want, "%q", body)
	}
}

// A long text takes no more room than it is given: nothing on the sheet is
// wider for it.
func TestLongLabelsKeepTheirRoom(t *testing.T) {
	plain := labelled(t, "x").Bounds()
	long := labelled(t, strings.Repeat("long words ", 28)).Bounds()
	assert.InDelta(t, plain.Max.X, long.Max.X, tolMM)
	assert.GreaterOrEqual(t, long.Min.X, plain.Min.X-22)
}
