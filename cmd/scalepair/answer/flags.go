package answer

import (
	"encoding"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/fault"
	"scalepair/data/unit"
)

// textFlag is a flag whose value reads itself, and says what is wrong with it.
type textFlag struct {
	encoding.TextUnmarshaler
	given string
}

func (f *textFlag) Set(text string) error {
	f.given = text
	return f.UnmarshalText([]byte(text))
}

// String returns what was given: "" before, so that help shows no default.
func (f *textFlag) String() string { return f.given }

// Type is the word that help shows where the usage has none.
func (f *textFlag) Type() string { return "value" }

// TextVar defines a flag that is read into a value by itself.
func TextVar(f *pflag.FlagSet, into encoding.TextUnmarshaler, name, usage string) {
	f.Var(&textFlag{TextUnmarshaler: into}, name, usage)
}

// BoundedVar defines a flag for a length within bounds.
func BoundedVar(f *pflag.FlagSet, to *unit.Length, least, most unit.Length, name, usage string) {
	TextVar(f, boundedLength{to, least, most}, name, usage)
}

type boundedLength struct {
	to          *unit.Length
	least, most unit.Length
}

func (b boundedLength) UnmarshalText(text []byte) error {
	l, err := unit.ParseLength(string(text))
	if err != nil {
		return err
	}
	if !(l >= b.least && l <= b.most) {
		return fault.Fault{What: "this is out of range", Given: string(text), Remedy: "it goes from " + b.least.String() + " to " + b.most.String()}
	}
	*b.to = l
	return nil
}

// LongestVar defines the flag of the longest string to weigh at once.
func LongestVar(f *pflag.FlagSet, to *unit.Length) {
	*to = unit.MM(1500)
	BoundedVar(f, to, unit.MM(20), unit.MM(5000), "longest", "with --next: greatest `length` of string to weigh at once, in one piece or several together (default: 1500 mm)")
}

// Units are the units to print in, where they are not the build file's.
type Units struct {
	Lengths unit.LengthUnit
	Forces  unit.ForceUnit
	set     *pflag.FlagSet
}

// LengthFlag defines the flag of the unit of lengths alone.
func (u *Units) LengthFlag(f *pflag.FlagSet) {
	u.set = f
	TextVar(f, &u.Lengths, "lengths", "`unit` of lengths: mm, in, or in64 for fractions to 1/64 (default: the build file's)")
}

// Flags defines the flags of both.
func (u *Units) Flags(f *pflag.FlagSet) {
	u.LengthFlag(f)
	TextVar(f, &u.Forces, "forces", "`unit` of forces: N, lbf or kgf (default: the build file's)")
}

// over puts the units given over those of the build.
func (u *Units) over(run *build.Run) table.Units {
	out := table.Units{Length: run.Build.LengthUnit, Force: run.Build.ForceUnit}
	if u.set != nil && u.set.Changed("lengths") {
		out.Length = u.Lengths
	}
	if u.set != nil && u.set.Changed("forces") {
		out.Force = u.Forces
	}
	return out
}
