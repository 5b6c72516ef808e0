// Package draw turns a fan into one plain drawing in true size, which the
// writers in its sub-packages (svg, pdf, dxf) put on paper or hand to another
// program. Package tile lays it out on sheets of paper that a small printer can
// take.
//
// # Axes and units
//
// Numbers of a drawing are in millimetres and radians, x runs to the right and
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
//
// # Reading order
//
// geometry.go, stroke.go, metrics.go, text.go and drawing.go have what a drawing
// is made of, canvas.go what it is put on, sound.go what no writer takes. From
// options.go and fan.go on a layout is drawn: board.go, strings.go, slots.go,
// square.go, dots.go, joins.go, words.go, key.go and bar.go, a part each.
package draw
