package build

import (
	"strings"

	"scalepair/data/suggest"
	"scalepair/data/unit"
)

type Combining int

const (
	ByMean Combining = iota
	ByWorst
)

func (c *Combining) UnmarshalText(text []byte) error {
	return suggest.Word(c, string(text), []string{"mean", "worst"})
}

type Source int

const (
	NoTarget Source = iota
	LikeReference
	Stated
	Even
)

type Target struct {
	Source Source
	Force  unit.Force
}

func (t *Target) UnmarshalText(text []byte) error {
	words := []string{"none", "like the reference", "", "even"}
	if err := suggest.Word(&t.Source, string(text), words); err == nil && t.Source != Stated {
		return nil
	} else if !strings.ContainsAny(string(text), "0123456789") {
		return err
	}
	t.Source = Stated
	return t.Force.UnmarshalText(text)
}

type OvertoneTarget struct {
	Source Source
	Cents  unit.Cents
}

func (t *OvertoneTarget) UnmarshalText(text []byte) error {
	words := []string{"none", "like the reference"}
	if err := suggest.Word(&t.Source, string(text), words); err == nil {
		return nil
	} else if !strings.ContainsAny(string(text), "0123456789") {
		return err
	}
	t.Source = Stated
	return t.Cents.UnmarshalText(text)
}

type Mapping int

const (
	FromTreble Mapping = iota
	Across
)

func (m *Mapping) UnmarshalText(text []byte) error {
	return suggest.Word(m, string(text), []string{"from the treble", "across"})
}

type Direction int

func (d *Direction) UnmarshalText(text []byte) error {
	return suggest.Word(d, string(text), []string{"usual", "bass", "treble"})
}

type Feel struct {
	Tension      PerString[Target]    `toml:"tension" range:"5 N, 1000 N"`
	BendingForce PerString[Target]    `toml:"bending_force" range:"0.1 N, 500 N"`
	Overtone     OvertoneTarget       `toml:"inharmonicity" range:"0.1 cents, 1200 cents"`
	MoreStrings  Mapping              `toml:"more_strings"`
	BendStrings  []int                `toml:"bend_strings" range:"1, 24"`
	BendCents    unit.Cents           `toml:"bend_cents" range:"10, 500"`
	BendFrets    []int                `toml:"bend_frets" range:"1, 36"`
	BendTowards  PerString[Direction] `toml:"bend_towards"`
	Weights      Weights              `toml:"weights"`
}

type Weights struct {
	Tension      float64 `toml:"tension" range:"0, 1000"`
	BendingForce float64 `toml:"bending_force" range:"0, 1000"`
	Overtone     float64 `toml:"inharmonicity" range:"0, 1000"`
}

func defaultFeel() Feel {
	return Feel{BendCents: 200, BendFrets: []int{5, 12}, Weights: Weights{1, 1, 0.1}}
}

type Limits struct {
	Difference       unit.Length `toml:"difference" range:"0.1 mm, 500 mm"`
	FretSlant        unit.Angle  `toml:"fret_slant_deg" range:"0.1, 60"`
	SaddleSlant      unit.Angle  `toml:"saddle_slant_deg" range:"0.1, 60"`
	NutToFret1       unit.Length `toml:"nut_to_fret_1" range:"5 mm, 150 mm"`
	Inharmonicity    unit.Cents  `toml:"inharmonicity_cents" range:"0.1, 1200"`
	BreakingOpen     unit.Ratio  `toml:"breaking_open_percent" range:"1, 85"`
	BreakingBent     unit.Ratio  `toml:"breaking_bent_percent" range:"1, 95"`
	LeastTension     unit.Force  `toml:"least_tension" range:"1 N, 2000 N"`
	MostTension      unit.Force  `toml:"most_tension" range:"1 N, 2000 N"`
	MostBendingForce unit.Force  `toml:"most_bending_force" range:"0.1 N, 1000 N"`
	SaddleTravel     unit.Length `toml:"saddle_travel" range:"0.5 mm, 100 mm"`
	Blank            bool        `toml:"blank"`
}

// feel settles the targets.
func (c checker) feel() {
	f := &c.Feel
	reference := c.Build.Reference != nil
	gauges := c.Strings.Gauges != nil || c.Build.Chosen != nil && c.Build.Chosen.Gauges != nil
	fallback := NoTarget
	if reference {
		fallback = LikeReference
	}
	if f.BendingForce == nil {
		f.BendingForce = PerString[Target]{{Source: fallback}}
	}
	if !c.Given("feel.inharmonicity") {
		f.Overtone.Source = fallback
	}
	if f.Tension == nil {
		if gauges && !reference {
			fallback = Even
		}
		f.Tension = PerString[Target]{{Source: fallback}}
	}
	for _, t := range []struct {
		key string
		s   Source
	}{{"feel.tension", f.Tension[0].Source}, {"feel.bending_force", f.BendingForce[0].Source}, {"feel.inharmonicity", f.Overtone.Source}} {
		if t.s == LikeReference && !reference {
			c.wrong(t.key, "there is no instrument to be like", `describe it under [reference], or give a force such as "72 N"`)
		}
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
