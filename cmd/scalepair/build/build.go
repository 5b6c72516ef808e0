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
	"scalepair/tuning"
)

// Build is a whole build file.
type Build struct {
	// File is the name the file was read under, for messages.
	File string
	// Name is the build's short name, "" when not given.
	Name string
	// Readings is the readings file as written, relative to the build file's
	// folder; "readings.csv" unless given.
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

	places map[string]place
}

// Combining says how several tunings make one score.
type Combining int

// The ways of combining tunings.
const (
	// ByMean takes the weighted mean of the tunings' misfits.
	ByMean Combining = iota
	// ByWorst takes the worst tuning's.
	ByWorst
)

// Strings says what the instrument is strung with.
type Strings struct {
	// Tuning holds the open strings' notes. Where only [[tunings]] are given it
	// is the first of them.
	Tuning tuning.Tuning
	// PitchStandardHz is the pitch of A4: 380 to 500, 440 unless given.
	PitchStandardHz float64
	// CapoFret raises every string by that many semitones; 0 is no capo.
	CapoFret int
	// Gauges are the stock labels, string 1 first; nil leaves the choice free.
	Gauges []string
	// Stock names the only gauges that may be chosen, as written; nil means
	// every gauge with a reading or a construction.
	Stock []string
	// Ordering keeps a string from being lighter than its treble neighbour and
	// plain strings on the treble side; true unless given. Off for courses and
	// re-entrant tunings.
	Ordering bool
}

// WeightedTuning is one of several tunings that a build must serve.
type WeightedTuning struct {
	// Name is shown in headings; the tuning's own words when not given.
	Name   string
	Tuning tuning.Tuning
	// Weight is this tuning's share in a mean: above 0, 1 unless given.
	Weight float64
	// CapoFret is as in Strings.
	CapoFret int
}

// Reference is an instrument that the player knows and likes.
type Reference struct {
	// Name is shown in headings, "" when not given.
	Name string
	// Bass and Treble are its scale lengths, equal for straight frets.
	Bass, Treble unit.Length
	// Neutral is its neutral fret; the neck's unless given.
	Neutral Neutral
	// Frets is the number of its frets; the neck's unless given.
	Frets  int
	Tuning tuning.Tuning
	// PitchStandardHz is the pitch of its A4; that of Strings unless given.
	PitchStandardHz float64
	// Gauges are the stock labels of its strings, string 1 first.
	Gauges []string
	// NutSpan and SaddleSpan are between its outer strings; 0 when not given,
	// to be taken like the neck's.
	NutSpan, SaddleSpan unit.Length
	// Tails by string, string 1 first.
	Tails Tails
}

// Chosen is the decided scale pair with what belongs to it.
type Chosen struct {
	Bass, Treble unit.Length
	// Neutral is the chosen neutral fret; the neck's unless given.
	Neutral Neutral
	// Gauges are stock labels, string 1 first; nil when none were decided.
	Gauges []string
}

// Column is one column of a comparison. What it leaves out is the build's.
type Column struct {
	// Name heads the column, "" when not given.
	Name string
	// Tuning is nil when not given.
	Tuning *tuning.Tuning
	// CapoFret is as in Strings.
	CapoFret int
	// PitchStandardHz is that of Strings unless given.
	PitchStandardHz float64
	// Gauges by string, string 1 first; nil when not given.
	Gauges []string
	// Bass and Treble are both 0 when not given.
	Bass, Treble unit.Length
	// Neutral is nil when not given: the chosen pair's or the neck's.
	Neutral *Neutral
}
