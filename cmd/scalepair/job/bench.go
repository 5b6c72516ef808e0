package job

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// What the build file says of the work at the bench, as package fan and
// package mark take it.

// Sawing is fret wire, saw and crown. The board's thickness is left at 0: it
// is a blank's.
func (j *Job) Sawing() fan.Sawing {
	n, w := j.Build.Neck, j.Build.FretWire
	return fan.Sawing{
		RadiusNutMM: n.RadiusNut.MM(), RadiusLastMM: n.RadiusLast.MM(),
		TangMM: w.TangDepth.MM(), ClearanceMM: w.Clearance.MM(),
		KerfMM: w.Kerf.MM(), TangWidthMM: w.TangWidth.MM(), BarbWidthMM: w.BarbWidth.MM(),
	}
}

// Played is where and how the player plays. A neck angle that is not stated
// counts for nothing.
func (j *Job) Played() fan.Playing {
	p := j.Build.Playing
	var out fan.Playing
	if j.Build.Given("playing.from_fret") || j.Build.Given("playing.to_fret") {
		out.FromFret, out.ToFret = int(math.Floor(p.FromFret)), int(math.Ceil(p.ToFret))
	}
	if p.AngleGiven {
		out.HoldRad = fan.HoldOfNeckAngle(p.NeckAngleDeg * math.Pi / 180)
	}
	return out
}

// Fineness is how finely what is set out is printed, and on whose word.
type Fineness struct {
	mark.Resolution
	// From is the section that states the calipers' step, "--calipers" where
	// the command line does, "" where nobody does; Stated is that step.
	From   string
	Stated unit.Length
}

// Finest is the least that a scribed or pencilled mark can be set to
// (judgement), and what common calipers show: 0.01 mm or 0.001 in. Calipers may
// show less.
func Finest(u unit.LengthUnit) mark.Resolution {
	if u == unit.Millimetres {
		return mark.Resolution{Unit: u, PerUnit: 100}
	}
	return mark.Resolution{Unit: unit.DecimalInches, PerUnit: 1000}
}

// Calipers is what marks are rounded to where the lengths of u are printed:
// the step of the build's calipers, since calipers set them; 0.01 mm or
// 0.001 in where no step is stated or a finer one is. So it goes in decimals
// where lengths go in fractions of an inch, unless the calipers themselves
// show such fractions. What [marking] says of drawn marks comes first.
func (j *Job) Calipers(u unit.LengthUnit) Fineness {
	f := Fineness{Resolution: Finest(u)}
	if f.Stated, f.From = j.caliperStep(); f.From != "" {
		f.Resolution = printed(f.Stated, u)
	}
	return f
}

// stated is the step of a tool and the section that states it: [marking], what
// it shows on drawn marks, before [measuring]; 0 and "" where neither does.
func stated(b *build.Build, key string, marking, measuring unit.Length) (unit.Length, string) {
	switch {
	case marking > 0:
		return marking, "[marking]"
	case b.Given("measuring." + key):
		return measuring, "[measuring]"
	}
	return 0, ""
}

// printed is the resolution in which a step is printed: the step itself where
// it is a whole part of the unit and no finer than a mark can be set, else the
// round step next below it.
func printed(step unit.Length, u unit.LengthUnit) mark.Resolution {
	if r, ok := exactly(step, u); ok && r.StepMM() >= Finest(u).StepMM()*(1-1e-9) {
		return r
	}
	best := Finest(u)
	for _, divide := range []int64{2, 5, 10, 20, 50} {
		// A twentieth lets 0.002 in stand for 0.05 mm.
		if r := (mark.Resolution{Unit: best.Unit, PerUnit: Finest(u).PerUnit / divide}); r.StepMM() <= 1.05*step.MM() {
			best = r
		}
	}
	return best
}

// exactly gives the step as a whole part of its unit. Fractions of an inch are
// kept where lengths go in them too.
func exactly(step unit.Length, u unit.LengthUnit) (mark.Resolution, bool) {
	var text string
	switch fraction := unit.InchFractions.Format(step, 0); {
	case u == unit.Millimetres:
		text = unit.Fixed(step.MM(), 7) + " mm"
	case u == unit.InchFractions && strings.Contains(fraction, "/") && math.Abs(64*step.Inches()-math.Round(64*step.Inches())) < 1e-9:
		text = fraction + " in"
	default:
		text = unit.Fixed(step.Inches(), 7) + " in"
	}
	r, err := mark.ParseResolution(text)
	return r, err == nil
}

// StepsFrom names the sections that state the steps of ruler and calipers for
// CheckOptions: "[marking]", else "[measuring]"; "" where neither does, and
// package mark's default holds.
func (j *Job) StepsFrom() (ruler, calipers string) {
	_, ruler = j.rulerStep()
	_, calipers = j.caliperStep()
	return ruler, calipers
}

func (j *Job) rulerStep() (unit.Length, string) {
	step, from := stated(j.Build, "ruler_step", j.Build.Marking.RulerStep, j.Build.Measuring.RulerStep)
	if from == "[measuring]" && step > mostRulerStep {
		return 0, ""
	}
	return step, from
}

