// Package tile lays a drawing in true size out on sheets that a printer can
// take, ready to be joined again to a tenth of a millimetre.
//
// A long drawing is divided into pieces along its own joins: lines that lie in
// the gap between two slots and lean as those do, so that no cut of the paper
// crosses a slot or runs along one. Neighbouring pieces overlap; both carry the
// join itself, crop marks at its ends and two registration crosses on it.
//
// Every sheet carries a check bar of 100 mm along both of its axes with the
// words to measure it, its number, and a key map. A printer that is off is
// corrected from what its bars measured.
//
// All lengths are millimetres on the printed paper.
package tile
