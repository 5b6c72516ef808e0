package mark

import (
	"bufio"
	"fmt"
	"io"

	"scalepair/data/unit"
	"scalepair/fan"
)

// WriteForm writes an empty measurement file for a layout: a row for every
// distance of both passes on both lines, the two diagonals and the nut offset,
// with nothing under measured. The nominal numbers are left out on purpose, so
// that nobody reads what they expect. Lengths are to be entered in millimetres
// or decimal inches. The error is the writer's.
func WriteForm(w io.Writer, l *fan.Layout, in unit.LengthUnit) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "# Leave empty what was not measured. resolution is the least difference the tool shows.\n")
	fmt.Fprintf(out, "# All along the outer strings' lines, of which fret 1 is the mark next to the nut.\n")
	fmt.Fprintf(out, "# ruler: from the nut mark to the mark. caliper: from the mark before, at fret 1 from the nut mark.\n")
	fmt.Fprintf(out, "# diagonals: from the one line's nut mark to the other line's last mark.\n")
	fmt.Fprintf(out, "# nut offset: lay a square through the bass nut mark, and measure along the treble line from it to the treble nut mark.\n")
	if l.NutOffset.MM() < 0 {
		fmt.Fprintf(out, "# It has a minus here: the treble nut of this board lies nearer the head than the bass nut.\n")
	}
	fmt.Fprintf(out, "line,pass,fret,measured_%s,resolution_%s,remark\n", in.Symbol(), in.Symbol())
	for _, line := range []Line{Bass, Treble} {
		for _, kind := range []Kind{FromNut, Step} {
			for n := 1; n < len(l.Frets); n++ {
				fmt.Fprintf(out, "%v,%v,%d,,,\n", line, kind, n)
			}
		}
	}
	for _, kind := range []Kind{FromBassNut, FromTrebleNut, NutOffset} {
		fmt.Fprintf(out, "%v,,,,,\n", kind)
	}
	return out.Flush()
}
