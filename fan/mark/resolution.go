package mark

import (
	"fmt"
	"math"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Resolution is the least difference that the builder's calipers or ruler can
// show: one unit of length divided into PerUnit equal parts. Every length of a
// setting-out list is a whole number of these parts, so that sums and
// differences of what is printed are exact.
type Resolution struct {
	Unit    unit.LengthUnit
	PerUnit int64 // above 0: 100 for 0.01 mm, 20 for 0.05 mm, 1000 for 0.001 in, 64 for 1/64 in
}

// coarsestSet is the coarsest resolution that marks are set to.
const coarsestSet unit.Length = 1.1 * unit.Millimetre

// ParseResolution reads "0.01 mm", "0.5 mm", "0.001 in", "1/64 in". A
// resolution must divide its unit evenly and come out in decimals (or in
// fractions down to 1/64 in), and lie between 0.0005 mm and 1 mm.
func ParseResolution(given string) (Resolution, error) {
	l, err := unit.ParseLength(given)
	if err != nil {
		return Resolution{}, err
	}
	if !(l >= finest && l <= coarsestSet) {
		return Resolution{}, fault.Fault{What: "no resolution of a workshop tool", Given: given, Remedy: `give 0.0005 mm to 1 mm, such as "0.05 mm" or "1/64 in"`}
	}
	parts := 1 / unitOf(given).Value(l)
	r := Resolution{unitOf(given), int64(math.Round(parts))}
	// The quotient of two doubles is off by a few parts in 1e16; 1e-9 keeps
	// all those and no division a builder could mean.
	if r.PerUnit < 1 || math.Abs(parts/float64(r.PerUnit)-1) > 1e-9 || r.decimals() > 6 {
		return Resolution{}, fault.Fault{What: "not an even part of 1 " + r.Unit.Symbol(), Given: given, Remedy: `give a part such as "0.05 mm", "0.001 in" or "1/64 in"`}
	}
	return r, nil
}

// UnmarshalText is ParseResolution.
func (r *Resolution) UnmarshalText(text []byte) (err error) {
	*r, err = ParseResolution(string(text))
	return err
}

func unitOf(given string) unit.LengthUnit {
	low := strings.ToLower(given)
	switch {
	case !strings.ContainsAny(low, `i"”″`):
		return unit.Millimetres
	case strings.ContainsAny(low, "/⁄½¼⅛"):
		return unit.InchFractions
	}
	return unit.DecimalInches
}

// decimals is how many decimals one part needs: 2 for 0.05; 7 when more than
// six are needed.
func (r Resolution) decimals() int {
	d := 0
	for p := int64(1); p%r.PerUnit != 0 && d < 7; p *= 10 {
		d++
	}
	return d
}

// Length is the resolution itself.
func (r Resolution) Length() unit.Length { return r.length(1) }

// String gives the resolution as a builder would write it: "0.05 mm", "1/64 in".
func (r Resolution) String() string {
	return fmt.Sprintf("%s %s", r.Format(1), r.Unit.Symbol())
}

// Rounded is a length as it should be and as the builder can set it.
type Rounded struct {
	Exact unit.Length
	Set   unit.Length // Exact to the nearest part of the resolution, halves away from zero
	Parts int64       // Set as a whole number of parts
}

// Round gives the nearest length that the tool can show.
func (r Resolution) Round(l unit.Length) Rounded {
	const noise = 1e-9 // of a part: what arithmetic leaves of an exact half
	parts := int64(math.Round(float64(l/r.Length()) * (1 + noise)))
	return Rounded{Exact: l + 0, Set: r.length(parts), Parts: parts}
}

// Between gives the step from one rounded position to another: the difference
// of what is printed, not the rounded difference. So the printed steps sum to
// the printed positions exactly, and a step may differ by one part from its
// own nearest rounding.
func (r Resolution) Between(from, to Rounded) Rounded {
	parts := to.Parts - from.Parts
	return Rounded{Exact: to.Exact - from.Exact, Set: r.length(parts), Parts: parts}
}

func (r Resolution) length(parts int64) unit.Length {
	if r.Unit == unit.Millimetres {
		return unit.MM(float64(parts) / float64(r.PerUnit))
	}
	return unit.Inches(float64(parts) / float64(r.PerUnit))
}

// Format prints a number of parts as a number of the unit, without the unit:
// "123.45", "4 55/64".
func (r Resolution) Format(parts int64) string {
	x := float64(parts) / float64(r.PerUnit)
	if r.Unit == unit.InchFractions && 64%r.PerUnit == 0 {
		return r.Unit.Format(unit.Inches(x), 0)
	}
	return unit.Fixed(x, r.decimals())
}
