package build

import "scalepair/data/unit"

// Source says where the target of a feel comes from.
type Source int

// The sources of a target.
const (
	// NoTarget leaves the term out.
	NoTarget Source = iota
	// LikeReference takes what the reference instrument's string does.
	LikeReference
	// Stated takes the values given.
	Stated
	// Even takes the candidate's own mean; only with gauges given.
	Even
)

// Target is a wanted tension or push.
type Target struct {
	Source Source
	// Forces holds one force by string, string 1 first, with Stated only; a
	// single force in the file stands for every string.
	Forces []unit.Force
}

// OvertoneTarget is the wanted overtone rise of the lowest string.
type OvertoneTarget struct {
	Source Source
	// Cents, with Stated only: above 0; counted above it only.
	Cents float64
}

// Mapping says which string of the reference a string is like when their
// numbers differ.
type Mapping int

// The mappings.
const (
	// FromTreble: string 1 like string 1, strings beyond the last like the last.
	FromTreble Mapping = iota
	// Across: by position between the outer strings.
	Across
)

// Direction is the way a string is pushed in a bend.
type Direction int

// The directions of a bend.
const (
	// Usual is towards the middle of the board.
	Usual Direction = iota
	TowardsBass
	TowardsTreble
)

// Feel is what the player wants to feel.
type Feel struct {
	// Tension defaults to the reference where there is one, else to Even where
	// gauges are given, else to none; Push and Overtone to the reference where
	// there is one, else to none.
	Tension, Push Target
	Overtone      OvertoneTarget
	MoreStrings   Mapping
	// BendStrings are string numbers, 1 the highest; nil when not given (the
	// chooser's default), empty for none.
	BendStrings []int
	// BendCents is the bend's interval: 10 to 500, 200 unless given.
	BendCents float64
	// BendFrets are the frets where it is bent: 1 to the last, unlike; 5 and 12
	// unless given.
	BendFrets []int
	// BendTowards by string, string 1 first; nil when not given.
	BendTowards []Direction
	Weights     Weights
}

// Weights are the factors of the score's three terms: 0 to 1000, 1, 1 and 0.1
// unless given.
type Weights struct{ Tension, Push, Overtone float64 }
