package dxf_test

import (
	"bytes"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/fan/draw"
	"scalepair/fan/draw/dxf"
	"scalepair/fan/draw/internal/trial"
)

// Any drawing is refused, with nothing written, or becomes pairs of group codes
// and values whose numbers are finite and without a signed zero; the line read
// back is the one put in to the last printed digit, and is written the same
// again.
func FuzzWrite(f *testing.F) {
	for _, s := range trial.AnyShapes() {
		f.Add(s.X1, s.Y1, s.X2, s.Y2, s.SizeMM, s.AngleRad, s.Body)
	}
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, size, angle float64, body string) {
		d := trial.AnyDrawing(trial.Shapes{X1: x1, Y1: y1, X2: x2, Y2: y2, SizeMM: size, AngleRad: angle, Body: body})
		var b bytes.Buffer
		if err := dxf.Write(&b, d); err != nil {
			require.Empty(t, b.Bytes())
			require.Error(t, d.Sound())
			return
		}
		codes, values := pairs(t, b.String())
		require.Equal(t, "EOF", values[len(values)-1])
		for i, code := range codes {
			if code >= 10 && code < 60 {
				requirePlain(t, values[i])
			}
		}
		got := line(t, codes, values)
		for _, pair := range [][2]float64{{x1, got.A.X}, {y1, got.A.Y}, {x2, got.B.X}, {y2, got.B.Y}} {
			require.InDelta(t, pair[0], pair[1], 0.5e-4+1e-11)
		}
		once := written(t, got)
		codes, values = pairs(t, once)
		require.Equal(t, once, written(t, line(t, codes, values)))
	})
}

// requirePlain reads a number: finite, and zero without a sign.
func requirePlain(t *testing.T, text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	require.False(t, math.IsInf(x, 0) || math.IsNaN(x) || x == 0 && math.Signbit(x), text)
	return x
}

// line gives the first line of a file.
func line(t *testing.T, codes []int, values []string) draw.Line {
	for i := range codes {
		if codes[i] != 0 || values[i] != "LINE" {
			continue
		}
		at := map[int]float64{}
		for j := i + 1; codes[j] != 0; j++ {
			if codes[j] >= 10 && codes[j] < 40 {
				at[codes[j]] = requirePlain(t, values[j])
			}
		}
		require.Len(t, at, 6)
		return draw.Line{A: draw.Point{X: at[10], Y: at[20]}, B: draw.Point{X: at[11], Y: at[21]}, Stroke: draw.SlotStroke}
	}
	t.Fatal("no line")
	return draw.Line{}
}
