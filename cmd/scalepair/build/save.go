package build

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Save gives the build file with the pair as its [chosen] section, and every
// byte outside of it as it was. A file without one gets it at its end. Lengths
// are written in unit u where that is exact, else in millimetres.
func (c Chosen) Save(src []byte, file string, u unit.LengthUnit) ([]byte, error) {
	text := bytes.TrimPrefix(src, byteOrderMark)
	places, err := findPlaces(file, text)
	if err != nil {
		return nil, err
	}
	newline := "\n"
	if bytes.Contains(text, []byte("\r\n")) {
		newline = "\r\n"
	}
	section := strings.ReplaceAll(c.section(u), "\n", newline)
	from, to := len(text), len(text)
	if at := places.byPath["chosen"]; at != nil {
		if at.kind != unstable.Table || at.end == 0 {
			return nil, fault.Fault{Place: places.place(at.key), What: "chosen is no section of its own", Remedy: "begin it with [chosen] on a line of its own, or take it out"}
		}
		// What follows the section's last key, remarks and blank lines, stays.
		from, to = bytes.LastIndexByte(text[:at.key], '\n')+1, len(text)
		if i := bytes.IndexByte(text[at.end:], '\n'); i >= 0 {
			to = at.end + i + 1
		}
	} else if len(text) > 0 {
		if text[len(text)-1] != '\n' {
			section = newline + section
		}
		section = newline + section
	}
	mark := src[:len(src)-len(text)]
	return slices.Concat(mark, text[:from], []byte(section), text[to:]), nil
}

// section is the text of [chosen].
func (c Chosen) section(u unit.LengthUnit) string {
	var b strings.Builder
	neutral := strconv.FormatFloat(c.Neutral.Fret, 'f', -1, 64)
	if c.Neutral.Bridge {
		neutral = `"bridge"`
	}
	fmt.Fprintf(&b, "[chosen]\nbass = %q\ntreble = %q\nneutral_fret = %s\n", lengthText(c.Bass, u), lengthText(c.Treble, u), neutral)
	if len(c.Gauges) > 0 {
		fmt.Fprintf(&b, "gauges = %s\n", labelList(reversed(c.Gauges)))
	}
	return b.String()
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
