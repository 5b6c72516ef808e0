package build

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"

	"scalepair/data/unit"
)

// Save gives the build file with the pair under [chosen], and every other byte as
// it was. Lengths are written in unit u where that is exact, else in millimetres.
func (c Chosen) Save(src []byte, file string, u unit.LengthUnit) ([]byte, error) {
	neutral := strconv.FormatFloat(c.Neutral.Fret, 'f', -1, 64)
	if c.Neutral.Bridge {
		neutral = "bridge"
	}
	return changed(src, file, []Edit{
		{Key: "chosen.bass", Text: lengthText(c.Bass, u)},
		{Key: "chosen.treble", Text: lengthText(c.Treble, u)},
		{Key: "chosen.neutral_fret", Text: neutral},
		{Key: "chosen.gauges", List: reversed(c.Gauges), Remove: c.Gauges == nil},
		{Key: "chosen.scale", Remove: true},
	})
}

// lengthText writes a length to the picometre, which clears away what
// arithmetic has added to its last digits.
func lengthText(l unit.Length, u unit.LengthUnit) string {
	l = unit.Length(math.Round(float64(l)*1e12) / 1e12)
	if u != unit.Millimetres {
		inches := strconv.FormatFloat(math.Round(l.Inches()*1e6)/1e6, 'f', -1, 64) + " in"
		if back, err := unit.ParseLength(inches); err == nil && back == l {
			return inches
		}
	}
	return l.String()
}

// quote writes a text as TOML does, whose escapes are those of JSON.
func quote(s string) string {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	_ = e.Encode(s) // a text always has a form
	return strings.TrimSuffix(b.String(), "\n")
}
