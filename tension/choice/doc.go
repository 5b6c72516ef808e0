// Package choice decides which bass and treble scale length, and which gauges
// of the strings in stock, come nearest to a wanted feel, and shows what each
// pair costs in the fan and gives to the lowest string.
//
// # What decides what
//
// With gauges free almost any pair can be strung to the wanted tension, so feel
// alone does not choose a length: it says which pairs are good enough. A longer
// bass gives the lowest string less inharmonicity, and every millimetre of
// difference makes the fan steeper. That trade-off only the builder can settle,
// so it is shown: as picks, each with what stops it, and as a list of steps from
// one end to the other. With gauges given, tension goes with the square of the
// length, and feel does choose.
//
// # Feel error
//
// A string's error e is made of the logarithms of tension, bending force and bend
// distance over the wanted ones, where a bend may be easier than wanted at no
// cost (see measure); a pair's error E is the root of the mean of e^2 over the
// strings. Above 20 % it differs visibly from percent deviations. A pair is as
// good as the best where E is at most max(E_best, n) + n, with n what a player
// notices. Of several tunings with one set, U is what no set can remove,
// and sqrt(E^2 - U^2) is compared.
//
// # How gauges are chosen
//
// With fixed targets the strings do not know of each other, so each takes the
// admissible gauge of least error, of its reference string's construction where
// one comes near. The ordering rule (no string lighter than its treble
// neighbour, no plain string on the bass side of a wound one) ties them together;
// then an exact dynamic programme finds the set. Ties go to the lighter gauge.
//
// # Reading order
//
// feel, limit, request, check: what is asked. plan, capo, reference: made ready.
// place, gauge, set, order: one pair strung. pair, budget, detail, suggest: one
// pair worked out. search, picks, result, stops, answer: the grid and the answer.
// lack: what the stock lacks. taste, confidence, map, next: how far it can be
// trusted. compare: a few side by side.
//
// # Conventions
//
// Slices over strings start at string 1, the highest. Results point into the
// stock by index.
package choice
