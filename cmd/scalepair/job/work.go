package job

import (
	"scalepair/data/trace"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// Work is all the steps for one string, from the readings to the compensation, each
// section following from those before it.
type Work struct {
	Case, String int     // case from 0, string from 1
	Fret         float64 // of the bend, from the nut; 0 for none
	Gauge        gauges.Gauge
	CapoFret     int

	FromGauge, Place, Open, Bend, Compensation []trace.Step
	// NoBend and NoCompensation say why a section is empty.
	NoBend, NoCompensation error
}

// Work shows the work for one string of a detail in one case, with a bend at a
// fret; a fret of 0 asks for none.
func (j *Job) Work(p *choice.Plan, d *choice.Detail, c, number int, fret float64) (*Work, error) {
	i := number - 1
	w := &Work{Case: c, String: number, Fret: fret, Gauge: p.Stock()[d.Gauges[i]], CapoFret: p.Request().Cases[c].CapoFret}
	own, err := fit.Explain(w.Gauge.Label, j.stockInput())
	if err != nil {
		return nil, err
	}
	for _, s := range own {
		w.FromGauge = append(w.FromGauge, trace.Step(s))
	}
	wire, at, bendErr := p.StringAt(d, c, i, fret)
	w.Place = j.place(p, d, c, i)
	steps, err := tension.Explain(wire, at)
	if bendErr == nil {
		bendErr = err
	}
	w.NoBend = bendErr
	w.split(steps)
	// The saddle is set without the capo, at the first tuning's pitch.
	first := p.Request().Cases[0]
	var tr trace.Trace
	_, _, w.NoCompensation = tension.Compensation(&tr, wire, d.Strings[i].Length, first.Pitches[i], p.Request().Action[i], p.Request().Tails[i])
	w.Compensation = tr.Steps
	return w, nil
}

// place goes from note and fan to the pitch and length that sound.
func (j *Job) place(p *choice.Plan, d *choice.Detail, c, i int) []trace.Step {
	const digits = 9
	var out []trace.Step
	add := func(symbol, name, formula string, value float64, unit, source string) {
		out = append(out, trace.Step{Symbol: symbol, Name: name, Formula: formula, Value: value, Unit: unit, Source: source, Digits: digits})
	}
	const equal = "equal temperament; A4 is note 69 of the MIDI note table"
	note := j.Tunings()[c].OfString(i + 1)
	cd := d.Strings[i].Tunings[c]
	capo := p.Request().Cases[c].CapoFret
	pitch, length := "f", "L"
	if capo > 0 {
		pitch, length = "fo", "Lo"
	}
	add("A4", "pitch standard", "", cd.Pitch.Hz()/note.FreqHz(1), "Hz", "as asked")
	add("st", "number of the note "+note.String(), "", float64(note.Semitone), "", equal)
	formula := "A4 2^((st - 69)/12)"
	if note.Cents != 0 {
		add("ct", "cents on it", "", note.Cents, "cents", "as asked")
		formula = "A4 2^((st - 69 + ct/100)/12)"
	}
	add(pitch, "pitch of the open string", formula, cd.Pitch.Hz(), "Hz", equal)
	add(length, "scale length, nut to theoretical saddle line", "", d.Strings[i].Length.M(), "m", "the fan of the pair, as scalepair layout prints it")
	if capo > 0 {
		add("c", "fret of the capo", "", float64(capo), "", "as asked")
		add("f", "pitch from the capo on", "fo 2^(c/12)", cd.SoundingPitch.Hz(), "Hz", equal)
		add("L", "length from the capo on", "Lo 2^(-c/12)", cd.Sounding.M(), "m", equal)
	}
	return out
}

// split parts the steps of the tension from those of the bend, and leaves out
// what the sections before gave already.
func (w *Work) split(steps []trace.Step) {
	shown := map[string]bool{}
	for _, s := range append(append([]trace.Step{}, w.FromGauge...), w.Place...) {
		shown[s.Symbol] = true
	}
	to := &w.Open
	for _, s := range steps {
		if s.Symbol == "n" && s.Formula == "" {
			to = &w.Bend
		}
		switch {
		case s.Formula == "" && shown[s.Symbol]:
		case s.Symbol == "" && s.Value == 0: // the share of an exact input
		case s.Symbol == "S" && w.Gauge.StrengthPa == 0:
			var tr trace.Trace
			tension.MinStrengthTraced(&tr, w.Gauge.Core)
			*to = append(*to, tr.Steps...)
			shown["S"] = true
		default:
			*to = append(*to, s)
			if s.Symbol == "T" && s.Formula == "q" {
				*to = append(*to, trace.Step{Symbol: "e", Name: "strain", Value: 0, Source: "core not known: taken not to stretch", Digits: 1})
			}
		}
	}
}
