package job

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
	"scalepair/tuning"
)

// Overrides are the values that the command line gives over the build file;
// an empty one leaves the file's.
type Overrides struct {
	Bass, Treble string   // lengths
	Tuning       string   // notes or a name
	Gauges       string   // labels, low string first
	FreeGauges   bool     // let the gauges be chosen although the file gives them
	Pitch        string   // pitch of A4, Hz
	Neutral      string   // a fret number or "bridge"
	Retune       []string // single strings at other notes: "6=A1"
	Capo         string   // fret of a capo
}

// apply puts the overrides into a build.
func (o Overrides) apply(b *build.Build) error {
	var faults fault.List
	flag := func(name string) fault.Place { return fault.Place{Input: "--" + name} }
	if o.Pitch != "" {
		hz, err := unit.ParseNumber(strings.TrimSuffix(strings.ToLower(strings.TrimSpace(o.Pitch)), "hz"))
		if err == nil {
			err = tuning.CheckStandard(hz)
		} else {
			err = asGiven(err, o.Pitch, "give hertz: --pitch 442")
		}
		faults.Include(flag("pitch"), err)
		b.Strings.PitchStandardHz = hz
	}
	if o.Tuning != "" {
		t, err := tuning.Parse(o.Tuning)
		faults.Include(flag("tuning"), err)
		if err == nil && b.Strings.Ordering {
			faults.Include(flag("tuning"), build.HighFirst(t, o.Tuning))
		}
		if err == nil {
			faults.Include(flag("tuning"), retune(b, t))
		}
	}
	o.applyRetune(b, &faults)
	if o.Gauges != "" {
		b.Strings.Gauges = strings.FieldsFunc(o.Gauges, func(r rune) bool { return strings.ContainsRune(", ;", r) })
		slices.Reverse(b.Strings.Gauges)
		if have, want := len(b.Strings.Gauges), b.Strings.Tuning.Strings(); have != want {
			faults.Add(flag("gauges"), fmt.Sprintf("of %d strings %d have a gauge", want, have), o.Gauges,
				"give one label a string, low string first, in quotes or with commas between")
		}
		if b.Chosen != nil {
			b.Chosen.Gauges = nil
		}
	}
	if o.FreeGauges {
		b.Strings.Gauges = nil
		if b.Chosen != nil {
			b.Chosen.Gauges = nil
		}
	}
	o.applyNeutral(b, &faults)
	o.applyPair(b, &faults)
	follow(b)
	return faults.Err()
}

// asGiven quotes the whole text of a flag in a fault of the number in it. Where
// nothing is known of the slip, the flag's own remedy is the better one.
func asGiven(err error, given, remedy string) error {
	var f fault.Fault
	if !errors.As(err, &f) {
		return err
	}
	f.Given = given
	if !strings.HasPrefix(f.Remedy, "write \"") {
		f.Remedy = remedy
	}
	return f
}

func (o Overrides) applyNeutral(b *build.Build, faults *fault.List) {
	if o.Neutral == "" {
		return
	}
	at := fault.Place{Input: "--neutral"}
	neutral := build.Neutral{Bridge: strings.EqualFold(strings.TrimSpace(o.Neutral), "bridge")}
	if !neutral.Bridge {
		remedy := fmt.Sprintf("give 0 to %d, a fret between two such as 7.5, or bridge", b.Neck.Frets)
		fret, err := unit.ParseNumber(o.Neutral)
		if err != nil {
			if suggest.Nearest(o.Neutral, []string{"bridge"}) != "" {
				remedy = "did you mean bridge? " + remedy
			}
			faults.Include(at, asGiven(err, o.Neutral, remedy))
			return
		}
		if !(fret >= 0 && fret <= float64(b.Neck.Frets)) {
			faults.Add(at, "the neutral fret is off the board", o.Neutral, remedy)
			return
		}
		neutral.Fret = fret
	}
	b.Neck.Neutral = neutral
	if b.Chosen != nil {
		b.Chosen.Neutral = neutral
	}
}

