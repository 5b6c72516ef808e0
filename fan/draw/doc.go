// Package draw turns a fan into one plain drawing in true size, which the
// writers in its sub-packages (svg, pdf, dxf) put on paper or hand to another
// program, and which package recorder keeps for tests. Package tile lays it
// out on sheets of paper that a small printer can take.
//
// # Axes and units
//
// Everything is in millimetres, angles are in radians, x runs to the right and
// y runs up. In a drawing made by Fan the origin is where the nut line crosses
// the centreline and x runs along the centreline towards the bridge, as in
// package fan. The drawing shows the FACE of the board, since that is where a
// template is glued: with the nut at the left, a right-handed instrument has
// its bass side below, so y here is package fan's y with its sign changed; a
// left-handed one has its bass side above and keeps the sign.
//
// # Sheets
//
// A Sheet is a piece of paper with its own origin at the lower left corner; it
// holds parts of drawings, each seen through its own window.
package draw
