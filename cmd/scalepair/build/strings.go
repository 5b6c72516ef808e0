package build

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/tuning"
)

// Combining says how several tunings make one score.
type Combining int

// The ways of combining tunings.
const (
	// ByMean takes the weighted mean of the tunings' misfits.
	ByMean Combining = iota
	// ByWorst takes the worst tuning's.
	ByWorst
)

// Strings says what the instrument is strung with.
type Strings struct {
	// Tuning holds the open strings' notes. Where only [[tunings]] are given it
	// is the first of them.
	Tuning tuning.Tuning
	// PitchStandardHz is the pitch of A4: 380 to 500, 440 unless given.
	PitchStandardHz float64
	// CapoFret raises every string by that many semitones; 0 is no capo.
	CapoFret int
	// Gauges are the stock labels, string 1 first; nil leaves the choice free.
	Gauges []string
	// Stock names the only gauges that may be chosen, as written; nil means
	// every gauge with a reading or a construction.
	Stock []string
	// Ordering keeps a string from being lighter than its treble neighbour and
	// plain strings on the treble side; true unless given. Off for courses and
	// re-entrant tunings.
	Ordering bool
}

// WeightedTuning is one of several tunings that a build must serve.
type WeightedTuning struct {
	// Name is shown in headings; the tuning's own words when not given.
	Name   string
	Tuning tuning.Tuning
	// Weight is this tuning's share in a mean: above 0, 1 unless given.
	Weight float64
	// CapoFret is as in Strings, and that of Strings where it is not given.
	CapoFret int
}

// Strings 2 to 24 can be laid out.
const fewestStrings, mostStrings = 2, 24

// readStrings reads [strings] but for its tuning, which was read before since
// the number of strings, which the lists of all other sections must match,
// follows from it or from the first of the several. It is 0 while not known.
func readStrings(s *section, main tuning.Tuning, several []WeightedTuning, frets int) Strings {
	v := Strings{Tuning: main, PitchStandardHz: tuning.ConcertA, Ordering: true}
	if len(several) == 0 {
		s.require("tuning", `write tuning = "B1 E2 A2 D3 F#3 B3", low string first, or a name such as "baritone B"`)
	} else if !s.has("tuning") {
		v.Tuning = several[0].Tuning
	}
	s.tuningHeeded(main, several)
	s.pitchStandard(&v.PitchStandardHz)
	s.whole("capo_fret", &v.CapoFret, 0, frets)
	v.Gauges = s.perString("gauges", v.Tuning.Strings())
	v.Stock = s.texts("stock")
	s.truth("ordering", &v.Ordering)
	return v
}

func (s *section) pitchStandard(into *float64) {
	s.number("pitch_standard_hz", into, 380, 500)
}

// tuning reads a tuning by notes or name.
func (s *section) tuning(key string, into *tuning.Tuning) {
	n := s.want(key, kindText, `write the notes in quotes, low string first: "E2 A2 D3 G3 B3 E4"`)
	if n == nil {
		return
	}
	t, err := tuning.Parse(n.text)
	if err != nil {
		s.faults.Include(s.place(n.at), err)
		return
	}
	if t.Strings() < fewestStrings || t.Strings() > mostStrings {
		s.wrong(n, fmt.Sprintf("%s has %d %s", say(key), t.Strings(), map[bool]string{true: "string", false: "strings"}[t.Strings() == 1]),
			fmt.Sprintf("%d to %d can be laid out", fewestStrings, mostStrings))
		return
	}
	if !s.unordered {
		s.faults.Include(s.place(n.at), HighFirst(t, n.text))
	}
	*into = t
}

// inheritCapo gives the tunings that state no capo the one of [strings].
func (b *Build) inheritCapo() {
	for i := range b.Tunings {
		if !b.Given(fmt.Sprintf("tunings[%d].capo_fret", i)) {
			b.Tunings[i].CapoFret = b.Strings.CapoFret
		}
	}
}

// readTunings reads [[tunings]] and how they are put together. strings is the
// number of strings where it is known already, else 0.
func readTunings(root *section, frets, strings int) ([]WeightedTuning, Combining) {
	var by Combining
	choice(root, "tunings_by", &by, "mean", "worst")
	var out []WeightedTuning
	for _, s := range root.subs("tunings") {
		t := readWeightedTuning(s, frets)
		if strings == 0 {
			strings = t.Tuning.Strings()
		}
		s.sameStrings(t.Tuning.Strings(), strings)
		s.sameName(t, out)
		out = append(out, t)
	}
	if root.has("tunings_by") && len(out) == 0 {
		root.wrong(root.find("tunings_by"), "tunings_by has nothing to put together", "add the tunings under [[tunings]]")
	}
	return out, by
}

func readWeightedTuning(s *section, frets int) WeightedTuning {
	t := WeightedTuning{Weight: 1}
	if s.require("tuning", `write, for instance, tuning = "A1 E2 A2 D3 F#3 B3"`) {
		s.tuning("tuning", &t.Tuning)
	}
	t.Name = t.Tuning.Name
	if t.Name == "" {
		t.Name = t.Tuning.String()
	}
	s.text("name", &t.Name)
	s.number("weight", &t.Weight, 0.001, 1000)
	s.whole("capo_fret", &t.CapoFret, 0, frets)
	return t
}

// sameName reports a tuning of the same name as an earlier one, since neither
// table nor flag could tell them apart.
func (s *section) sameName(t WeightedTuning, earlier []WeightedTuning) {
	if t.Name == "" || !slices.ContainsFunc(earlier, func(e WeightedTuning) bool { return strings.EqualFold(e.Name, t.Name) }) {
		return
	}
	n := s.find("name")
	if n == nil {
		n = s.find("tuning")
	}
	if n != nil {
		s.wrong(n, "two tunings of one name", `give each its own: name = "with capo"`)
	}
}

// tuningHeeded reports a tuning of [strings] that counts for nothing, since
// [[tunings]] do without it. One of another number of strings is reported
// already.
func (s *section) tuningHeeded(main tuning.Tuning, several []WeightedTuning) {
	if len(several) == 0 || main.Strings() == 0 || slices.ContainsFunc(several, func(t WeightedTuning) bool {
		return t.Tuning.Strings() != main.Strings() || slices.Equal(t.Tuning.Notes, main.Notes)
	}) {
		return
	}
	s.wrong(s.find("tuning"), "the tuning of [strings] counts for nothing beside [[tunings]], none of which is the same",
		"add it as one more of [[tunings]], or leave it out")
}

// sameStrings reports a tuning of another number of strings than the build's;
// 0 strings are not known.
func (s *section) sameStrings(have, strings int) {
	if have > 0 && strings > 0 && have != strings {
		s.wrong(s.find("tuning"), fmt.Sprintf("this tuning has %d strings, the build has %d", have, strings),
			"all tunings of one build have the same number of strings")
	}
}
