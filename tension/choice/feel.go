package choice

import (
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// Feel is what the player wants to feel. Lists by string start at string 1.
type Feel struct {
	Tension      Target `toml:"-"` // a word, a force or a list: read apart
	BendingForce Target `toml:"-"`
	// Inharmonicity is wanted of the string of lowest pitch; 0 where none is
	// stated. It is no part of the error.
	Inharmonicity unit.Cents   `toml:"inharmonicity" range:"0.1 cents, 1200 cents"`
	Construction  Construction `toml:"construction"`
	// ReferenceStrings gives for every string the number of the reference's
	// string that it is compared with; nil finds them, see pairing.
	ReferenceStrings []int `toml:"-"`

	// BendStrings are numbers of strings; nil asks for the default, an empty
	// slice means none.
	BendStrings []int       `toml:"bend_strings" range:"1, 24"`
	Bend        unit.Cents  `toml:"bend_cents" range:"10, 500"`
	BendFrets   []int       `toml:"bend_frets" range:"1, 36"`
	Towards     []Direction `toml:"-"` // by string; nil is Middle for all

	// BendWeight is b, what a bend counts beside the tension.
	BendWeight float64 `toml:"bend_weight" range:"0, 100"`
	// Noticeable is n, the least difference of feel error that a player notices.
	Noticeable unit.Ratio `toml:"noticeable" range:"0.1 %, 50 %"`
	// Prefer names the pick that is taken while no pair is chosen; NoPick leaves
	// it to the defaults of Result.Preferred.
	Prefer PickKind `toml:"prefer"`
}

// NoneNear reports whether even this least error, without what no set can remove, is
// far from what is wanted (judgement: five times what is noticed).
func (f *Feel) NoneNear(least unit.Ratio) bool { return least > 5*f.Noticeable }

// DefaultFeel is the feel of a build that states none: like the reference where
// there is one; else even tension where gauges are given, since nothing else
// can be compared. The numbers are judgement.
func DefaultFeel(reference, gauges bool) Feel {
	f := Feel{Bend: 200, BendFrets: []int{5, 12}, BendWeight: 1, Noticeable: 0.02}
	switch {
	case reference:
		f.Tension.Kind = LikeReference
		f.BendingForce = Target{Kind: LikeReference, NoHarder: true}
	case gauges:
		f.Tension.Kind = Even
	}
	return f
}

// Target is a wanted tension or bending force.
type Target struct {
	Kind TargetKind
	// NoHarder counts only what is harder than wanted. For bends.
	NoHarder bool
	// Forces, with Stated only: one for all strings, or one by string.
	Forces []unit.Force
}

// TargetKind says where a target comes from.
type TargetKind int

const (
	// NoTarget leaves the term out of the error.
	NoTarget TargetKind = iota
	// LikeReference takes what the reference's string does.
	LikeReference
	// Stated takes the given forces.
	Stated
	// Even wants the same tension of all strings: the geometric mean of the
	// reference's, without reference that of the candidate itself, which then
	// must have its gauges given.
	Even
)

// targetWords are the texts of the targets without a number, wordTargets what
// each says.
var (
	targetWords = []string{"like the reference", "no harder than the reference", "even", "none"}
	wordTargets = []Target{{Kind: LikeReference}, {Kind: LikeReference, NoHarder: true}, {Kind: Even}, {}}
)

const noHarder = "no harder than "

// UnmarshalText reads one of the words, "72 N" or "no harder than 12 N".
func (t *Target) UnmarshalText(text []byte) error {
	plain := strings.ToLower(strings.Join(strings.Fields(string(text)), " "))
	number, harder := strings.CutPrefix(plain, noHarder)
	if !strings.ContainsAny(number, "0123456789") {
		var word int
		if err := suggest.Word(&word, plain, targetWords); err != nil {
			return err
		}
		*t = wordTargets[word]
		return nil
	}
	force, err := unit.ParseForce(number)
	if err != nil {
		return err
	}
	*t = Target{Kind: Stated, NoHarder: harder, Forces: []unit.Force{force}}
	return nil
}

// Together makes one target of one for each string; the error says that words
// stand among forces.
func Together(list []Target) (Target, error) {
	if len(list) == 0 {
		return Target{}, nil
	}
	out := Target{Kind: list[0].Kind, NoHarder: list[0].NoHarder}
	for _, t := range list {
		if t.Kind != out.Kind || t.NoHarder != out.NoHarder {
			return Target{}, fault.Fault{What: "a list of targets holds forces only", Given: t.String(), Remedy: `write a force for every string, such as "72 N"`}
		}
		out.Forces = append(out.Forces, t.Forces...)
	}
	return out, nil
}

// String says the target in the words that UnmarshalText reads, but for a list.
func (t Target) String() string {
	if t.Kind != Stated {
		return targetWords[slices.IndexFunc(wordTargets, func(w Target) bool { return w.Kind == t.Kind && w.NoHarder == t.NoHarder })]
	}
	var forces []string
	for _, f := range t.Forces {
		forces = append(forces, f.String())
	}
	text := strings.Join(forces, ", ")
	if t.NoHarder {
		text = noHarder + text
	}
	return text
}

// Construction says whether a string keeps its reference string's, plain or
// wound.
type Construction int

const (
	// LikeReferenceConstruction keeps it wherever a gauge of it comes near.
	LikeReferenceConstruction Construction = iota
	// FreeConstruction takes either.
	FreeConstruction
)

var constructionWords = []string{"like the reference", "free"}

// UnmarshalText reads the word.
func (c *Construction) UnmarshalText(text []byte) error {
	return suggest.Word(c, string(text), constructionWords)
}

// Direction is the way a string is bent.
type Direction int

const (
	// Middle bends strings of the treble half, and a middle one, towards the
	// bass side, and the others towards the treble side.
	Middle Direction = iota
	// TowardsBass bends to the bass side.
	TowardsBass
	// TowardsTreble bends to the treble side.
	TowardsTreble
)

var directionWords = []string{"middle", "bass", "treble"}

// UnmarshalText reads the word.
func (d *Direction) UnmarshalText(text []byte) error {
	return suggest.Word(d, string(text), directionWords)
}

// sign is +1 where string i (from 0) of n is bent towards the bass side, -1
// towards the treble.
func (d Direction) sign(i, n int) float64 {
	if d == TowardsBass || d == Middle && i < (n+1)/2 {
		return 1
	}
	return -1
}

// Combining says how several tunings make one error.
type Combining int

const (
	// Mean takes the mean of the squared errors by the tunings' weights.
	Mean Combining = iota
	// Worst takes, string by string, the squared error of the tuning that suits
	// the string least, so that strings stay independent and the choice exact.
	Worst
)

var combiningWords = []string{"mean", "worst"}

// UnmarshalText reads the word.
func (c *Combining) UnmarshalText(text []byte) error {
	return suggest.Word(c, string(text), combiningWords)
}

// PickKind names a pick.
type PickKind int

const (
	NoPick      PickKind = iota
	SmallestFan          // least difference
	MiddlePick           // bass at least half way from the smallest fan's to the longest
	LongestBass          // longest bass
	ClearEnough          // least difference that gives the wanted inharmonicity
	BestFeel             // least error; with gauges given only
)

var pickWords = []string{"none", "smallest fan", "middle", "longest bass", "clear enough", "best feel"}

// String gives the builder's words.
func (k PickKind) String() string { return pickWords[k] }

// MarshalText gives the words.
func (k PickKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the words.
func (k *PickKind) UnmarshalText(text []byte) error { return suggest.Word(k, string(text), pickWords) }
