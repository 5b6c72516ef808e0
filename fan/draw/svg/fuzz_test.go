package svg_test

import (
	"bytes"
	"encoding/xml"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/fan/draw"
	"scalepair/fan/draw/internal/trial"
	"scalepair/fan/draw/svg"
)

// Any drawing is refused, with nothing written, or is well-formed, its numbers
// finite and without a signed zero, and its line where it was put, to the last
// printed digit.
func FuzzWrite(f *testing.F) {
	for _, s := range trial.AnyShapes() {
		f.Add(s.X1, s.Y1, s.X2, s.Y2, s.SizeMM, s.AngleRad, 420.0, s.Body)
	}
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, size, angle, height float64, body string) {
		d := trial.AnyDrawing(trial.Shapes{X1: x1, Y1: y1, X2: x2, Y2: y2, SizeMM: size, AngleRad: angle, Body: body})
		s := draw.Sheet{Name: body, WidthMM: 297, HeightMM: height, Parts: []draw.Part{
			{Drawing: d, Window: []draw.Point{{X: x1, Y: y2}, {X: x2, Y: y2}, {X: x2, Y: y1}}}, {Drawing: d},
		}}
		var b bytes.Buffer
		if err := svg.Write(&b, s, svg.Options{}); err != nil {
			require.Empty(t, b.Bytes())
			require.Error(t, s.Sound())
			return
		}
		words := wellFormed(t, b.String())
		require.Contains(t, words, draw.OneLine(body))
		lines := 0
		for _, e := range elements(t, b.String()) {
			requireNumbers(t, e)
			if e.Name.Local == "line" {
				lines++
				for name, want := range map[string]float64{"x1": x1, "y1": height - y1, "x2": x2, "y2": height - y2} {
					requireDigits(t, want, attribute(e, name), decimals)
				}
			}
		}
		require.Equal(t, 2, lines)
	})
}

// decimals that the package prints of a millimetre.
const decimals = 4

// elements gives every start tag of a file.
func elements(t *testing.T, file string) []xml.StartElement {
	var out []xml.StartElement
	dec := xml.NewDecoder(strings.NewReader(file))
	for {
		token, err := dec.Token()
		if err != nil {
			return out // wellFormed has read the file to its end
		}
		if e, ok := token.(xml.StartElement); ok {
			out = append(out, e.Copy())
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// numeric are the attributes that hold numbers only, parted by blanks or commas;
// places matches the numbers of a turn.
var (
	numeric = regexp.MustCompile(`^(x|y|x1|y1|x2|y2|cx|cy|r|points|viewBox|font-size|stroke-width|stroke-dasharray)$`)
	places  = regexp.MustCompile(`^rotate\((.*)\)$`)
)

// requireNumbers reads every number of an element: plain decimals, finite, and
// zero without a sign.
func requireNumbers(t *testing.T, e xml.StartElement) {
	for _, a := range e.Attr {
		text := a.Value
		if m := places.FindStringSubmatch(text); m != nil {
			text = m[1]
		} else if !numeric.MatchString(a.Name.Local) {
			continue
		}
		for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' }) {
			x, err := strconv.ParseFloat(word, 64)
			require.NoError(t, err, "%s=%q", a.Name.Local, a.Value)
			require.False(t, math.IsInf(x, 0) || math.IsNaN(x) || x == 0 && math.Signbit(x), "%s=%q", a.Name.Local, a.Value)
		}
	}
}

// requireDigits holds a printed number to half of its last digit.
func requireDigits(t *testing.T, want float64, printed string, decimals int) {
	got, err := strconv.ParseFloat(printed, 64)
	require.NoError(t, err)
	require.InDelta(t, want, got, 0.5*math.Pow10(-decimals)+1e-11, printed)
}
