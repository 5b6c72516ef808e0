// Package job puts a build file, the readings beside it and the command line
// together into what the domain packages take. It opens files; it does not
// print, and does no physics.
package job

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scalepair/cmd/scalepair/build"
	"scalepair/data"
	"scalepair/data/unit"
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
}

// Demo says that the embedded demo stands in for a build file.
func (j *Job) Demo() bool { return j.Path == "" }

// Load reads the build file at path and its readings. An empty path takes
// DefaultFile in the current folder, and without one the embedded demo. All
// faults of a file come together as a fault.List.
func Load(path string, over Overrides) (*Job, error) {
	j, dir, err := open(path)
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
	if err := j.readStock(dir); err != nil {
		return j, err
	}
	return j, j.gaugesHighFirst()
}

// open finds the build file and gives the folder that holds its readings, which
// the demo's does not need.
func open(path string) (*Job, string, error) {
	if path == "" {
		if _, err := os.Stat(DefaultFile); os.IsNotExist(err) {
			src, err := data.Demo(DefaultFile)
			return &Job{Source: src}, "", err
		}
		path = DefaultFile
	}
	src, err := readInput(path, "give the path of a build file, or make one: scalepair init")
	if err != nil {
		return nil, "", err
	}
	return &Job{Path: path, Source: src}, filepath.Dir(path), nil
}

// readStock reads the readings and combines them with the constructions.
func (j *Job) readStock(dir string) error {
	name := j.Build.Readings
	show := name
	if filepath.IsAbs(name) {
		dir = ""
	}
	var src []byte
	var err error
	if j.Demo() {
		show = "demo:" + name
		src, err = data.Demo(name)
	} else if show = filepath.Join(dir, filepath.FromSlash(name)); !j.needless(show) {
		src, err = readInput(show, `weigh some string ends and list them there, or name the file with readings = "..." in `+j.Build.File)
	}
	if err != nil {
		return err
	}
	if src != nil {
		if j.Readings, err = gauges.ReadReadings(bytes.NewReader(src), show, j.pitchReader()); err != nil {
			return err
		}
	}
	j.ownMaterials()
	j.Stock, err = gauges.Combine(j.Readings, constructions(j.Build), instruments(j.Build), j.options())
	return err
}

// needless tells whether there are no readings and need not be: nobody named
// them, and gauges are known by construction.
func (j *Job) needless(path string) bool {
	_, err := os.Stat(path)
	return errors.Is(err, fs.ErrNotExist) && !isLink(path) && !j.Build.Given("readings") && len(j.Build.Constructions) > 0
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
	return gauges.Options{MinStrength: tension.MinStrength}
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
	m := b.Measuring
	t := gauges.Instruments{
		BalanceResolution: m.BalanceResolution, BalanceRepeatability: m.BalanceRepeatability, BalanceAccuracy: m.BalanceAccuracy,
		RulerResolution: m.RulerResolution, RulerAccuracy: m.RulerAccuracy,
		CaliperResolution: m.CaliperResolution, CaliperAccuracy: m.CaliperAccuracy,
		HungResolution: m.HungResolution, HungAccuracy: m.HungAccuracy, Pitch: unit.Cents(m.PitchUncertaintyCents),
		Gravity: m.GravityMS2, GravityAccuracy: m.GravityAccuracyMS2, EstimateOutside: m.OutsideFit,
	}
	if t.HungResolution == 0 {
		t.HungResolution = gauges.DefaultInstruments().HungResolution
	}
	return t
}

func constructions(b *build.Build) []gauges.Construction {
	var out []gauges.Construction
	for i, c := range b.Constructions {
		g := gauges.Construction{
			Place: b.Place(fmt.Sprintf("constructions[%d]", i)), Gauge: c.Gauge, Family: c.Family,
			Core: c.Core, Shape: gauges.Shape(c.Shape), Material: c.Material, Winding: c.Winding,
		}
		if c.Measured {
			g.Diameters = gauges.Measured
		}
		for _, w := range c.Wraps {
			wrap := gauges.Wrap{Wire: w.Wire, Material: w.Material, Packing: unit.Ratio(w.Packing)}
			if w.Flat {
				wrap.Form = gauges.FlatWire
			}
			g.Wraps = append(g.Wraps, wrap)
		}
		out = append(out, g)
	}
	return out
}
