package build

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scalepair/data/unit"
	"scalepair/tuning"
)

// Chosen is the decided scale pair with what belongs to it.
type Chosen struct {
	Bass, Treble unit.Length
	// Neutral is the chosen neutral fret; the neck's unless given.
	Neutral Neutral
	// Gauges are stock labels, string 1 first; nil when none were decided.
	Gauges []string
}

// Column is one column of a comparison. What it leaves out is the build's.
type Column struct {
	// Name heads the column, "" when not given.
	Name string
	// Tuning is nil when not given.
	Tuning *tuning.Tuning
	// CapoFret is as in Strings.
	CapoFret int
	// PitchStandardHz is that of Strings unless given.
	PitchStandardHz float64
	// Gauges by string, string 1 first; nil when not given.
	Gauges []string
	// Bass and Treble are both 0 when not given.
	Bass, Treble unit.Length
	// Neutral is nil when not given: the chosen pair's or the neck's.
	Neutral *Neutral
}

// readChosen reads [chosen], nil when there is none.
func readChosen(s *section, neck Neck, strings int, reverse bool) *Chosen {
	if s.table == nil {
		return nil
	}
	c := &Chosen{Neutral: neck.Neutral}
	s.pair(&c.Bass, &c.Treble, true)
	s.notReversed(c.Bass, c.Treble, reverse)
	s.neutral("neutral_fret", &c.Neutral, neck.Frets)
	c.Gauges = s.perString("gauges", strings)
	return c
}

// notReversed reports a bass length shorter than its treble, unless that was
// asked for. A length of 0 is not known.
func (s *section) notReversed(bass, treble unit.Length, reverse bool) {
	if bass > 0 && bass < treble && !reverse {
		n := s.find("bass")
		text := given(n)
		if text == "" { // a range or a list
			text = s.written("bass", bass)
		}
		s.faults.Add(s.place(n.at), "the bass scale is shorter than the treble scale of "+s.written("treble", treble), text, reverseRemedy)
	}
}

const reverseRemedy = "exchange them, or write reverse_fan = true under [scales] if a reverse fan is wanted"

// readColumns reads [[compare]].
func readColumns(root *section, v Strings, neck Neck, reverse bool) []Column {
	var out []Column
	for _, s := range root.subs("compare") {
		c := Column{PitchStandardHz: v.PitchStandardHz, CapoFret: v.CapoFret}
		s.text("name", &c.Name)
		strings := v.Tuning.Strings()
		if s.find("tuning") != nil {
			c.Tuning = &tuning.Tuning{}
			s.tuning("tuning", c.Tuning)
			s.sameStrings(c.Tuning.Strings(), strings)
		}
		s.whole("capo_fret", &c.CapoFret, 0, neck.Frets)
		s.pitchStandard(&c.PitchStandardHz)
		c.Gauges = s.perString("gauges", strings)
		s.pair(&c.Bass, &c.Treble, false)
		s.notReversed(c.Bass, c.Treble, reverse)
		if n := s.find("neutral_fret"); n != nil {
			c.Neutral = &Neutral{}
			s.neutral("neutral_fret", c.Neutral, neck.Frets)
		}
		out = append(out, c)
	}
	return out
}

// Save gives the build file with the pair written into its [chosen] section,
// and everything else as it was. Lengths are written in unit u where that is
// exact, else in millimetres.
func (c Chosen) Save(src []byte, u unit.LengthUnit) ([]byte, error) {
	gauges := ""
	if len(c.Gauges) > 0 {
		low := slices.Clone(c.Gauges)
		slices.Reverse(low)
		gauges = "[" + strings.Join(quoted(low), ", ") + "]"
	}
	return SetKeys(src, []Edit{
		{"chosen.scale", ""},
		{"chosen.bass", quote(lengthText(c.Bass, u))},
		{"chosen.treble", quote(lengthText(c.Treble, u))},
		{"chosen.neutral_fret", c.Neutral.text()},
		{"chosen.gauges", gauges},
	})
}

// text gives the neutral fret as TOML writes it.
func (n Neutral) text() string {
	if n.Bridge {
		return quote("bridge")
	}
	return plain(n.Fret)
}

// lengthText writes a length to the picometre, which clears away what
// arithmetic has added to its last digits.
func lengthText(l unit.Length, u unit.LengthUnit) string {
	l = toPicometre(l)
	if u != unit.Millimetres {
		inches := plain(math.Round(l.Inches()*1e6)/1e6) + " in"
		if back, err := unit.ParseLength(inches); err == nil && back == l {
			return inches
		}
	}
	return l.String()
}

// quote writes a text as TOML does.
func quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < 0x20 || r == 0x7f:
			fmt.Fprintf(&b, "\\u%04X", r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

func quoted(texts []string) []string {
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = quote(t)
	}
	return out
}
