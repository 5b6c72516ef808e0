package job

import (
	"bytes"
	"fmt"
	"math"

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
		RadiusNut: n.RadiusNut, RadiusLast: n.RadiusLast,
		Tang: w.TangDepth, Clearance: w.Clearance,
		Kerf: w.Kerf, TangWidth: w.TangWidth, BarbWidth: w.BarbWidth,
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
		out.HandAngle = fan.HandAngle(unit.Angle(p.NeckAngleDeg * math.Pi / 180))
	}
	return out
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
	Positions                  []fan.Position
}

// FurtherLines lays the lines of [[lines]] on a layout. Faults stand at the
// line's entry in the file.
func (j *Job) FurtherLines(l *fan.Layout) ([]FurtherLine, error) {
	var out []FurtherLine
	var faults fault.List
	last := l.Frets[l.Spec.Frets].Line
	for i, b := range j.Build.Lines {
		cross := l.Saddle.Cross.MM() - b.Distance.MM()
		if b.BehindLastFret {
			cross = last.Cross.MM() + b.Distance.MM()
		}
		if cross < 0 || cross > l.Saddle.Cross.MM() {
			faults.Add(j.entry("lines", i), fmt.Sprintf("%s does not lie between nut and saddle line", b.Name),
				j.length(b.Distance.MM()), fmt.Sprintf("along the centreline they are %s apart, the last fret %s before the saddle line",
					j.length(l.Saddle.Cross.MM()), j.length(l.Saddle.Cross.MM()-last.Cross.MM())))
			continue
		}
		slant := [...]float64{
			build.SlantSquare: 0, build.SlantSaddle: l.Saddle.Slant.Rad(),
			build.SlantLastFret: last.Slant.Rad(), build.SlantGiven: b.SlantDeg * math.Pi / 180,
		}[b.Slant]
		line, err := l.LineAt(unit.MM(cross), unit.Angle(slant))
		if err != nil {
			faults.Include(fault.Place{}, at(err, j.entry("lines", i)))
			continue
		}
		out = append(out, FurtherLine{Name: b.Name, Line: line, FromSaddleMM: l.Saddle.Cross.MM() - cross,
			BehindLastMM: cross - last.Cross.MM(), Positions: l.StringsAt(line)})
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
	src, err := readInput(path, "give the file of measured marks, or make a form: scalepair check --form > measured.csv")
	if err != nil {
		return nil, err
	}
	return mark.ReadReadings(bytes.NewReader(src), path)
}
