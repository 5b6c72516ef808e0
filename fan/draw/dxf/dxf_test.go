package dxf_test

import (
	"bytes"
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

// section gives the records of a section, codes and values in turn.
func section(file, name string) string {
	_, rest, _ := strings.Cut(strings.Join(strings.Fields(file), " "), "0 SECTION 2 "+name+" ")
	inside, _, _ := strings.Cut(rest, " 0 ENDSEC")
	return inside
}

func TestEntities(t *testing.T) {
	got := section(written(t,
		draw.Line{A: draw.Point{X: 1, Y: -2}, B: draw.Point{X: 3.00004, Y: 0}, Stroke: draw.SlotStroke},
		draw.Polyline{Points: []draw.Point{{X: 1, Y: 1}, {X: 2, Y: 1}}, Closed: true, Stroke: draw.BlankStroke},
		draw.Circle{Centre: draw.Point{X: 5, Y: 4}, Radius: 0.7, Stroke: draw.StringStroke},
		draw.Text{At: draw.Point{X: 5, Y: 5}, Height: 3, Angle: -1.5707963267948966, Align: draw.Centre, Body: "7°"},
	), "ENTITIES")
	assert.Equal(t, strings.Join([]string{
		"0 LINE 8 SLOTS 6 CONTINUOUS 10 1.0000 20 -2.0000 30 0.0000 11 3.0000 21 0.0000 31 0.0000",
		"0 POLYLINE 8 SLOTS 6 DASHED 66 1 10 0.0000 20 0.0000 30 0.0000 70 1",
		"0 VERTEX 8 SLOTS 6 DASHED 10 1.0000 20 1.0000 30 0.0000",
		"0 VERTEX 8 SLOTS 6 DASHED 10 2.0000 20 1.0000 30 0.0000",
		"0 SEQEND 8 SLOTS",
		"0 CIRCLE 8 SLOTS 6 CONTINUOUS 10 5.0000 20 4.0000 30 0.0000 40 0.7000",
		"0 TEXT 8 TEXT 6 CONTINUOUS 10 5.0000 20 5.0000 30 0.0000 40 3.0000 1 7%%d 50 270.0000 41 0.8000 7 STANDARD 72 1 11 5.0000 21 5.0000 31 0.0000",
	}, " "), got)
}

func TestHeaderSaysMillimetres(t *testing.T) {
	assert.Equal(t, "9 $ACADVER 1 AC1009 9 $DWGCODEPAGE 3 ANSI_1252 9 $INSUNITS 70 4 9 $MEASUREMENT 70 1 9 $LTSCALE 40 1.0000 "+
		"9 $EXTMIN 10 -1.0000 20 -2.0000 30 0.0000 9 $EXTMAX 10 3.0000 20 4.0000 30 0.0000",
		section(written(t, draw.Line{A: draw.Point{X: -1, Y: -2}, B: draw.Point{X: 3, Y: 4}}), "HEADER"))
}

func TestAnEmptyDrawingIsWhole(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, dxf.Write(&b, draw.Drawing{}))
	assert.NotContains(t, b.String(), "Inf")
	assert.True(t, strings.HasSuffix(b.String(), "ENTITIES\r\n  0\r\nENDSEC\r\n  0\r\nEOF\r\n"))
}

func TestEveryBrokenStrokeHasItsLineType(t *testing.T) {
	for s := draw.SlotStroke; s <= draw.HereStroke; s++ {
		got := section(written(t, draw.Line{B: draw.Point{X: 1}, Stroke: s}), "ENTITIES")
		assert.Equal(t, s.Dash() == nil, strings.Contains(got, "6 CONTINUOUS"), "%v", s)
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
			got := section(written(t, draw.Text{Height: 3, Body: tt.in}), "ENTITIES")
			assert.Contains(t, got, " 1 "+tt.want+" 50 ")
		})
	}
}
