package engine

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/fault"
)

// The names that the texts have in messages, and as files.
const (
	buildFile    = build.DefaultFile
	readingsFile = "readings.csv"
	marksFile    = "measured.csv"
)

// Request is what a call is about.
type Request struct {
	Build    string              `json:"build"` // the text of a build file; the demo's with its readings where empty
	Readings string              `json:"readings"`
	Marks    string              `json:"marks"`
	Flags    map[string]Texts    `json:"flags"`
	Edits    []Edit              `json:"edits"`   // of a text
	Paste    string              `json:"paste"`   // rows of a spreadsheet
	Columns  []map[string]string `json:"columns"` // of a comparison

	engine  *Engine
	ctx     context.Context
	notes   []string
	despite any // the result that comes in spite of faults
}

// Texts are the values of a flag: JSON has a text, a list of texts, or true for a
// switch.
type Texts []string

// UnmarshalJSON reads them; false gives none.
func (t *Texts) UnmarshalJSON(text []byte) error {
	var one string
	var on bool
	switch {
	case json.Unmarshal(text, &one) == nil:
		*t = Texts{one}
	case json.Unmarshal(text, &on) == nil:
		if *t = nil; on {
			*t = Texts{"true"}
		}
	default:
		return json.Unmarshal(text, (*[]string)(t))
	}
	return nil
}

// question reads the texts, and makes the question of them; own defines the flags that only
// this call has.
func (r *Request) question(own ...func(*pflag.FlagSet)) (*answer.Question, error) {
	var over build.Flags
	return r.questionOver(&over, append(own, func(f *pflag.FlagSet) {
		over.Add(f)
		over.Add(f, "trials", "seed")
	})...)
}

// questionOver is question for a call that has not all of the flags over a build.
func (r *Request) questionOver(over *build.Flags, own ...func(*pflag.FlagSet)) (*answer.Question, error) {
	var units answer.Units
	if err := r.flags(append(own, units.Flags)...); err != nil {
		return nil, err
	}
	if err := r.orDemo(); err != nil {
		return nil, err
	}
	run, err := r.engine.run(r, over)
	return answer.New(r.ctx, run, err, units, r.note)
}

func (r *Request) note(format string, args ...any) {
	r.notes = append(r.notes, fmt.Sprintf(format, args...))
}

// orDemo puts the demo in the place of a build that is not given.
func (r *Request) orDemo() error {
	if r.Build != "" {
		return nil
	}
	text, err := data.Demo(buildFile)
	readings, err2 := data.Demo(readingsFile)
	r.Build, r.Readings = string(text), string(readings)
	return errors.Join(err, err2)
}

// run reads build and readings. Where they and the flags are those of the last call,
// but for the pair, they are not read again.
func (e *Engine) run(r *Request, over *build.Flags) (*build.Run, error) {
	rest := maps.Clone(r.Flags)
	delete(rest, "bass")
	delete(rest, "treble")
	if of := [3]string{r.Build, r.Readings, fmt.Sprint(rest)}; e.last == nil || e.of != of {
		last, err := build.New([]byte(r.Build), []byte(r.Readings), over.ButPair())
		if err != nil {
			return build.New([]byte(r.Build), []byte(r.Readings), over)
		}
		e.last, e.of = last, of
	}
	return e.last.WithPair(over)
}

// flags reads the flags by their definitions.
func (r *Request) flags(define ...func(*pflag.FlagSet)) error {
	set := pflag.NewFlagSet("", pflag.ContinueOnError)
	for _, d := range define {
		d(set)
	}
	var faults fault.List
	for _, name := range slices.Sorted(maps.Keys(r.Flags)) {
		for _, text := range r.Flags[name] {
			err := set.Set(name, text)
			var wrong *pflag.InvalidValueError
			if errors.As(err, &wrong) {
				err = wrong.Unwrap()
			}
			faults.Include(fault.Place{Input: "--" + name}, err)
		}
	}
	return faults.Err()
}

// keyAt names what stands at a place of a text: a key of the build file, or the
// column of a cell.
func (r *Request) keyAt(at fault.Place) string {
	switch at.Input {
	case buildFile:
		return build.KeyAt([]byte(r.Build), at)
	case readingsFile:
		return csvtable.ColumnAt(r.Readings, at)
	case marksFile:
		return csvtable.ColumnAt(r.Marks, at)
	}
	return ""
}
