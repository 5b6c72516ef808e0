// Package tension holds the physics of one string: the tension that gives a
// pitch, the bending force and bend distance of a bend, breaking strength,
// inharmonicity and the compensation of the saddle.
//
// Read wire, open, uncertainty, strength, inharmonicity, bend (with shape and
// root beneath it), compensation, explain.
//
// # Quantities
//
// Quantities are those of package unit; what has none there is SI: m2, N m2,
// pascals. Angles come as tangents. A value of 0 in a [Wire] means
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
// x runs along the string from nut to saddle, y is the finger's distance square to
// it, in the direction of the bend, so y is never negative. The contact moves
// along the crown of the fret: the tangent of the fret's slant is positive
// where that carries the contact towards the saddle.
package tension
