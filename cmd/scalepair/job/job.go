// Package job puts a build file, the readings beside it and the command line
// together into what the domain packages take. It opens files; it does not
// print, and does no physics.
package job

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/odd"
	"scalepair/gauges"
	"scalepair/tension"
	"scalepair/tuning"
)

// DefaultFile is the build file that a command looks for in the current
// folder when none is named.
const DefaultFile = "build.toml"

// Job is one run's input: a checked build and the stock beside it.
type Job struct {
	Build *build.Build
	// Path is the build file's path, "" for the embedded demo.
	Path string
	// Source is the build file's text.
	Source []byte
	// Stock is made of the readings; Readings are its rows.
	Stock    gauges.Stock
	Readings []gauges.Reading
	// Over holds what the command line said over the file.
	Over Overrides

	oddReadings odd.List // what looks odd in the rows as they were read
}

// Demo says that the embedded demo stands in for a build file.
func (j *Job) Demo() bool { return j.Path == "" }

// Load reads the build file at path and its readings. An empty path takes
// DefaultFile in the current folder, and without one the embedded demo. All
// faults of a file come together as a fault.List.
func Load(path string, over Overrides) (*Job, error) {
	j, files, dir, err := open(path)
	if err != nil {
		return nil, err
	}
	name := j.Path
	if j.Demo() {
		name = "demo:" + DefaultFile
	}
	if j.Build, err = build.Read(j.Source, name); err != nil {
		return nil, err
	}
	j.Over = over
	if err := over.apply(j.Build); err != nil {
		return nil, err
	}
	if err := j.readStock(files, dir); err != nil {
		return j, err
	}
	return j, j.gaugesHighFirst()
}

// open finds the build file and gives the folder that holds its readings.
func open(path string) (*Job, fs.FS, string, error) {
	if path == "" {
		if _, err := os.Stat(DefaultFile); errors.Is(err, fs.ErrNotExist) {
			src, err := fs.ReadFile(data.Demo(), DefaultFile)
			return &Job{Source: src}, data.Demo(), "", err
		}
		path = DefaultFile
	}
	src, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, "", readFault(path, err, "give the path of a build file, or make one: scalepair init")
	}
	return &Job{Path: path, Source: src}, nil, filepath.Dir(path), nil
}

// readFault puts a failed reading of a file in words.
func readFault(path string, err error, remedy string) error {
	what := "the file cannot be read"
	var pe *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		what = "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		what = "the file may not be read"
	case errors.As(err, &pe):
		what += ": " + pe.Err.Error()
	}
	return fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: remedy}
}

// readStock reads the readings and combines them with the constructions.
func (j *Job) readStock(files fs.FS, dir string) error {
	name := j.Build.Readings
	show := name
	var src []byte
	var err error
	switch {
	case files != nil:
		show = "demo:" + name
		src, err = fs.ReadFile(files, name)
	case filepath.IsAbs(name):
		src, err = os.ReadFile(name)
	default:
		show = filepath.Join(dir, filepath.FromSlash(name))
		src, err = os.ReadFile(show)
	}
	if errors.Is(err, fs.ErrNotExist) && !j.Build.Given("readings") && len(j.Build.Constructions) > 0 {
		err, src = nil, nil // gauges known by construction alone need no readings
	} else if err != nil {
		return readFault(show, err, `weigh some string ends and list them there, or name the file with readings = "..." in `+j.Build.File)
	}
	if src != nil {
		if j.Readings, err = gauges.ReadReadings(bytes.NewReader(src), show, j.pitchReader()); err != nil {
			return err
		}
	}
	j.oddReadings = gauges.OddReadings(j.Readings)
	j.ownMaterials()
	j.Stock, err = gauges.Combine(j.Readings, constructions(j.Build), instruments(j.Build), j.options())
	return err
}

// pitchReader reads the notes of hung-weight tests under the build's pitch
// standard.
func (j *Job) pitchReader() gauges.PitchReader {
	return func(text string) (float64, error) {
		n, err := tuning.ParseNote(text)
		if err != nil {
			return 0, err
		}
		return n.FreqHz(j.Build.Strings.PitchStandardHz), nil
	}
}

func (j *Job) options() gauges.Options {
	return gauges.Options{Extrapolate: j.Build.Measuring.OutsideFit, MinStrength: tension.MinStrength}
}

// ownMaterials puts the build file's own materials to the readings that name
// them; what a reading itself states stays.
func (j *Job) ownMaterials() {
	take := func(to *float64, v float64) {
		if *to == 0 {
			*to = v
		}
	}
	for i := range j.Readings {
		r := &j.Readings[i]
		for _, m := range j.Build.Materials {
			if strings.EqualFold(strings.TrimSpace(m.Name), r.Material) {
				take(&r.DensityKgM3, 1000*m.DensityGCM3)
				take(&r.YoungsPa, 1e9*m.YoungsGPa)
				take(&r.StrengthPa, 1e6*m.StrengthMPa)
			}
		}
	}
}

// instruments takes the file's measuring tools; what it leaves open keeps the
// default of package gauges.
func instruments(b *build.Build) gauges.Instruments {
	m, t := b.Measuring, gauges.DefaultInstruments()
	take := func(to *float64, v float64) {
		if v > 0 {
			*to = v
		}
	}
	take(&t.BalanceStepKg, float64(m.BalanceStep))
	take(&t.BalanceRepeatKg, float64(m.BalanceRepeatability))
	take(&t.BalanceAccuracyKg, float64(m.BalanceAccuracy))
	take(&t.RulerStepM, float64(m.RulerStep))
	take(&t.RulerAccuracyM, float64(m.RulerAccuracy))
	take(&t.CaliperStepM, float64(m.CaliperStep))
	take(&t.CaliperAccuracyM, float64(m.CaliperAccuracy))
	take(&t.HungStepKg, float64(m.HungStep))
	take(&t.HungAccuracyKg, float64(m.HungAccuracy))
	take(&t.PitchCents, m.PitchUncertaintyCents)
	if m.GravityMS2 > 0 {
		t.GravityMS2, t.UGravityMS2 = m.GravityMS2, gauges.BoundU(m.GravityAccuracyMS2)
	}
	return t
}

func constructions(b *build.Build) []gauges.Construction {
	var out []gauges.Construction
	for i, c := range b.Constructions {
		g := gauges.Construction{
			Place: b.Place("constructions[" + strconv.Itoa(i) + "]"), Gauge: c.Gauge, Family: c.Family,
			CoreM: float64(c.Core), Shape: gauges.Shape(c.Shape), CoreMaterial: c.Material, WindingM: float64(c.Winding),
		}
		if c.Measured {
			g.Diameters = gauges.Measured
		}
		for _, w := range c.Wraps {
			wrap := gauges.Wrap{WireM: float64(w.Wire), Material: w.Material, Packing: w.Packing}
			if w.Flat {
				wrap.Form = gauges.FlatWire
			}
			g.Wraps = append(g.Wraps, wrap)
		}
		out = append(out, g)
	}
	return out
}
