package build

import (
	"strconv"

	"scalepair/data/fault"
	"scalepair/tension/choice"
)

// Feel is what the player wants to feel. Its lists over strings are read here,
// and put into the embedded one once they are settled.
type Feel struct {
	choice.Feel
	Tension          PerString[choice.Target]    `toml:"tension" range:"5 N, 1000 N"`
	BendingForce     PerString[choice.Target]    `toml:"bending_force" range:"0.1 N, 500 N"`
	BendTowards      PerString[choice.Direction] `toml:"bend_towards"`
	ReferenceStrings PerString[stringNumber]     `toml:"reference_strings"`
}

// stringNumber is the number of a string, 1 the highest.
type stringNumber int

// UnmarshalText reads the number.
func (n *stringNumber) UnmarshalText(text []byte) error {
	x, err := strconv.Atoi(string(text))
	if err != nil || x < 1 || x > mostStrings {
		return fault.Fault{What: "this is no number of a string", Given: string(text), Remedy: "1 is the highest"}
	}
	*n = stringNumber(x)
	return nil
}

// feel fills in what follows from other keys.
func (c checker) feel() {
	f := &c.Feel
	reference := c.Build.Reference != nil
	gauges := c.Strings.Gauges != nil || c.Build.Chosen != nil && c.Build.Chosen.Gauges != nil
	fallback := choice.DefaultFeel(reference, gauges)
	if f.Tension == nil {
		f.Tension = PerString[choice.Target]{fallback.Tension}
	}
	if f.BendingForce == nil {
		f.BendingForce = PerString[choice.Target]{fallback.BendingForce}
	}
	if c.Given("feel.bend_frets") {
		if len(f.BendFrets) == 0 {
			c.wrong("feel.bend_frets", "this list is empty", "give at least one fret, or leave the line out")
		}
	}
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
	for _, n := range f.ReferenceStrings {
		f.Feel.ReferenceStrings = append(f.Feel.ReferenceStrings, int(n))
	}
}
