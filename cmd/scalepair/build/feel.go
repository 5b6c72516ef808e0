package build

import (
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
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

// Feel is what the player wants to feel. Its lists over strings are read here,
// and put into the embedded one once they are settled.
type Feel struct {
	choice.Feel
	Tension          PerString[choice.Target]    `toml:"tension" range:"5 N, 1000 N"`
	BendingForce     PerString[choice.Target]    `toml:"bending_force" range:"0.1 N, 500 N"`
	BendTowards      PerString[choice.Direction] `toml:"bend_towards"`
	ReferenceStrings PerString[int]              `toml:"reference_strings" range:"1, 24"`
}

// feel fills in what follows from other keys.
func (c checker) feel() {
	f := &c.Feel
	reference := c.Build.Reference != nil
	gauges := c.Strings.Gauges != nil || c.Build.Chosen != nil && c.Build.Chosen.Gauges != nil
	fallback := choice.DefaultFeel(reference, gauges)
	for _, t := range []struct {
		key    string
		target PerString[choice.Target]
	}{{"feel.tension", f.Tension}, {"feel.bending_force", f.BendingForce}} {
		if len(t.target) > 0 && t.target[0].Kind == choice.LikeReference && !reference {
			c.wrong(t.key, "there is no instrument to be like", `describe it under [reference], or give a force such as "72 N"`)
			break // once
		}
	}
	if f.Tension == nil {
		f.Tension = PerString[choice.Target]{fallback.Tension}
	}
	if f.BendingForce == nil {
		f.BendingForce = PerString[choice.Target]{fallback.BendingForce}
	}
	c.wrongIf(len(f.BendFrets) == 0, "feel.bend_frets", "this list is empty", "give at least one fret, or leave the line out")
	for len(f.BendFrets) > 1 && f.BendFrets[len(f.BendFrets)-1] > c.Neck.Frets {
		f.BendFrets = f.BendFrets[:len(f.BendFrets)-1]
	}
}

// feelTogether puts the settled lists over strings into the embedded feel.
func (c checker) feelTogether() {
	f := &c.Feel
	var err error
	if f.Feel.Tension, err = choice.Together(f.Tension); err != nil {
		c.faults.Include(c.Place("feel.tension"), fault.About("tension", err))
	}
	if f.Feel.BendingForce, err = choice.Together(f.BendingForce); err != nil {
		c.faults.Include(c.Place("feel.bending_force"), fault.About("bending_force", err))
	}
	f.Feel.Towards = f.BendTowards
	f.Feel.ReferenceStrings = f.ReferenceStrings
}
