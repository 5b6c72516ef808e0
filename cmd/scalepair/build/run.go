package build

import (
	"bytes"
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scalepair/data"
	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
	"scalepair/tuning"
)

// DefaultFile is the build file that a command looks for in the current
// folder when none is named.
const DefaultFile = "build.toml"

// Run is one run's input: a checked build and the stock beside it.
type Run struct {
	*Build
	// Path is the build file's path; "" for the embedded demo, and for one that
	// was given as text.
	Path string
	// Source is the build file's text.
	Source []byte
	flags  *Flags
	// Stock is made of the readings; Rows are theirs.
	Stock fit.Stock
	Rows  []reading.Reading
	// Bare says that there are no readings, so that nothing is known of strings.
	Bare bool
}

// Demo reports whether the embedded demo stands in for a build file.
func (r *Run) Demo() bool { return r.Build != nil && strings.HasPrefix(r.File, demo) }

const demo = "demo:"

// ReadingsFile is the name of the readings in a build that names none, and of those
// that are given as text.
const ReadingsFile = "readings.csv"

// New makes a run of a build file and its readings that are given as text. Without
// readings, and without gauges that are known by construction, the run comes with
// the error, bare.
func New(source, readings []byte, over *Flags) (r *Run, err error) {
	r = &Run{Source: source, flags: over}
	if r.Build, err = Read(source, DefaultFile, over); err != nil {
		return nil, err
	}
	if len(bytes.TrimSpace(readings)) > 0 {
		return r, r.combine(readings, ReadingsFile)
	}
	if r.Bare = len(r.Constructions) == 0; r.Bare {
		return r, fault.Fault{Place: fault.Place{Input: ReadingsFile}, What: "there are no readings", Remedy: "weigh some string ends and list them there"}
	}
	return r, r.combine(nil, ReadingsFile)
}

// WithPair gives the run with the pair of --bass and --treble over it. The rest of the
// build stays as it was read: for a length that is dragged.
func (r *Run) WithPair(over *Flags) (*Run, error) {
	if over == nil {
		return r, nil
	}
	one, b := *r, *r.Build
	b.places = b.places.clone()
	if b.Chosen != nil {
		chosen := *b.Chosen
		b.Chosen = &chosen
	}
	one.flags, one.Build = over, &b
	var faults fault.List
	faults.Include(fault.Place{Input: b.File}, over.pair(&b))
	if len(faults) == 0 {
		checker{&b, &faults}.pairs()
	}
	return &one, faults.Err()
}

// Inputs are the paths of what the run reads: the build file, and its readings
// whether they are there or not. None for the embedded demo.
func (r *Run) Inputs() []string {
	if r.Path == "" {
		return nil
	}
	return []string{r.Path, r.readingsPath()}
}

// readingsPath is where the readings lie, beside the build file unless it says
// otherwise.
func (r *Run) readingsPath() string {
	name := filepath.FromSlash(r.Readings)
	switch {
	case r.Demo():
		return demo + r.Readings
	case filepath.IsAbs(name):
		return name
	}
	return filepath.Join(filepath.Dir(r.Path), name)
}

// Load reads the build file at path and its readings. An empty path takes
// DefaultFile in the current folder, and without one the embedded demo. All
// faults of a file come together as a fault.List. Where only readings that nobody
// named are missing, the run comes with the error, bare.
func Load(path string, over *Flags) (*Run, error) {
	r, err := open(path, over)
	if err == nil {
		return r, r.readStock()
	}
	if r.Build != nil { // its slips do not hide those of the readings
		if src, none := os.ReadFile(r.readingsPath()); none == nil {
			var faults fault.List
			_, slips := reading.Read(bytes.NewReader(src), r.readingsPath(), r.pitch)
			faults.Include(fault.Place{}, err)
			faults.Include(fault.Place{Input: r.readingsPath()}, slips)
			err = faults.Err()
		}
	}
	return nil, err
}

// Open reads the build file as Load does, and leaves the readings alone.
func Open(path string, over *Flags) (*Run, error) {
	r, err := open(path, over)
	if err != nil {
		return nil, err
	}
	return r, nil
}

// open opens as Open does; what could be read comes with the error.
func open(path string, over *Flags) (r *Run, err error) {
	r = &Run{Path: path, flags: over}
	name := path
	if _, missing := os.Stat(DefaultFile); path == "" && os.IsNotExist(missing) {
		name = demo + DefaultFile
		r.Source, err = data.Demo(DefaultFile)
	} else {
		r.Path = cmp.Or(path, DefaultFile)
		name = r.Path
		r.Source, err = readInput(r.Path, "give the path of a build file, or make one: scalepair init")
	}
	if err != nil {
		return r, err
	}
	var faults fault.List
	r.Build, faults = read(r.Source, name, over)
	return r, faults.Err()
}

// readStock reads the readings and combines them with the constructions. No
// readings are needed where nobody named them and gauges are known by
// construction.
func (r *Run) readStock() error {
	path := r.readingsPath()
	var src []byte
	var err error
	if r.Demo() {
		src, err = data.Demo(r.Readings)
	} else if _, missing := os.Stat(path); !os.IsNotExist(missing) || r.Given("readings") || len(r.Constructions) == 0 {
		src, err = readInput(path, `weigh some string ends and list them there, or name the file with readings = "..." in `+r.File)
		if os.IsNotExist(missing) && !r.Given("readings") {
			r.Bare = true
		}
	}
	if err != nil {
		return err
	}
	return r.combine(src, path)
}

// combine makes the stock of readings, nil for none, and constructions.
func (r *Run) combine(readings []byte, name string) (err error) {
	if readings != nil {
		if r.Rows, err = reading.Read(bytes.NewReader(readings), name, r.pitch); err != nil {
			return err
		}
	}
	r.Stock, err = fit.Combine(r.stockInput())
	return err
}

// stockInput is what the stock is made from.
func (r *Run) stockInput() gauges.Input {
	return gauges.Input{Readings: r.Rows, Constructions: r.Constructions, Materials: r.Materials, Instruments: r.Measuring}
}

// pitch reads the note of a hung-weight test under the build's pitch standard.
func (r *Run) pitch(text string) (unit.Frequency, error) {
	n, err := tuning.ParseNote(text)
	if err != nil {
		return 0, err
	}
	return n.Pitch(r.Strings.PitchStandard), nil
}

// readInput reads a file of the builder's; remedy is for one that is not there.
func readInput(path, remedy string) ([]byte, error) {
	src, err := os.ReadFile(path)
	if err == nil {
		return src, nil
	}
	f := fault.Fault{Place: fault.Place{Input: path}, What: "the file cannot be read", Remedy: remedy}
	var reason *fs.PathError
	if info, statErr := os.Stat(path); statErr == nil && info.IsDir() {
		f.What, f.Remedy = "this is a folder, not a file", "name the file in it"
	} else if errors.Is(err, fs.ErrNotExist) {
		f.What = "there is no such file"
	} else if errors.As(err, &reason) {
		f.What += ": " + reason.Err.Error()
	}
	return nil, f
}
