// Package build reads the build file: one TOML file that says what is to be
// built, for whom and from what.
//
// Read gives plain, checked Go values: lengths as unit.Length, forces as
// unit.Force, other numbers with the unit in the field's name. Every unknown
// key and every wrong value is reported at its line and column, all at once.
// Build.Place gives the place of any key, so that later layers can report
// what they find at the right line too.
//
// The user writes every list like a tuning, low string first; here every slice
// over strings starts at string 1, the highest. Lists of string numbers
// (bend_strings) stay as written.
//
// A value that may be left out has its default here; Given tells whether the
// file states it. Limits that are left out are 0, which means no limit.
//
// SetKeys changes single values in a file and leaves comments and layout as
// they are. Template writes a first build file with its readings.
package build

import (
	"scalepair/data/unit"
)

// Build is a whole build file.
type Build struct {
	// File is the name the file was read under, for messages.
	File string
	// Name is the build's short name, "" when not given.
	Name string
	// Readings is the readings file with / between folders, relative to the build
	// file's folder; "readings.csv" unless given.
	Readings string
	// LengthUnit and ForceUnit are the units of what is printed; millimetres
	// and newtons unless given.
	LengthUnit unit.LengthUnit
	ForceUnit  unit.ForceUnit

	Strings Strings
	// Tunings are the tunings that one set and pair must serve together; empty
	// when there is only Strings.Tuning.
	Tunings []WeightedTuning
	// TuningsBy says how they are put together.
	TuningsBy Combining
	// Reference is the instrument whose feel is wanted, nil when not given.
	Reference *Reference
	Feel      Feel
	Scales    Scales
	// Chosen is the pair that was decided on, nil while nothing is chosen.
	Chosen *Chosen
	// Columns are the columns of a comparison, in the order written.
	Columns []Column
	Limits  Limits
	Neck    Neck
	// Tails are the lengths beyond nut and saddle.
	Tails     Tails
	Saddle    Saddle
	Dots      Dots
	FretWire  FretWire
	Playing   Playing
	Lines     []Line
	Measuring Measuring
	Marking   Marking
	Blanks    []Blank
	// Constructions are gauges known by core and wrap only.
	Constructions []Construction
	// Materials are the user's own, beside the embedded list.
	Materials  []Material
	Confidence Confidence

	root *table
}
