package build

import (
	"scalepair/data/unit"
	"scalepair/tuning"
)

// Reference is an instrument that the player knows and likes.
type Reference struct {
	// Name is shown in headings, "" when not given.
	Name string
	// Bass and Treble are its scale lengths, equal for straight frets.
	Bass, Treble unit.Length
	// Neutral is its neutral fret; the neck's unless given, and its last fret where
	// that is lower.
	Neutral Neutral
	// Frets is the number of its frets; the neck's unless given.
	Frets  int
	Tuning tuning.Tuning
	// PitchStandardHz is the pitch of its A4; that of Strings unless given.
	PitchStandardHz float64
	// Gauges are the stock labels of its strings, string 1 first.
	Gauges []string
	// NutSpread and SaddleSpread are between its outer strings; 0 when not given,
	// to be taken like the neck's.
	NutSpread, SaddleSpread unit.Length
	// Tails by string, string 1 first.
	Tails Tails
}

// readReference reads [reference], nil when there is none.
func readReference(s *section, neck Neck, pitchHz float64) *Reference {
	if s.table == nil {
		return nil
	}
	r := &Reference{Frets: neck.Frets, PitchStandardHz: pitchHz}
	s.text("name", &r.Name)
	s.whole("frets", &r.Frets, 1, 36)
	r.Neutral = neck.Neutral.Within(r.Frets)
	s.pair(&r.Bass, &r.Treble, true)
	s.neutral("neutral_fret", &r.Neutral, r.Frets)
	if s.require("tuning", `write, for instance, tuning = "E2 A2 D3 G3 B3 E4"`) {
		s.tuning("tuning", &r.Tuning)
	}
	s.pitchStandard(&r.PitchStandardHz)
	if s.require("gauges", "list the labels of its strings, low string first") {
		r.Gauges = s.perString("gauges", r.Tuning.Strings())
	}
	s.length("string_spread_at_nut", &r.NutSpread, unit.MM(5), unit.MM(300))
	s.length("string_spread_at_saddle", &r.SaddleSpread, unit.MM(5), unit.MM(400))
	r.Tails = readTails(s, "nut_tail", "saddle_tail", r.Tuning.Strings())
	return r
}

// pair reads a scale pair: bass and treble, or scale for straight frets.
func (s *section) pair(bass, treble *unit.Length, required bool) {
	one := s.scale("scale", bass)
	if one {
		*treble = *bass
	}
	s.scale("bass", bass)
	s.scale("treble", treble)
	fanned := s.first("bass", "treble")
	switch {
	case s.has("scale") && fanned != nil:
		s.faults.Add(s.place(fanned.key), "scale and a scale pair are both given", "", "keep scale for straight frets, or bass with treble")
	case fanned != nil:
		s.require("bass", "a scale pair needs both lengths")
		s.require("treble", "a scale pair needs both lengths")
	case required && !s.has("scale"):
		s.missing("the scale length is missing in "+s.name, `write scale = "648 mm", or bass and treble for a fan`, "scale", "bass", "treble")
	}
}

func (s *section) scale(key string, into *unit.Length) bool {
	return s.length(key, into, shortestScale, longestScale)
}
