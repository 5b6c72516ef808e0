package build

import (
	"errors"

	"github.com/pelletier/go-toml/v2"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/tuning"
)

// Read reads a build file. file is its name for messages. The error is a
// fault.List with every fault of the file; the Build is then nil.
func Read(src []byte, file string) (*Build, error) {
	text, err := plainText(src, file)
	if err != nil {
		return nil, err
	}
	r := &reader{file: file}
	w := walk(file, text, &r.faults)
	r.broken = w.broken
	b := readBuild(r.open(topLevel, fault.Place{Input: file}, w.root))
	r.finish()
	if len(r.faults) == 0 && w.unsure {
		r.referee(text)
	}
	if err := r.faults.Err(); err != nil {
		return nil, err
	}
	b.File, b.root = file, w.root
	b.inheritCapo()
	return b, nil
}

// referee asks the TOML library for a second opinion, since the walk takes
// keys one by one and a file must mean the same to every reader of TOML.
func (r *reader) referee(text []byte) {
	var all map[string]any
	err := toml.Unmarshal(text, &all)
	if err == nil {
		return
	}
	at := fault.Place{Input: r.file}
	var e *toml.DecodeError
	if errors.As(err, &e) {
		at.Line, at.Column = e.Position()
	}
	r.faults.Add(at, "a key or a section here clashes with an earlier one", "", "state every section once, and every key once and in its own section")
}

// readBuild reads every section, those first that others lean on.
func readBuild(root *section) *Build {
	b := &Build{Readings: "readings.csv"}
	root.text("name", &b.Name)
	root.path("readings", &b.Readings)
	readUnits(root, b)

	strings := root.sub("strings")
	root.unordered = unordered(strings)
	var main tuning.Tuning
	strings.tuning("tuning", &main)
	neck := root.sub("neck")
	frets := 24
	neck.whole("frets", &frets, 1, 36)
	b.Tunings, b.TuningsBy = readTunings(root, frets, main.Strings())
	b.Strings = readStrings(strings, main, b.Tunings, frets)
	n := b.Strings.Tuning.Strings()
	b.Neck = readNeck(neck, n, frets)
	b.Scales = readScales(root.sub("scales"))
	reverse := b.Scales.ReverseFan
	b.Chosen = readChosen(root.sub("chosen"), b.Neck, n, reverse)
	b.Columns = readColumns(root, b.Strings, b.Neck, reverse)
	b.Reference = readReference(root.sub("reference"), b.Neck, b.Strings.PitchStandardHz)
	gauges := b.Strings.Gauges != nil || b.Chosen != nil && b.Chosen.Gauges != nil
	b.Feel = readFeel(root.sub("feel"), n, frets, b.Reference != nil, gauges)
	readRest(root, b, n, frets)
	return b
}

func readRest(root *section, b *Build, strings, frets int) {
	b.Blanks = readBlanks(root)
	b.Limits = readLimits(root.sub("limits"), len(b.Blanks))
	b.Tails = readTails(root.sub("tails"), "nut", "saddle", strings)
	b.Saddle = readSaddle(root.sub("saddle"))
	b.Dots = readDots(root.sub("dots"), frets)
	b.FretWire = readFretWire(root.sub("fret_wire"))
	b.Playing = readPlaying(root.sub("playing"), frets)
	b.Lines = readLines(root)
	b.Measuring = readMeasuring(root.sub("measuring"))
	b.Marking = readMarking(root.sub("marking"))
	b.Constructions = readConstructions(root)
	b.Materials = readMaterials(root)
	b.Confidence = readConfidence(root.sub("confidence"))
}

func readUnits(root *section, b *Build) {
	for _, u := range []struct {
		key string
		set func(string) error
	}{
		{"length_unit", func(s string) (err error) { b.LengthUnit, err = unit.ParseLengthUnit(s); return err }},
		{"force_unit", func(s string) (err error) { b.ForceUnit, err = unit.ParseForceUnit(s); return err }},
	} {
		n := root.want(u.key, kindText, "put it in quotes")
		if n == nil {
			continue
		}
		root.faults.Include(root.place(n.at), u.set(n.text))
	}
}
