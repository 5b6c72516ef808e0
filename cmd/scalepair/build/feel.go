package build

import (
	"cmp"
	"fmt"
	"strings"

	"scalepair/data/suggest"
	"scalepair/data/unit"
)

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

// Target is a wanted tension or bending force.
type Target struct {
	Source Source
	// Forces holds one force by string, string 1 first, with Stated only; a
	// single force in the file stands for every string.
	Forces []unit.Force
}

// OvertoneTarget is the wanted inharmonicity of the lowest string.
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
	// gauges are given, else to none; Bending force and Overtone to the reference where
	// there is one, else to none.
	Tension, BendingForce Target
	Overtone              OvertoneTarget
	MoreStrings           Mapping
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
type Weights struct{ Tension, BendingForce, Overtone float64 }

func readFeel(s *section, strings, frets int, reference, gauges bool) Feel {
	f := Feel{BendCents: 200, BendFrets: []int{5, 12}, Weights: Weights{1, 1, 0.1}}
	fallback := NoTarget
	if reference {
		fallback = LikeReference
	}
	f.Tension.Source, f.BendingForce.Source, f.Overtone.Source = fallback, fallback, fallback
	if gauges && !reference {
		f.Tension.Source = Even
	}
	s.target("tension", &f.Tension, strings, reference, 5, 1000)
	s.target("bending_force", &f.BendingForce, strings, reference, 0.1, 500)
	s.overtone("inharmonicity", &f.Overtone, reference)
	choice(s, "more_strings", &f.MoreStrings, "from the treble", "across")
	f.BendStrings = s.wholes("bend_strings", 1, cmp.Or(strings, mostStrings))
	s.number("bend_cents", &f.BendCents, 10, 500)
	readBendFrets(s, &f, frets)
	f.BendTowards = s.directions("bend_towards", strings)
	readWeights(s.sub("weights"), &f.Weights)
	return f
}

// readBendFrets reads the frets of the bend; those of the default that the
// board does not have are left out.
func readBendFrets(s *section, f *Feel, frets int) {
	if s.has("bend_frets") {
		if n := s.find("bend_frets"); n.kind == kindList && len(n.items) == 0 {
			s.wrong(n, "bend frets is an empty list", "give at least one fret, or leave the line out")
		}
		f.BendFrets = s.wholes("bend_frets", 1, frets)
		return
	}
	s.find("bend_frets")
	for len(f.BendFrets) > 1 && f.BendFrets[len(f.BendFrets)-1] > frets {
		f.BendFrets = f.BendFrets[:len(f.BendFrets)-1]
	}
	f.BendFrets[0] = min(f.BendFrets[0], frets)
}

// sourceWords name the sources that are words in the file.
var sourceWords = []string{"like the reference", "even", "none"}

var wordSources = []Source{LikeReference, Even, NoTarget}

// source reads a target given as a word; false when n is no such word.
func (s *section) source(n *node, into *Source, reference bool) bool {
	i := -1
	if n.kind == kindText {
		i = wordIndex(n.text, sourceWords)
	}
	if i < 0 {
		return false
	}
	*into = wordSources[i]
	if *into == LikeReference && !reference {
		s.wrong(n, "there is no instrument to be like", "describe it under [reference], or give a force such as \"72 N\"")
	}
	return true
}

// target reads a word, one force, or one force for each string.
func (s *section) target(key string, into *Target, strings int, reference bool, lo, hi unit.Force) {
	n := s.find(key)
	if n == nil || s.source(n, &into.Source, reference) {
		return
	}
	if n.kind == kindText && !startsWithNumber(n.text) {
		s.wrong(n, say(key)+" does not know this word", wordOr(n.text, "72 N"))
		return
	}
	*into = Target{Stated, spread(s, key, strings, lo, hi, unit.ParseForce)}
}

// overtone reads a word or a number of cents.
func (s *section) overtone(key string, into *OvertoneTarget, reference bool) {
	n := s.find(key)
	if n == nil || s.source(n, &into.Source, reference) && into.Source != Even {
		return
	}
	cents, isCents := parseCents(n)
	switch {
	case !isCents && n.kind == kindText && !startsWithNumber(n.text):
		s.wrong(n, say(key)+" does not know this word", wordOr(n.text, "20 cents"))
	case !isCents:
		s.wrong(n, say(key)+" must be in cents", `write "20 cents"`)
	case cents < 0.1 || cents > 1200:
		s.wrong(n, say(key)+" is out of range", `from "0.1 cents" to "1200 cents" will do`)
	default:
		*into = OvertoneTarget{Stated, cents}
	}
}

// parseCents reads "20 cents"; false for anything else.
func parseCents(n *node) (float64, bool) {
	number, found := strings.CutSuffix(strings.TrimSuffix(strings.TrimSpace(n.text), "s"), "cent")
	if n.kind != kindText || !found {
		return 0, false
	}
	x, err := unit.ParseNumber(number)
	return x, err == nil
}

func startsWithNumber(text string) bool {
	return strings.IndexAny(strings.TrimSpace(text), "+-.0123456789½¼¾") == 0
}

// wordOr suggests the nearest word or, failing that, all of them and an
// example of the quantity.
func wordOr(text, example string) string {
	if best := suggest.Nearest(text, sourceWords); best != "" {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return fmt.Sprintf("use %s, or a value such as %q", quoteAll(sourceWords), example)
}

// directions reads a direction for each string, low string first, and gives
// them from string 1.
func (s *section) directions(key string, strings int) []Direction {
	words := []string{"usual", "bass", "treble"}
	texts := s.perString(key, strings)
	var out []Direction
	for i, text := range texts {
		d := wordIndex(text, words)
		if d < 0 {
			s.wrong(s.find(key).items[len(texts)-1-i], say(key)+" does not know this word", chooseFrom(text, words))
			return nil
		}
		out = append(out, Direction(d))
	}
	return out
}

func readWeights(s *section, w *Weights) {
	s.number("tension", &w.Tension, 0, 1000)
	s.number("bending_force", &w.BendingForce, 0, 1000)
	s.number("inharmonicity", &w.Overtone, 0, 1000)
	if s.table != nil && w.Tension+w.BendingForce+w.Overtone == 0 {
		s.missing("all weights are 0, so nothing is wanted", "give one of them a weight")
	}
}
