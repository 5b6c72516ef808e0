package job

import (
	"fmt"
	"math"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/odd"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/gauges"
	"scalepair/tuning"
)

// Odd watches everything that the build file, the readings and the command line
// say, whether a command needs it or not: like faults, odd values of a file are
// told together. What follows from them is watched where it is worked out.
func (j *Job) Odd() odd.List {
	var out odd.List
	out.Include(fault.Place{}, j.oddReadings)
	out.Include(fault.Place{}, j.Stock.Odd())
	out.Include(fault.Place{}, j.Placed(j.Neck().Odd()))
	j.oddBench(&out)
	j.oddTunings(&out)
	j.oddReference(&out)
	j.oddStock(&out)
	return out
}

// oddBench watches what is for the bench.
func (j *Job) oddBench(out *odd.List) {
	b := j.Build
	out.Include(fault.Place{}, j.Placed(j.Sawing().Odd()))
	out.Include(fault.Place{}, j.Placed(fan.OddWire(b.FretWire.Overhang.MM(), b.FretWire.SparePercent/100)))
	for i, o := range j.Blanks() {
		out.Include(fault.Place{}, j.within(fmt.Sprintf("blanks[%d]", i), o.Odd()))
	}
	for i, l := range b.Lines {
		if l.Slant == build.SlantGiven {
			out.Include(j.origin(fmt.Sprintf("lines[%d].slant_deg", i)), fan.OddLine(l.Name, l.SlantDeg*math.Pi/180))
		}
	}
	m := b.Marking
	out.Include(fault.Place{}, j.Placed(mark.Options{
		Ruler: mark.Tool{StepMM: m.RulerResolution.MM(), ZeroMM: m.RulerZero.MM()}, Caliper: mark.Tool{StepMM: m.CaliperResolution.MM(), ZeroMM: m.CaliperZero.MM()},
		Tolerance: mark.Tolerance{MM: m.Tolerance.MM(), Cents: m.ToleranceCents}, OffsetToleranceMM: m.NutOffsetTolerance.MM(),
	}.Odd()))
}

// oddTunings watches every tuning that is asked for, with its capo and pitch
// standard.
func (j *Job) oddTunings(out *odd.List) {
	b := j.Build
	ordered := b.Strings.Ordering
	out.Include(j.origin("strings.pitch_standard_hz"), tuning.OddStandard(b.Strings.PitchStandardHz))
	out.Include(j.origin("strings.capo_fret"), tuning.OddCapo(b.Strings.CapoFret))
	out.Include(j.origin("strings.tuning"), b.Strings.Tuning.Odd(ordered))
	for i, t := range b.Tunings {
		key := fmt.Sprintf("tunings[%d].", i)
		out.Include(j.origin(key+"tuning"), t.Tuning.Odd(ordered))
		out.Include(j.origin(key+"capo_fret"), tuning.OddCapo(t.CapoFret))
	}
	for i, c := range b.Columns {
		key := fmt.Sprintf("compare[%d].", i)
		if c.Tuning != nil {
			out.Include(j.origin(key+"tuning"), c.Tuning.Odd(ordered))
		}
		if b.Given(key + "pitch_standard_hz") {
			out.Include(j.origin(key+"pitch_standard_hz"), tuning.OddStandard(c.PitchStandardHz))
		}
		if b.Given(key + "capo_fret") {
			out.Include(j.origin(key+"capo_fret"), tuning.OddCapo(c.CapoFret))
		}
	}
}

// oddReference watches the reference instrument, apart from its tensions.
func (j *Job) oddReference(out *odd.List) {
	r := j.Build.Reference
	if r == nil {
		return
	}
	out.Include(j.origin("reference.tuning"), r.Tuning.Odd(j.Build.Strings.Ordering))
	if j.Build.Given("reference.pitch_standard_hz") {
		out.Include(j.origin("reference.pitch_standard_hz"), tuning.OddStandard(r.PitchStandardHz))
	}
	var faults fault.List
	neck := j.reference(&faults).Neck
	neck.AllowReverse = true
	var own odd.List
	if r.NutSpread > 0 && r.SaddleSpread > 0 {
		own.Include(fault.Place{}, neck.Odd())
	}
	if frame, err := fan.NewFrame(neck); err == nil {
		own.Include(fault.Place{}, frame.Odd())
	}
	for _, v := range own {
		at := j.ofReference(v.Place.Input)
		if at.Line > 0 {
			v.Place, v.About = at, strings.TrimSpace(v.About+" of the reference")
			*out = append(*out, v)
		}
	}
}

// ofReference gives the place of a neck's or pair's key in [reference]; no line
// where the value is not the reference's own.
func (j *Job) ofReference(key string) fault.Place {
	_, key, _ = strings.Cut(key, ".")
	keys := []string{key}
	if key == "bass" || key == "treble" {
		keys = append(keys, "scale")
	}
	for _, k := range keys {
		if j.Build.Given("reference." + k) {
			return j.Build.Place("reference." + k)
		}
	}
	return fault.Place{}
}

// oddStock watches what the build file says of stock and tools.
func (j *Job) oddStock(out *odd.List) {
	b := j.Build
	out.Include(fault.Place{}, j.Placed(instruments(b).Odd()))
	for i, c := range constructions(b) {
		out.Include(fault.Place{}, j.within(fmt.Sprintf("constructions[%d]", i), c.Odd()))
	}
	for i, m := range b.Materials {
		out.Include(fault.Place{}, j.within(fmt.Sprintf("materials[%d]", i), gauges.OddMaterial(data.Material{
			Name: m.Name, DensityKgM3: 1e3 * m.DensityGCM3, YoungsPa: 1e9 * m.YoungsGPa, StrengthPa: 1e6 * m.StrengthMPa,
		})))
	}
}

// Placed gives odd values that name a build-file key the place where the value
// comes from: that of the key, or the flag that stands before the file.
func (j *Job) Placed(list odd.List) odd.List { return j.within("", list) }

// within is Placed for keys of an entry such as "blanks[1]".
func (j *Job) within(entry string, list odd.List) odd.List {
	for i := range list {
		key := list[i].Place.Input
		if entry != "" {
			key = entry + "." + key
		}
		list[i].Place = j.origin(key)
	}
	return list
}

// origin gives where the value of a key comes from.
func (j *Job) origin(key string) fault.Place {
	o := &j.Over
	for _, by := range []struct {
		key, flag string
		given     bool
	}{
		{"scales.bass", "bass", o.Bass != ""},
		{"scales.treble", "treble", o.Treble != ""},
		{"strings.tuning", "retune", len(o.Retune) > 0},
		{"strings.tuning", "tuning", o.Tuning != ""},
		{"strings.capo_fret", "capo", o.Capo != ""},
		{"strings.pitch_standard_hz", "pitch", o.Pitch != ""},
		{"strings.gauges", "gauges", o.Gauges != ""},
	} {
		if by.given && by.key == key {
			return fault.Place{Input: "--" + by.flag}
		}
	}
	for _, instead := range standIns(key) {
		if j.Build.Given(instead) {
			return j.Build.Place(instead)
		}
	}
	return j.Build.Place(key)
}

// standIns are the keys that stand before a key where they are given.
func standIns(key string) []string {
	switch key {
	case "scales.bass":
		return []string{"chosen.bass", "chosen.scale"}
	case "scales.treble":
		return []string{"chosen.treble", "chosen.scale"}
	case "strings.gauges":
		return []string{"chosen.gauges"}
	case "neck.edge_margin":
		return []string{"neck.edge_margin", "neck.bass_margin", "neck.treble_margin"}
	}
	return nil
}
