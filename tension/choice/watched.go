package choice

import (
	"slices"

	"scalepair/data/odd"
)

// Rows of the table.
const (
	watchTension = iota
	watchBassTension
	watchBendingForce
	watchShareOpen
	watchShareBent
	watchRise
	watchCompensation
	watchTensionTarget
	watchBendingForceTarget
	watchLeast
	watchMost
	watchMostBendingForce
	watchBendCents
	watchNutTail
	watchSaddleTail
	watchHeight
)

// bassFromM is the own length from which a string counts as a bass's
// (judgement: the longest guitars and baritones have 30 in, 762 mm, and the
// shortest basses as much, so the ranges of tension overlap widely).
const bassFromM = 0.74

const (
	noSource     = "common practice, no source"
	checkTension = "check its gauge, its note with the octave, and the scale length"
	checkUnit    = "check the number and its unit"
)

// watched are the usual ranges of what strings do, and of what is asked of
// them.
var watched = [...]odd.Usual{
	watchTension: {Quantity: "tension", Measure: odd.Newtons, Low: 20, High: 150,
		Check:  checkTension,
		Source: "strings shorter than 740 mm: 56.4 and 78.0 N in textbooks (University Physics 1, 16.3; University Physics, 14th ed., 15.74); ukuleles from 20, heavy guitar sets to 150 N (judgement)"},
	watchBassTension: {Quantity: "tension of a long string", Measure: odd.Newtons, Low: 50, High: 320,
		Check: checkTension, Source: "strings of 740 mm or more: basses 130 to 250 N, long baritones from 60 N (judgement)"},
	watchBendingForce: {Quantity: "bending force of a bend", Measure: odd.Newtons, Low: 0.5, High: 40,
		Check: "check the bend's interval, the gauge and the lengths beyond nut and saddle", Source: "judgement: a whole tone on a guitar takes 7 to 15 N; few fingers hold 40 N"},
	watchShareOpen: {Quantity: "breaking share", Measure: odd.Share, Low: 0, High: MostBreakingOpen,
		Check: checkTension, Source: "the most that limits.breaking_open_percent can be set to; the elastic limit lies at 65 to 75 % (Shigley, Table 10-5)"},
	watchShareBent: {Quantity: "breaking share while bent", Measure: odd.Share, Low: 0, High: MostBreakingBent,
		Check: "check gauge and note, and the bend's interval", Source: "the most that limits.breaking_bent_percent can be set to"},
	watchRise: {Quantity: "inharmonicity", Measure: odd.Cents, Low: 0, High: 120,
		Check: "check the core's diameter, the note and the scale length", Source: "judgement: 3 to 60 cents on strings in use; at 120 a string sounds like a bar"},
	watchCompensation: {Quantity: "least compensation", Measure: odd.Millimetres, Low: -0.5, High: 8,
		Check: "check the height over fret 12, the core and the tension", Source: "1 to 4 mm on most strings (" + noSource + "), with room for thick slack ones"},
	watchTensionTarget: {Quantity: "wanted tension", Measure: odd.Newtons, Low: 20, High: 320,
		Check: "is the unit N, lbf or kgf? 16 lbf is 71 N", Source: "as for the tension"},
	watchBendingForceTarget: {Quantity: "wanted bending force", Measure: odd.Newtons, Low: 0.5, High: 40,
		Check: "is the unit N, lbf or kgf? 3 lbf is 13 N", Source: "as for the bending force"},
	watchLeast: {Quantity: "least tension", Measure: odd.Newtons, Low: 10, High: 250,
		Check: "is the unit N, lbf or kgf? 16 lbf is 71 N", Source: "as for the tension, with room for a loose limit"},
	watchMost: {Quantity: "most tension", Measure: odd.Newtons, Low: 30, High: 450,
		Check: "is the unit N, lbf or kgf? 16 lbf is 71 N", Source: "as for the tension, with room for a loose limit"},
	watchMostBendingForce: {Quantity: "most bending force", Measure: odd.Newtons, Low: 2, High: 100,
		Check: "is the unit N, lbf or kgf? 3 lbf is 13 N", Source: "as for the bending force, with room for a loose limit"},
	watchBendCents: {Quantity: "interval of the bend", Measure: odd.Cents, Low: 50, High: 400,
		Check: "a whole tone is 200 cents", Source: "a quarter tone to a major third (judgement); one to four semitones: Grimes, PLOS ONE 9 (2014), through a secondary note"},
	watchNutTail: {Quantity: "string beyond the nut", Measure: odd.Millimetres, Low: 0, High: 320,
		Check: "it goes from the nut to the post", Source: "0 at a locking nut to the sixth post of a headstock in one line, 250 mm (" + noSource + ")"},
	watchSaddleTail: {Quantity: "string behind the saddle", Measure: odd.Millimetres, Low: 0, High: 220,
		Check: "it goes from the saddle to where the string is held", Source: "10 mm at a bridge to 180 mm at a tailpiece (" + noSource + ")"},
	watchHeight: {Quantity: "height over fret 12", Measure: odd.Millimetres, Low: 0.7, High: 5,
		Check: "is it the gap between fret and string? 5/64 in is 1.98 mm", Source: "1 mm on low set guitars to 4 mm on classical guitars (" + noSource + ")"},
}

// Watched gives the usual ranges of what strings do and of what is asked of them, row by row.
func Watched() []odd.Usual { return slices.Clone(watched[:]) }
