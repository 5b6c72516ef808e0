package sheet_test

import (
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"scalepair/cmd/scalepair/sheet"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/draw"
)

// seen is what one strip shows: its size, its slots as x of both ends, and its
// words with their place.
type seen struct {
	width, height float64
	slots         [][2]float64
	words         []string
}

func read(t require.TestingT, svg string) seen {
	d := xml.NewDecoder(strings.NewReader(svg))
	var s seen
	layer, text := "", false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return s
		}
		require.NoError(t, err)
		switch e := token.(type) {
		case xml.StartElement:
			at := map[string]string{}
			for _, a := range e.Attr {
				at[a.Name.Local] = a.Value
			}
			number := func(name string) float64 {
				x, err := strconv.ParseFloat(at[name], 64)
				require.NoError(t, err)
				return x
			}
			text = e.Name.Local == "text"
			switch {
			case e.Name.Local == "svg":
				box := strings.Fields(at["viewBox"])
				s.width, _ = strconv.ParseFloat(box[2], 64)
				s.height, _ = strconv.ParseFloat(box[3], 64)
			case e.Name.Local == "g" && at["class"] != "":
				layer = at["class"]
			case e.Name.Local == "line" && layer == "slots" && at["x1"] != "":
				s.slots = append(s.slots, [2]float64{number("x1"), number("x2")})
			}
		case xml.CharData:
			if text && strings.TrimSpace(string(e)) != "" {
				s.words = append(s.words, string(e))
			}
		}
	}
}

// whole says that a slot lies inside the strip.
func (s seen) whole(slot [2]float64) bool {
	return math.Min(slot[0], slot[1]) >= 0 && math.Max(slot[0], slot[1]) <= s.width
}

// Every slot is whole on a strip, with its number, and strips of one set are
// of one size, none longer than a page or a narrow window can show.
func TestStripsOfAnyNeck(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		spec := fan.DefaultSpec()
		spec.Strings, spec.Frets = rapid.IntRange(4, 9).Draw(rt, "strings"), rapid.IntRange(12, 27).Draw(rt, "frets")
		spec.Treble = unit.MM(rapid.Float64Range(500, 860).Draw(rt, "treble"))
		spec.Bass = unit.MM(spec.Treble.MM() + rapid.Float64Range(0, 70).Draw(rt, "difference"))
		spec.NutSpread = unit.MM(6 * float64(spec.Strings))
		spec.SaddleSpread = unit.MM(1.4 * spec.NutSpread.MM())
		l, err := fan.New(spec)
		if err != nil {
			rt.Skip("no such neck:", err)
		}
		d, err := draw.Fan(l, draw.Options{Title: "Any", Hide: []draw.LayerName{draw.LayerTitle, draw.LayerKey, draw.LayerBars}})
		require.NoError(rt, err)
		drawing, err := sheet.NewDrawing(d, "")
		require.NoError(rt, err)
		assert.LessOrEqual(rt, len(drawing.Strips), len(drawing.Narrow))
		for i, set := range [][]seen{strips(rt, drawing, false), strips(rt, drawing, true)} {
			whole, numbers := 0, map[string]bool{}
			for _, s := range set {
				assert.Equal(rt, set[0].width, s.width)
				assert.Equal(rt, set[0].height, s.height)
				assert.LessOrEqual(rt, s.width, []float64{285, 200}[i])
				for _, slot := range s.slots {
					if s.whole(slot) {
						whole++
					}
				}
				for _, w := range s.words {
					numbers[w] = true
				}
			}
			assert.GreaterOrEqual(rt, whole, spec.Frets)
			for n := 1; n <= spec.Frets; n++ {
				assert.True(rt, numbers[strconv.Itoa(n)], "the number %d is whole somewhere", n)
			}
		}
	})
}

func strips(t require.TestingT, d *sheet.Drawing, narrow bool) []seen {
	var out []seen
	list := d.Strips
	if narrow {
		list = d.Narrow
	}
	for _, s := range list {
		out = append(out, read(t, string(s)))
	}
	return out
}
