package dxf_test

import (
	"bytes"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/fan/draw"
	"scalepair/fan/draw/dxf"
)

func written(t testing.TB, e ...draw.Element) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, dxf.Write(&b, draw.Drawing{Layers: []draw.Layer{{Name: draw.LayerSlots, Elements: e}}}))
	return b.String()
}

// pairs reads a file as what it is: group codes and values on lines in turn. It
// fails on anything else.
func pairs(t testing.TB, file string) (codes []int, values []string) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(file, "\r\n"), "\r\n")
	require.Zero(t, len(lines)%2, "codes and values in pairs")
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		require.NoError(t, err, "line %d", i+1)
		codes, values = append(codes, code), append(values, lines[i+1])
	}
	return codes, values
}

// entities gives the records of the last section as "code=value" words.
func entities(t testing.TB, file string) string {
	codes, values := pairs(t, file)
	var out []string
	inside := false
	for i, v := range values {
		switch {
		case codes[i] == 2 && v == "ENTITIES":
			inside = true
		case codes[i] == 0 && v == "ENDSEC":
			inside = false
		case inside && codes[i] == 0:
			out = append(out, "\n"+v)
		case inside:
			out = append(out, strconv.Itoa(codes[i])+"="+v)
		}
	}
	return strings.TrimPrefix(strings.Join(out, " "), "\n")
}

func TestEntities(t *testing.T) {
	got := entities(t, written(t,
		draw.Line{A: draw.Point{X: 1, Y: -2}, B: draw.Point{X: 3.00004, Y: 0}, Stroke: draw.SlotStroke},
		draw.Polyline{Points: []draw.Point{{X: 1, Y: 1}, {X: 2, Y: 1}}, Closed: true, Stroke: draw.BlankStroke},
		draw.Circle{Centre: draw.Point{X: 5, Y: 4}, Radius: 0.7, Stroke: draw.StringStroke},
		draw.Text{At: draw.Point{X: 5, Y: 5}, Height: 3, Angle: -1.5707963267948966, Align: draw.Centre, Body: "7°"},
	))
	assert.Equal(t, strings.Join([]string{
		"LINE 8=SLOTS 6=CONTINUOUS 10=1.0000 20=-2.0000 30=0.0000 11=3.0000 21=0.0000 31=0.0000 ",
		"POLYLINE 8=SLOTS 6=DASHED 66=1 10=0.0000 20=0.0000 30=0.0000 70=1 ",
		"VERTEX 8=SLOTS 6=DASHED 10=1.0000 20=1.0000 30=0.0000 ",
		"VERTEX 8=SLOTS 6=DASHED 10=2.0000 20=1.0000 30=0.0000 ",
		"SEQEND 8=SLOTS ",
		"CIRCLE 8=SLOTS 6=CONTINUOUS 10=5.0000 20=4.0000 30=0.0000 40=0.7000 ",
		"TEXT 8=TEXT 6=CONTINUOUS 10=5.0000 20=5.0000 30=0.0000 40=3.0000 1=7%%d 50=270.0000 41=0.8000 7=STANDARD 72=1 11=5.0000 21=5.0000 31=0.0000",
	}, "\n"), got)
}

func TestHeaderSaysMillimetres(t *testing.T) {
	_, values := pairs(t, written(t, draw.Line{A: draw.Point{X: -1, Y: -2}, B: draw.Point{X: 3, Y: 4}}))
	head := strings.Join(values[:22], " ")
	assert.Equal(t, "SECTION HEADER $ACADVER AC1009 $DWGCODEPAGE ANSI_1252 $INSUNITS 4 $MEASUREMENT 1 $LTSCALE 1.0000 "+
		"$EXTMIN -1.0000 -2.0000 0.0000 $EXTMAX 3.0000 4.0000 0.0000 ENDSEC SECTION", head)
}

func TestAnEmptyDrawingIsWhole(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, dxf.Write(&b, draw.Drawing{}))
	pairs(t, b.String())
	assert.NotContains(t, b.String(), "Inf")
}

func TestEveryBrokenStrokeHasItsLineType(t *testing.T) {
	for s := draw.SlotStroke; s <= draw.HereStroke; s++ {
		got := entities(t, written(t, draw.Line{B: draw.Point{X: 1}, Stroke: s}))
		assert.Equal(t, s.Dash() == nil, strings.Contains(got, "6=CONTINUOUS"), "%v", s)
	}
}

func TestText(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "F#3 <&> \"q\"", "F#3 <&> \"q\""},
		{"signs with codes", "12° ±1 Ø2", "12%%d %%p1 %%c2"},
		{"beyond ASCII", "é ½ Ж", `\U+00E9 \U+00BD \U+0416`},
		{"beyond the first plane", "🎸", `\U+FFFD`},
		{"newline", "a\nb", "a b"},
		{"percent", "50% 100%d", "50% 100%d"},
		{"codes that are none", "%%d", "% %d"},
		{"three percent", "%%%", "% % %"},
		{"percent before a code", "5%°", "5% %%d"},
		{"backslash", `\U+0041`, `\U+005CU+0041`},
		{"caret", "^J", `\U+005EJ`},
		{"signs without letters", "E♭ · F♯ 3×2″", `Eb - F# 3x2"`},
		{"printer's quotes", "“a” – ‘b’…", `"a" - 'b'...`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := entities(t, written(t, draw.Text{Height: 3, Body: tt.in}))
			assert.Contains(t, got, " 1="+tt.want+" 50=")
		})
	}
}
