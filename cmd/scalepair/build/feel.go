package build

import (
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tuning"
)

// Strings says what the instrument is strung with.
type Strings struct {
	// Tuning holds the open strings' notes. Where only [[tunings]] are given it
	// is the first of them.
	Tuning        tuning.Tuning  `toml:"tuning"`
	PitchStandard unit.Frequency `toml:"pitch_standard_hz" range:"380, 500"`
	// CapoFret raises every string by that many semitones; 0 is no capo.
	CapoFret int `toml:"capo_fret" range:"0, 36"`
	// Gauges are the labels of a set that is given; nil leaves the choice free.
	Gauges PerString[string] `toml:"gauges"`
	// Stock names the only gauges that may be chosen, as written; nil means
	// every gauge with a reading or a construction.
	Stock []string `toml:"stock"`
	// Ordering keeps a string from being lighter than its treble neighbour and
	// plain strings on the treble side. Off for courses and re-entrant tunings.
	Ordering bool `toml:"ordering"`
}

// Tuning is one of several tunings that a build must serve.
type Tuning struct {
	// Name is shown in headings; the tuning's own words when not given.
	Name   string        `toml:"name"`
	Tuning tuning.Tuning `toml:"tuning"`
	// Weight is this tuning's share in a mean; 1 when not given.
	Weight float64 `toml:"weight" range:"0.001, 1000"`
	// CapoFret is that of Strings where it is not given.
	CapoFret int `toml:"capo_fret" range:"0, 36"`
}

// Reference is an instrument that the player knows and likes. What it leaves
// out is the neck's.
type Reference struct {
	Name string `toml:"name"`
	Pair
	Neutral       *fan.Neutral      `toml:"neutral_fret"`
	Frets         int               `toml:"frets" range:"1, 36"`
	Tuning        tuning.Tuning     `toml:"tuning"`
	PitchStandard unit.Frequency    `toml:"pitch_standard_hz" range:"380, 500"`
	Gauges        PerString[string] `toml:"gauges"`
	NutSpread     unit.Length       `toml:"string_spread_at_nut" range:"5 mm, 300 mm"`
	SaddleSpread  unit.Length       `toml:"string_spread_at_saddle" range:"5 mm, 400 mm"`
	// Lengths beyond nut and saddle; see Tails.
	NutTail    PerString[unit.Length] `toml:"nut_tail" range:"0 mm, 1000 mm"`
	SaddleTail PerString[unit.Length] `toml:"saddle_tail" range:"0 mm, 1000 mm"`
	// TailsAssumed says that one of them is not stated.
	TailsAssumed bool
}
