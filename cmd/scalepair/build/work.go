package build

import (
	"slices"

	"scalepair/data/trace"
	"scalepair/data/unit"
	"scalepair/gauges/fit"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// Work is all that was worked out for one string, from its readings to the
// compensation, each section following from those before it.
type Work struct {
	String   int     // from 1, the highest
	Fret     float64 // of the bend, from the nut; 0 for none
	Sections []Section
	// NoBend and NoCompensation say why there is none.
	NoBend, NoCompensation error
}

// Section is one part of the work: gauge, pitch, tension, bend or compensation.
type Section struct {
	Name  string
	Steps []trace.Step
}

// Work repeats the work for one string of a detail, in its first tuning, with a
// bend at a fret, and records it; a fret of 0 asks for no bend.
func (r *Run) Work(p *choice.Plan, d *choice.Detail, number int, fret float64) (*Work, error) {
	i := number - 1
	w := &Work{String: number, Fret: fret}
	own, err := fit.Explain(p.Stock()[d.Gauges[i]].Label, r.stockInput())
	if err != nil {
		return nil, err
	}
	wire, at, bendErr := p.StringAt(d, 0, i, fret)
	place := r.place(p, d, i)
	var given trace.Trace
	given.Given("u(d), standard uncertainty of the core's diameter", wire.UCoreDia.M(), "m", "the readings")
	steps, err := tension.Explain(wire, at)
	if wire.UCoreDia > 0 {
		steps = append(given.Steps, steps...)
	}
	if w.NoBend = bendErr; bendErr == nil {
		w.NoBend = err
	}
	known := map[string]float64{}
	for _, s := range append(append([]trace.Step{}, own...), place...) {
		known[s.Symbol] = s.Value
	}
	open, bend := split(steps, known)
	if g := p.Stock()[d.Gauges[i]]; g.StrengthPa == 0 {
		open = withStrength(open, g.Core)
	}
	// The saddle is set without the capo, at the first tuning's pitch.
	req := p.Request()
	var tr trace.Trace
	_, _, w.NoCompensation = tension.Compensation(&tr, wire, d.Strings[i].Length, req.Cases[0].Pitches[i], req.Action[i], req.Tails[i])
	for _, s := range []Section{{"gauge", own}, {"pitch", place}, {"tension", open}, {"bend", bend}, {"compensation", tr.Steps}} {
		if len(s.Steps) > 0 {
			w.Sections = append(w.Sections, s)
		}
	}
	return w, nil
}

// pitchDigits are carried from note and fan to what sounds.
const pitchDigits = 9

// place goes from note and fan to the pitch and the length that sound.
func (r *Run) place(p *choice.Plan, d *choice.Detail, i int) []trace.Step {
	const equal = "equal temperament; A4 is note 69 of the MIDI note table"
	tr := trace.Trace{Digits: pitchDigits}
	note := r.Tunings()[0].OfString(i + 1)
	t := d.Strings[i].Tunings[0]
	capo := p.Request().Cases[0].CapoFret
	pitch, length := "f", "L"
	if capo > 0 {
		pitch, length = "fo", "Lo"
	}
	tr.Given("A4, pitch standard", r.Build.Strings.PitchStandard.Hz(), "Hz", "as asked")
	tr.Given("st, number of the note "+note.String(), float64(note.Semitone), "", equal)
	formula := "A4 2^((st - 69)/12)"
	if note.Cents != 0 {
		tr.Given("ct, cents on it", float64(note.Cents), "cents", "as asked")
		formula = "A4 2^((st - 69 + ct/100)/12)"
	}
	tr.Step(pitch+", pitch of the open string", formula, t.Pitch.Hz(), "Hz", equal)
	tr.Given(length+", scale length of the string", d.Strings[i].Length.M(), "m", "the fan of the pair, as scalepair layout prints it")
	if capo > 0 {
		tr.Given("c, fret of the capo", float64(capo), "", "as asked")
		tr.Step("f, pitch from the capo on", "fo 2^(c/12)", t.SoundingPitch.Hz(), "Hz", equal)
		tr.Step("L, length from the capo on", "Lo 2^(-c/12)", t.Sounding.M(), "m", equal)
	}
	return tr.Steps
}

// withStrength puts the work for the strength of music wire in place of its
// result.
func withStrength(steps []trace.Step, core unit.Length) []trace.Step {
	at := slices.IndexFunc(steps, func(s trace.Step) bool { return s.Symbol == "S" })
	if at < 0 {
		return steps
	}
	var tr trace.Trace
	tension.MinStrength(&tr, core)
	return slices.Replace(steps, at, at+1, tr.Steps...)
}

// split parts the steps of the tension from those of the bend, and leaves out
// what the sections before gave already.
func split(steps []trace.Step, known map[string]float64) (open, bend []trace.Step) {
	to := &open
	for _, s := range steps {
		if s.Symbol == "n" && s.Formula == "" {
			to = &bend
		}
		if value, ok := known[s.Symbol]; s.Formula != "" || !ok || value != s.Value {
			*to = append(*to, s)
		}
	}
	return open, bend
}