// mostRulerStep is the coarsest step of [measuring] that is taken for marks
// too, package mark's own bound: what is coarser measures no mark.
var mostRulerStep = unit.MM(5)

func (j *Job) caliperStep() (unit.Length, string) {
	return stated(j.Build, "caliper_step", j.Build.Marking.CaliperStep, j.Build.Measuring.CaliperStep)
}

// CheckOptions are the tolerances of [marking] and the tools' steps; what
// neither [marking] nor [measuring] states is package mark's default.
func (j *Job) CheckOptions() mark.Options {
	m, o := j.Build.Marking, mark.DefaultOptions()
	take := func(to *float64, l unit.Length) {
		if l > 0 {
			*to = l.MM()
		}
	}
	ruler, _ := j.rulerStep()
	calipers, _ := j.caliperStep()
	take(&o.Ruler.StepMM, ruler)
	take(&o.Ruler.ZeroMM, m.RulerZero)
	take(&o.Caliper.StepMM, calipers)
	take(&o.Caliper.ZeroMM, m.CaliperZero)
	take(&o.OffsetToleranceMM, m.NutOffsetTolerance)
	switch {
	case m.Tolerance > 0:
		o.Tolerance = mark.Tolerance{MM: m.Tolerance.MM()}
	case m.ToleranceCents > 0:
		o.Tolerance = mark.Tolerance{Cents: m.ToleranceCents}
	}
	return o
}

// FurtherLine is a line of [[lines]] on one layout: a pickup, say.
type FurtherLine struct {
	Name string
	Line fan.Across
	// FromSaddleMM and BehindLastMM are along the centreline: from where the
	// saddle's theoretical line crosses it towards the nut, and from where the
	// last fret crosses it towards the bridge.
	FromSaddleMM, BehindLastMM float64
	Seats                      []fan.Seat
}

// FurtherLines lays the lines of [[lines]] on a layout. Faults stand at the
// line's entry in the file.
func (j *Job) FurtherLines(l *fan.Layout) ([]FurtherLine, error) {
	var out []FurtherLine
	var faults fault.List
	last := l.Frets[l.Spec.Frets].Line
	for i, b := range j.Build.Lines {
		cross := l.Saddle.CrossMM - b.Distance.MM()
		if b.BehindLastFret {
			cross = last.CrossMM + b.Distance.MM()
		}
		if cross < 0 || cross > l.Saddle.CrossMM {
			faults.Add(j.entry("lines", i), fmt.Sprintf("%s does not lie between nut and saddle line", b.Name),
				j.length(b.Distance.MM()), fmt.Sprintf("along the centreline they are %s apart, the last fret %s before the saddle line",
					j.length(l.Saddle.CrossMM), j.length(l.Saddle.CrossMM-last.CrossMM)))
			continue
		}
		slant := [...]float64{
			build.SlantSquare: 0, build.SlantSaddle: l.Saddle.SlantRad,
			build.SlantLastFret: last.SlantRad, build.SlantGiven: b.SlantDeg * math.Pi / 180,
		}[b.Slant]
		line, err := l.LineAt(cross, slant)
		if err != nil {
			faults.Include(fault.Place{}, at(err, j.entry("lines", i)))
			continue
		}
		out = append(out, FurtherLine{Name: b.Name, Line: line, FromSaddleMM: l.Saddle.CrossMM - cross,
			BehindLastMM: cross - last.CrossMM, Seats: l.StringsAt(line)})
	}
	return out, faults.Err()
}

// length names a length in the build's unit, for messages.
func (j *Job) length(mm float64) string {
	u := j.Build.LengthUnit
	return u.Format(unit.MM(mm), 1) + " " + u.Symbol()
}

// size names a blank's length and width.
func (j *Job) size(lengthMM, widthMM float64) string {
	u := j.Build.LengthUnit
	return u.Format(unit.MM(lengthMM), 1) + " x " + j.length(widthMM)
}

// crown gives a fault of the crown's radius the key that states it: a compound
// crown of two like radii is none to package fan.
func (j *Job) crown(err error) error {
	list, ok := err.(fault.List)
	if !ok || !j.Build.Given("neck.radius_nut") {
		return err
	}
	for i, f := range list {
		if f.Place.Input == "neck.radius" {
			list[i].Place.Input = "neck.radius_nut"
		}
	}
	return list
}

// entry is the place of one entry of a list of tables.
func (j *Job) entry(list string, i int) fault.Place {
	return j.Build.Place(fmt.Sprintf("%s[%d]", list, i))
}

// at puts every fault of err at one place, and says what it was about.
func at(err error, place fault.Place) error {
	list, ok := err.(fault.List)
	if !ok {
		return err
	}
	out := make(fault.List, len(list))
	for i, f := range list {
		out[i] = f
		out[i].Place = place
	}
	return out
}

// ReadMeasured reads the measured marks of a file. The error is a fault.List
// of everything that is wrong with it.
func ReadMeasured(path string) ([]mark.Reading, error) {
	src, err := os.ReadFile(path)
	if err != nil {
		return nil, readFault(path, err, "give the file of measured marks, or make a form: scalepair check --form > measured.csv")
	}
	return mark.ReadReadings(bytes.NewReader(src), path)
}
