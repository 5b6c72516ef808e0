// Package build reads the build file: one TOML file that says what is to be
// built, for whom and from what.
//
// A Build begins with its defaults, is overlaid by the file and then by the
// flags, and is checked once. Its structs are read by their tags: toml names the
// key, range bounds its value wherever that comes from. Unknown keys and values
// that are wrong are reported all at once, each at its line and column.
//
// The user writes every list over strings like a tuning, low string first; once
// read it starts at string 1, the highest. Lists of string numbers stay as
// written.
//
// Read in this order. What a file says: build.go its sections, feel.go those of
// the strings and the feel, neck.go those of the neck that are a word or a list,
// list.go the values that are one for all strings, a list or a range. From bytes
// to a Build: read.go, places.go where everything stands, check.go and fields.go
// every key into its field, ranges.go how large. What belongs together: rules.go,
// settle.go, tunings.go. Over the file: flag.go, flags.go. Back into files:
// template.go, edit.go single keys, save.go the chosen pair, keys.go what a form
// shows. With the readings beside it: run.go, request.go what is
// asked of the choice, columns.go and asked.go a comparison, lack.go what the stock
// lacks, work.go the work of one string, bench.go and resolution.go the bench.
package build

import (
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/gauges"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// Build is a whole build file. A value that may be left out has its default, or
// is 0 where there is none; Given reports whether it is stated.
type Build struct {
	// File is the name the file was read under, for messages.
	File   string
	places *places

	// Name is the build's short name, Readings the readings file with / between
	// folders, relative to the build file's folder.
	Name     string `toml:"name"`
	Readings string `toml:"readings"`
	// Units of what is printed, and of the lengths to try where [scales] gives none.
	LengthUnit unit.LengthUnit `toml:"length_unit"`
	ForceUnit  unit.ForceUnit  `toml:"force_unit"`
	// TuningsBy says how the Tunings are put together.
	TuningsBy choice.Combining `toml:"tunings_by"`

	Strings Strings `toml:"strings"`
	// Tunings are the tunings that one set and pair must serve together; empty
	// when there is only that of Strings.
	Tunings []Tuning `toml:"tunings"`
	// Reference is the instrument whose feel is wanted, nil when not given.
	Reference *Reference `toml:"reference"`
	Feel      Feel       `toml:"feel"`
	Scales    Scales     `toml:"scales"`
	// Chosen is the pair that was decided on, nil while nothing is chosen.
	Chosen *Chosen `toml:"chosen"`
	// Columns are those of a comparison, in the order written.
	Columns       []Compare             `toml:"compare"`
	Limits        choice.Limits         `toml:"limits"`
	Neck          Neck                  `toml:"neck"`
	Tails         Tails                 `toml:"tails"`
	Saddle        Saddle                `toml:"saddle"`
	Dots          fan.Dots              `toml:"dots"`
	FretWire      fan.FretWire          `toml:"fret_wire"`
	Playing       fan.Playing           `toml:"playing"`
	Lines         []fan.Line            `toml:"lines"`
	Measuring     gauges.Instruments    `toml:"measuring"`
	Marking       mark.Options          `toml:"marking"`
	Blanks        []fan.Blank           `toml:"blanks"`
	Constructions []gauges.Construction `toml:"constructions"`
	Materials     []gauges.Material     `toml:"materials"`
	Confidence    Confidence            `toml:"confidence"`
}

// Defaults of what the file leaves open. All are judgement but the pitch
// standard, ISO 16:1975.
func Defaults() *Build {
	const mm unit.Length = unit.Millimetre
	return &Build{
		Readings:   "readings.csv",
		Strings:    Strings{PitchStandard: tuning.ConcertA, Ordering: true},
		Neck:       Neck{Neck: fan.DefaultNeck()},
		Feel:       Feel{Feel: choice.DefaultFeel(false, false)},
		Limits:     choice.DefaultLimits(),
		Saddle:     Saddle{ActionTreble: 1.6 * mm, ActionBass: 2 * mm},
		FretWire:   fan.DefaultFretWire(),
		Measuring:  gauges.DefaultInstruments(),
		Confidence: Confidence{Trials: 2000, Seed: 1},
	}
}

// Pair is a scale pair as written: one scale for straight frets, or bass and
// treble. Read, Bass and Treble hold both.
type Pair struct {
	Scale  unit.Length `toml:"scale" range:"200 mm, 2000 mm"`
	Bass   unit.Length `toml:"bass" range:"200 mm, 2000 mm"`
	Treble unit.Length `toml:"treble" range:"200 mm, 2000 mm"`
}

// Scales is the search over scale pairs.
type Scales struct {
	// Bass and Treble are the lengths to try, rising; both empty when the file
	// has no [scales].
	Bass   Lengths `toml:"bass" range:"200 mm, 2000 mm"`
	Treble Lengths `toml:"treble" range:"200 mm, 2000 mm"`
	// ReverseFan lets a bass be shorter than its treble.
	ReverseFan bool `toml:"reverse_fan"`
}

// Chosen is the decided scale pair with what belongs to it.
type Chosen struct {
	Pair
	// Neutral is the chosen neutral fret; the neck's unless given.
	Neutral *fan.Neutral      `toml:"neutral_fret"`
	Gauges  PerString[string] `toml:"gauges"`
}

// Compare is one column of a comparison. What it leaves out is the build's.
type Compare struct {
	Name          string            `toml:"name"`
	Tuning        *tuning.Tuning    `toml:"tuning"`
	CapoFret      *int              `toml:"capo_fret" range:"0, 36"`
	PitchStandard unit.Frequency    `toml:"pitch_standard_hz" range:"380, 500"`
	Gauges        PerString[string] `toml:"gauges"`
	Pair
	Neutral *fan.Neutral `toml:"neutral_fret"`
}

// Confidence sets the trials behind the advice's confidence.
type Confidence struct {
	Trials int `toml:"trials" range:"0, 1000000"`
	Seed   int `toml:"seed" range:"0, 1000000000"`
}
