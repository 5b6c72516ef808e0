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

func TestAnyLabelIsReadEverywhere(t *testing.T) {
	for _, body := range []string{strings.Join(hostile, " "), "endstream endobj ]]> (\\", ""} {
		d := labelled(t, body)
		plan, err := tile.Lay(d, tile.DefaultOptions())
		require.NoError(t, err)
		var one, two bytes.Buffer
		require.NoError(t, svg.Write(&one, plan.Sheets[0]))
		require.NoError(t, pdf.Write(&two, d.Title, plan.Sheets))
		for _, reader := range [][]string{
			{"rsvg-convert", "-o", filepath.Join(t.TempDir(), "hostile.png"), save(t, "hostile.svg", one.Bytes())},
			{"qpdf", "--check", save(t, "hostile.pdf", two.Bytes())},
		} {
			out, err := exec.Command(testutil.NeedTool(t, reader[0]), reader[1:]...).CombinedOutput()
			assert.NoError(t, err, "%q: %s", body, out)
			assert.NotContains(t, strings.ToLower(string(out)), "warning", "%q", body)
		}
	}
	var b bytes.Buffer
	require.NoError(t, dxf.Write(&b, draw.Fan(layoutOf(t, "six"), draw.Options{Date: "<\"é\" ½Ж ±1°\n" + `\U+0041 %%d^J`})))
	assert.Contains(t, strings.Join(ezdxf(t, b.Bytes()).Words, "\n"), "date <\"é\" ½Ж ±1° "+`\U+0041 % %d^J`)
}

// A long text takes no more room than it is given: nothing on the sheet is
// wider for it.
func TestLongLabelsKeepTheirRoom(t *testing.T) {
	plain := labelled(t, "x").Bounds()
	long := labelled(t, strings.Repeat("long words ", 28)).Bounds()
	assert.InDelta(t, plain.Max.X, long.Max.X, tolMM)
	assert.GreaterOrEqual(t, long.Min.X, plain.Min.X-22)
}
