// Package mark judges the marks of a fan before the first cut: from what was
// measured of them it says which stand where they should, which are off and by
// how many cents, and which single reading, step or mark is the likely slip.
//
// Nothing is printed and no file is opened. Axes are those of package fan: x
// along the centreline from where the nut line crosses it towards the bridge, y
// across, bass side positive. Fret 0 is the nut. Inside, lengths are float64 in
// millimetres.
//
// # Why two passes
//
// A line is measured twice, by methods that go wrong in different ways. The
// ruler pass reads every mark from the nut: a slip stays where it was made,
// but every reading is as coarse as the ruler. The caliper pass reads every
// step from the mark before: each is fine, but one slip shifts all later
// sums, and the small errors walk. Put together by weighted least squares the
// ruler holds the long distances and the calipers the short ones.
//
// Read in this order: reading.go has what is measured and with what, form.go and
// readcsv.go its file, nominal.go what the marks should be, entry.go the slips of
// entry, otherlength.go marks of another length, result.go what is said of the
// marks. check.go leads through the rest: evidence.go, scatter.go, search.go,
// position.go and across.go on linear.go. resolution.go rounds what is set out to
// what a tool shows.
package mark
