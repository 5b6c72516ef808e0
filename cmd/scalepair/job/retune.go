package job

import (
	"fmt"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/tuning"
)

// Retuned gives a tuning with single strings at other notes. Each change is
// "6=A1": the string's number, 1 the highest, and its new note. The result
// has no name. Faults stand at the place given.
func Retuned(t tuning.Tuning, changes []string, at fault.Place) (tuning.Tuning, error) {
	var faults fault.List
	out := tuning.Tuning{Notes: append([]tuning.Note(nil), t.Notes...)}
	seen := map[int]bool{}
	for _, text := range changes {
		number, note, found := strings.Cut(text, "=")
		n, err := strconv.Atoi(strings.TrimSpace(number))
		switch {
		case !found || err != nil:
			faults.Add(at, "not a string and its note", text, "give the string's number, 1 the highest, and its note: 6=A1")
			continue
		case n < 1 || n > t.Strings():
			faults.Add(at, "there is no such string", text, fmt.Sprintf("use 1 to %d; 1 is the highest", t.Strings()))
			continue
		case seen[n]:
			faults.Add(at, "a string has two notes", text, "keep one of them")
			continue
		}
		seen[n] = true
		to, err := tuning.ParseNote(note)
		faults.Include(at, err)
		out.Notes[len(out.Notes)-n] = to
	}
	return out, faults.Err()
}

// applyRetune puts --retune and --capo into a build. A retuned string starts
// from the main tuning and takes the place of several tunings, as --tuning
// does; a capo goes onto every tuning.
func (o Overrides) applyRetune(b *build.Build, faults *fault.List) {
	if len(o.Retune) > 0 {
		t, err := Retuned(b.Strings.Tuning, o.Retune, fault.Place{Input: "--retune"})
		faults.Include(fault.Place{Input: "--retune"}, err)
		if err == nil {
			b.Strings.Tuning, b.Tunings = t, nil
		}
	}
	if o.Capo != "" {
		fret, err := CapoFret(o.Capo, b.Neck.Frets)
		faults.Include(fault.Place{Input: "--capo"}, err)
		b.Strings.CapoFret = fret
		for i := range b.Tunings {
			b.Tunings[i].CapoFret = fret
		}
	}
}

// CapoFret reads the fret of a capo, 0 for none.
func CapoFret(text string, frets int) (int, error) {
	fret, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || fret < 0 || fret > frets {
		return 0, fault.Fault{What: "there is no such fret for a capo", Given: text, Remedy: fmt.Sprintf("give 1 to %d, or 0 for none", frets)}
	}
	return fret, nil
}