// applyPair narrows the search to the lengths given, and chooses the pair when
// both are.
func (o Overrides) applyPair(b *build.Build, faults *fault.List) {
	side := func(name, text string) (unit.Length, bool) {
		if text == "" {
			return 0, false
		}
		at := fault.Place{Input: "--" + name}
		l, err := unit.ParseLength(text)
		if err != nil {
			faults.Include(at, err)
			return 0, false
		}
		if l.MM() < leastScaleMM || l.MM() > mostScaleMM {
			faults.Add(at, "no instrument has such a scale", text, build.OtherLength(text, unit.MM(leastScaleMM), unit.MM(mostScaleMM))+"give "+unit.Form[unit.Length](text, "").Range(leastScaleMM/1000.0, mostScaleMM/1000.0))
			return 0, false
		}
		return l, true
	}
	bass, okBass := side("bass", o.Bass)
	treble, okTreble := side("treble", o.Treble)
	if okBass {
		b.Scales.Bass = []unit.Length{bass}
	}
	if okTreble {
		b.Scales.Treble = []unit.Length{treble}
	}
	if okBass && okTreble {
		if bass < treble && !b.Scales.ReverseFan {
			faults.Add(fault.Place{Input: "--bass"}, "the bass scale is shorter than the treble scale", o.Bass,
				"exchange them, or write reverse_fan = true under [scales]")
		}
		chosen := build.Chosen{Bass: bass, Treble: treble, Neutral: b.Neck.Neutral}
		if b.Chosen != nil {
			chosen.Neutral, chosen.Gauges = b.Chosen.Neutral, b.Chosen.Gauges
		}
		b.Chosen = &chosen
	} else if b.Chosen != nil && (okBass || okTreble) {
		if okBass {
			b.Chosen.Bass = bass
		}
		if okTreble {
			b.Chosen.Treble = treble
		}
	}
}

// Scales outside these bounds belong to no fretted instrument that the tool
// is for; package fan refuses them too.
const (
	leastScaleMM = 200
	mostScaleMM  = 2000
)

// retune replaces the tuning. With another number of strings, what the file
// lists by string no longer fits: given gauges must be given anew, and tails
// follow only when all strings have the same.
func retune(b *build.Build, t tuning.Tuning) error {
	was, n := b.Strings.Tuning.Strings(), t.Strings()
	b.Strings.Tuning = t
	b.Tunings = nil
	if was == n {
		return nil
	}
	var faults fault.List
	b.Strings.Gauges = nil
	if b.Chosen != nil {
		b.Chosen.Gauges = nil
	}
	resize := func(values *[]unit.Length, key string) {
		for _, v := range *values {
			if v != (*values)[0] {
				faults.Add(b.Place(key), fmt.Sprintf("the list is for %d strings, --tuning has %d", was, n), "",
					"give one length for all strings, or change the file")
				return
			}
		}
		*values = slices.Repeat((*values)[:1], n)
	}
	resize(&b.Tails.Nut, "tails.nut")
	resize(&b.Tails.Saddle, "tails.saddle")
	for key, target := range map[string]*build.Target{"feel.tension": &b.Feel.Tension, "feel.bending_force": &b.Feel.BendingForce} {
		if target.Source == build.Stated {
			resizeForces(&target.Forces, key, n, b, &faults)
		}
	}
	return faults.Err()
}

func resizeForces(values *[]unit.Force, key string, n int, b *build.Build, faults *fault.List) {
	for _, v := range *values {
		if v != (*values)[0] {
			faults.Add(b.Place(key), fmt.Sprintf("the list does not fit the %d strings of --tuning", n), "",
				"give one force for all strings, or change the file")
			return
		}
	}
	*values = slices.Repeat((*values)[:1], n)
}
