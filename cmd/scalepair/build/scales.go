package build

import "scalepair/data/unit"

// Scales is the search over scale pairs.
type Scales struct {
	// Bass and Treble are the lengths to try, rising and unlike; both empty
	// when the file has no [scales]. Pairs whose bass is shorter than their
	// treble are for the chooser to leave out unless ReverseFan.
	Bass, Treble []unit.Length
	ReverseFan   bool
	// Apart is the least difference in bass, treble or difference between two
	// listed pairs: 0 to 200 mm, 5 mm unless given.
	Apart unit.Length
}
