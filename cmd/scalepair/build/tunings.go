package build

import (
	"cmp"
	"fmt"
	"slices"

	"scalepair/tuning"
)

// Strings 2 to 24 can be laid out.
const fewestStrings, mostStrings = 2, 24

// tunings settles the number of strings, which all lists follow.
func (c checker) tunings() {
	b := c.Build
	main := b.Strings.Tuning
	if len(b.Tunings) == 0 {
		c.need("strings.tuning", `write tuning = "B1 E2 A2 D3 F#3 B3", low string first, or a name such as "baritone B"`)
	} else if main.Strings() == 0 {
		b.Strings.Tuning = b.Tunings[0].Tuning
	}
	c.tuning("strings.tuning", main)
	c.wrongIf(b.Given("tunings_by") && !b.Given("tunings"), "tunings_by", "there is nothing to put together", "add the tunings under [[tunings]]")
	heeded := len(b.Tunings) == 0 || main.Strings() == 0
	for i := range b.Tunings {
		t, key := &b.Tunings[i], fmt.Sprintf("tunings[%d]", i)
		c.tuning(key+".tuning", t.Tuning)
		heeded = heeded || slices.Equal(t.Tuning.Notes, main.Notes)
		if !b.Given(key + ".capo_fret") {
			t.CapoFret = b.Strings.CapoFret
		}
		t.Weight, t.Name = cmp.Or(t.Weight, 1), cmp.Or(t.Name, title(t.Tuning))
		c.wrongIf(slices.ContainsFunc(b.Tunings[:i], func(e Tuning) bool { return e.Name == t.Name }), key+".tuning", "two tunings of one name", `give each its own: name = "with capo"`)
	}
	if len(b.Tunings) == 0 {
		t := b.Strings.Tuning
		b.Tunings = []Tuning{{Name: title(t), Tuning: t, Weight: 1, CapoFret: b.Strings.CapoFret}}
	}
	c.wrongIf(!heeded, "strings.tuning", "it counts for nothing beside [[tunings]], none of which is the same", "add it as one more of [[tunings]], or leave it out")
	for i := range b.Columns {
		if t := b.Columns[i].Tuning; t != nil {
			c.tuning(fmt.Sprintf("compare[%d].tuning", i), *t)
		}
	}
	if b.Reference != nil {
		c.tuning("reference.tuning", b.Reference.Tuning)
	}
}

// tuning checks one tuning; one without strings is none.
func (c checker) tuning(key string, t tuning.Tuning) {
	strings := c.Strings.Tuning.Strings()
	if key == "reference.tuning" {
		strings = t.Strings()
	}
	if what, remedy := wrongTuning(t, strings, c.Strings.Ordering); what != "" && t.Strings() > 0 {
		c.wrong(key, what, remedy)
	}
}

// wrongTuning says what is wrong with a tuning of so many strings, "" for
// nothing. With ordering it must not fall from string to string.
func wrongTuning(t tuning.Tuning, strings int, ordering bool) (what, remedy string) {
	switch n := t.Strings(); {
	case n < fewestStrings || n > mostStrings:
		return "the number of strings is out of range", fmt.Sprintf("%d to %d can be laid out", fewestStrings, mostStrings)
	case n != strings:
		return fmt.Sprintf("it has %d strings, the build has %d", n, strings), "all tunings of one build have the same number of strings"
	case ordering && falls(t):
		return "it falls from its first note to its last",
			fmt.Sprintf("low string first? write %q; a tuning that is meant so needs ordering = false under [strings]", lowFirst(t))
	}
	return "", ""
}

func title(t tuning.Tuning) string { return cmp.Or(t.Name, t.String()) }

// lowFirst gives the notes of a tuning in the other order.
func lowFirst(t tuning.Tuning) string {
	notes := slices.Clone(t.Notes)
	slices.Reverse(notes)
	return tuning.Tuning{Notes: notes}.String()
}

// falls reports whether no note is higher than the one before it, and some is
// lower.
func falls(t tuning.Tuning) bool {
	hz := t.Pitches(tuning.ConcertA) // string 1, written last, first
	return slices.IsSorted(hz) && len(hz) > 1 && hz[0] < hz[len(hz)-1]
}
