// Package mark stands beside the builder at the bench between the choice of a
// fan and the first cut. It turns a layout into the setting-out list, in
// working order and rounded to what the builder's tools can show, and judges
// what was measured of the finished marks: which stand where they should,
// which stand off and by how many cents, and which single reading, step or
// mark is the likely slip.
//
// Everything is plain data in millimetres, radians and cents; nothing is
// printed and no file is opened. Axes are those of package fan: x along the
// centreline from where the nut line crosses it towards the bridge, y across,
// bass side positive. Fret 0 is the nut.
//
// # Why two passes
//
// A line is measured twice, by methods that go wrong in different ways. The
// ruler pass reads every mark from the nut: a slip stays where it was made,
// but every reading is as coarse as the ruler. The caliper pass reads every
// step from the mark before: each is fine, but one slip shifts all later
// sums, and the small errors walk. Put together by weighted least squares the
// ruler holds the long distances and the calipers the short ones.
package mark
