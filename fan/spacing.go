package fan

import (
	"scalepair/data/suggest"
	"scalepair/data/unit"
)

// SpacingRule says how the inner strings are spread between the outer ones.
type SpacingRule int

const (
	// EqualCentres puts equal distances between string centres.
	EqualCentres SpacingRule = iota
	// EqualGaps leaves equal free gaps between neighbouring strings: centre to
	// centre is the gap plus half of both diameters.
	EqualGaps
	// LikeNut, at the saddle only, takes the fractions that hold at the nut,
	// so that every inner string is exactly in tune on every fret.
	LikeNut
	// Listed takes Spacing.Steps.
	Listed
)

var spacingWords = []string{"equal centres", "equal gaps", "like the nut", "a list"}

// String names the rule in the builder's words.
func (r SpacingRule) String() string { return spacingWords[r] }

// Spacing is the rule at one end of the strings. Steps, for Listed only, go from
// centre to centre square to the centreline, the step from string 1 to string 2
// first; they may miss the string spread by stepsMiss.
type Spacing struct {
	Rule  SpacingRule
	Steps []unit.Length
}

// UnmarshalText reads a rule's words; a list is no word.
func (s *Spacing) UnmarshalText(text []byte) error {
	*s = Spacing{}
	return suggest.Word(&s.Rule, string(text), spacingWords[:Listed])
}

// stepsMiss is by how much listed steps may miss the string spread, for steps
// that were measured along a slanted line and for rounding (judgement).
const stepsMiss = 0.02

// sum of the listed steps.
func (s Spacing) sum() (sum unit.Length) {
	for _, step := range s.Steps {
		sum += step
	}
	return sum
}

// place is where one string ends along a slanted line, as
//
//	fraction = even + extra/width
//
// even   its share when only centres count
// extra  m that unequal diameters move it by under equal gaps, else 0
// width  of the outer strings' ends square to the centreline, m
type place struct{ even, extra float64 }

// places spreads the strings of a checked spec. Under equal gaps, with D the
// outer strings' distance, H = sum d - (d_first + d_last)/2 what the strings
// take of it and h_i what they take up to string i, both centre to centre:
//
//	gap = (D - H)/(n-1),  fraction_i = (i gap + h_i)/D = i/(n-1) + (h_i - H i/(n-1))/D
//
// Square to the centreline and along a slanted line give the same fractions.
// Ours, follows from what equal gaps mean.
func places(s Spec, spacing Spacing) (list []place, thick float64) {
	list = make([]place, s.Strings)
	last := float64(s.Strings - 1)
	for i := range list {
		list[i].even = float64(i) / last
	}
	switch spacing.Rule {
	case Listed:
		spreadSteps(list, spacing)
	case EqualGaps:
		thick = spreadGaps(list, s.Diameters)
	}
	return list, thick
}

func spreadSteps(list []place, spacing Spacing) {
	sum, at := spacing.sum(), unit.Length(0)
	for i, step := range spacing.Steps {
		at += step
		list[i+1].even = float64(at / sum)
	}
}

func spreadGaps(list []place, diameters []unit.Length) (thick float64) {
	for i := 1; i < len(list); i++ {
		thick += (diameters[i-1] + diameters[i]).M() / 2
		list[i].extra = thick
	}
	for i := range list {
		list[i].extra = plain(list[i].extra - float64(thick*list[i].even))
	}
	return thick
}

func sameWhateverTheSpread(a, b []place) bool {
	for i := range a {
		if a[i] != b[i] || a[i].extra != 0 {
			return false
		}
	}
	return true
}
