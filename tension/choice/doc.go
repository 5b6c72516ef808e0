// Package choice decides which bass and treble scale length, and which gauges
// of a stock, come nearest to a wanted feel, and says what each pair costs.
//
// # What is compared
//
// A Request names one tuning or several, a stock of gauges, a neck, a grid of
// scale pairs, and a feel: wanted tension for every string, wanted bending force on the
// strings that are bent, wanted inharmonicity of the lowest string. Wanted
// values come from a reference instrument, from numbers, or (gauges given
// only) from the candidate's own mean.
//
// Every pair gets the score
//
//	score = a P^2 + b Q^2 + c O^2
//
// with P and Q the root mean squares of ln(value/target) of tension over all
// strings and of bending force over the bend strings and their frets, and O the
// ln(value/target) of the lowest string's inharmonicity where it stands above
// its target, else 0. A misfit is 100 times the root mean square: near enough
// a percentage.
//
// # How gauges are chosen
//
// With fixed targets the strings do not know of each other, so each takes the
// admissible gauge with the least contribution. The ordering rule (no string
// lighter than its treble neighbour, no plain string on the bass side of a
// wound one) ties them together; then an exact dynamic programme over the
// stock sorted by linear density finds the set of least score. Ties go to the
// lighter gauge.
//
// # Conventions
//
// Slices over strings start at string 1, the highest. Lengths of scales are in
// millimetres, as in package fan; everything about a string is in SI units.
package choice
