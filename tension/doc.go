// Package tension holds the physics of one string: the tension that gives a
// pitch, the bending force and travel of a bend, the margin to breaking, the rise of
// the overtones and the compensation of the saddle.
//
// # Quantities
//
// Everything is SI: metres, kilograms per metre, newtons, pascals, hertz.
// Angles come as tangents, intervals in cents. A value of 0 in a [Wire] means
// 'not known', and what needs it is refused or stays 0; nothing is guessed.
//
// # The string
//
// Linear densities are weighed on slack pieces. A string that is tuned up grows
// longer by the strain e = T/EA and so loses weight per length: the sounding
// string weighs w/(1 + e) a metre. Ends are hinged, nut and saddle without
// friction, so that the whole wire from ball to post shares one tension.
//
// # Axes of a bend
//
// x runs along the string from nut to saddle, y is the finger's way square to
// it, in the direction of the bend, so y is never negative. The contact moves
// along the crown of the fret: the tangent of the fret's slant is positive
// where that carries the contact towards the saddle.
package tension
