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

	"scalepair/cmd/scalepair/build"
	"scalepair/data"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
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
	Stock    fit.Stock
	Readings []reading.Reading
}

// Demo says that the embedded demo stands in for a build file.
func (j *Job) Demo() bool { return j.Path == "" }

// Load reads the build file at path and its readings. An empty path takes
// DefaultFile in the current folder, and without one the embedded demo. All
// faults of a file come together as a fault.List.
func Load(path string, over *build.Flags) (*Job, error) {
	j, err := Open(path, over)
	if err != nil {
		return nil, err
	}
	if err := j.readStock(filepath.Dir(j.Path)); err != nil {
		return j, err
	}
	return j, j.gaugesHighFirst()
}

// Open reads the build file as Load does, and leaves the readings alone.
func Open(path string, over *build.Flags) (*Job, error) {
	j, err := open(path)
	if err != nil {
		return nil, err
	}
	name := j.Path
	if j.Demo() {
		name = "demo:" + DefaultFile
	}
	j.Build, err = build.Read(j.Source, name, over)
	return j, err
}

// open finds the build file.
func open(path string) (*Job, error) {
	if path == "" {
		if _, err := os.Stat(DefaultFile); os.IsNotExist(err) {
			src, err := data.Demo(DefaultFile)
			return &Job{Source: src}, err
		}
		path = DefaultFile
	}
	src, err := readInput(path, "give the path of a build file, or make one: scalepair init")
	return &Job{Path: path, Source: src}, err
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
		if j.Readings, err = reading.Read(bytes.NewReader(src), show, j.pitchReader()); err != nil {
			return err
		}
	}
	j.Stock, err = fit.Combine(j.stockInput())
	return err
}

// stockInput is what the stock is made from.
func (j *Job) stockInput() gauges.Input {
	return gauges.Input{Readings: j.Readings, Constructions: j.Build.Constructions, Materials: j.Build.Materials, Instruments: j.Build.Measuring}
}

// needless tells whether there are no readings and need not be: nobody named
// them, and gauges are known by construction.
func (j *Job) needless(path string) bool {
	_, err := os.Stat(path)
	return errors.Is(err, fs.ErrNotExist) && !isLink(path) && !j.Build.Given("readings") && len(j.Build.Constructions) > 0
}

// pitchReader reads the notes of hung-weight tests under the build's pitch
// standard.
func (j *Job) pitchReader() reading.PitchReader {
	return func(text string) (unit.Frequency, error) {
		n, err := tuning.ParseNote(text)
		if err != nil {
			return 0, err
		}
		return n.Pitch(j.Build.Strings.PitchStandard), nil
	}
}

// Tools are the measuring instruments of [measuring].
func (j *Job) Tools() gauges.Instruments { return j.Build.Measuring }
