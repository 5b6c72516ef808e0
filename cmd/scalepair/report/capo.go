package report

import (
	"errors"
	"fmt"

	"scalepair/cmd/scalepair/show"
	"scalepair/tension/choice"
	"scalepair/tuning"
)

// tuningWords names a tuning by its notes, with the capo and what sounds above
// it: "B1 E2 A2, capo at fret 2 (sounds C#2 F#2 B2)".
func tuningWords(t tuning.Tuning, capo int) string {
	if capo == 0 {
		return t.String()
	}
	return fmt.Sprintf("%s, capo at fret %d (sounds %s)", t, capo, t.Up(capo))
}

// capoNote says what a capo does to the numbers of a table, and where it
// leaves no room for a bend.
func capoNote(t *show.Table, d *choice.Detail, c, capo int) {
	if capo == 0 {
		return
	}
	t.Note("Capo at fret %d: tension is that of the open string; inharmonicity and bends are those of the string from the capo on. Frets count from the nut. The string between nut and capo is assumed to slide under the capo in a bend.", capo)
	var behind []float64
	for _, s := range d.Strings {
		for _, b := range s.Cases[c].Bends {
			if errors.Is(b.Err, choice.ErrBehindCapo) {
				behind = append(behind, b.Fret)
			}
		}
		if behind != nil {
			t.Note("No bend at fret %s: the capo leaves no room there.", numbers(behind))
			return
		}
	}
}
