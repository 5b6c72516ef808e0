package answer

import (
	"slices"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/report"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

// BareBuild stands in for a build file where a blank is asked for without one: a
// guitar in the middle of what is built (judgement).
const BareBuild = `[strings]
tuning = "E2 A2 D3 G3 B3 E4"
[scales]
bass = "648 mm"
treble = "648 mm"
[neck]
string_spread_at_nut = "36 mm"
string_spread_at_saddle = "52 mm"
`

// Blank is a blank's size as a flag has it: "500 x 70 mm".
type Blank struct{ Length, Width unit.Length }

// UnmarshalText reads length and width, or the same with a thickness, which
// nothing here depends on. A length without a unit takes that of the width.
func (b *Blank) UnmarshalText(text []byte) error {
	var err error
	parts := strings.Split(strings.ReplaceAll(string(text), "×", "x"), "x")
	ok := len(parts) == 2 || len(parts) == 3
	if ok {
		left, right := parts[0], parts[1]
		if _, bare := unit.ParseNumber(right); bare == nil && len(parts) == 3 {
			right += strings.TrimLeft(strings.TrimSpace(parts[2]), "0123456789./½¼¾ ")
		}
		if b.Width, err = unit.ParseLength(right); err == nil {
			if b.Length, err = unit.ParseLength(left); err != nil {
				b.Length, err = unit.ParseLength(strings.TrimSpace(left) + " " + strings.TrimLeft(strings.TrimSpace(right), "0123456789./½¼¾ "))
			}
		}
	}
	if !ok || err != nil || !(b.Length > 0 && b.Width > 0) {
		return fault.Fault{What: "not the size of a blank", Given: string(text), Remedy: `give its length and width with a unit: "500 x 70 mm" or "20 x 2 3/4 in"`}
	}
	return nil
}

// FromBlank answers what comes out of a blank, by geometry alone.
func FromBlank(run *build.Run, u Units, b Blank) (*report.FromBlank, error) {
	spec := run.Neck()
	switch {
	case run.Chosen != nil:
		spec.Treble = run.Chosen.Treble
	case len(run.Scales.Treble) > 0:
		spec.Treble = slices.Max(run.Scales.Treble)
	}
	found, err := fan.AdviseBlank(spec, fan.Blank{Length: b.Length, Width: b.Width}, func(f *fan.Frame) bool { return run.Limits.OfFan(f, spec.Frets) == nil })
	if err != nil {
		return nil, err
	}
	return report.NewFromBlank(&report.Input{Run: run, Units: u.over(run)}, spec, found), nil
}
