package engine

import (
	"encoding/json"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"scalepair/cmd/scalepair/answer"
	"scalepair/cmd/scalepair/build"
	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/unit"
	"scalepair/fan/mark"
	"scalepair/gauges/reading"
	"scalepair/tuning"
)

// Texts of a build.
type texts struct {
	Build    string `json:"build"`
	Readings string `json:"readings"`
}

func demo(*Request) (any, error) {
	b, err := data.Demo(buildFile)
	if err != nil {
		return nil, err
	}
	r, err := data.Demo(readingsFile)
	return texts{string(b), string(r)}, err
}

func start(r *Request) (any, error) {
	var s build.Start
	if err := r.flags(func(f *pflag.FlagSet) { answer.StartFlags(f, &s) }); err != nil {
		return nil, err
	}
	b, readings, err := answer.Start(s)
	return texts{string(b), string(readings)}, err
}

// save puts a pick of the search, or the pair and the set in use, into the build
// file.
func save(r *Request) (any, error) {
	var pick string
	q, err := r.question(func(f *pflag.FlagSet) { f.StringVar(&pick, "pick", "", "") })
	if err != nil {
		return nil, err
	}
	text, err := q.KeepPick(pick)
	return map[string]string{"build": string(text)}, err
}

// form is the empty form for the marks.
func form(r *Request) (any, error) {
	q, err := r.question()
	if err != nil {
		return nil, err
	}
	text, err := q.Form()
	return map[string]string{"marks": string(text)}, err
}

// Edit is one change of a text: of a table a cell, or with Remove a row, or with Add
// a new row; of a build file the value of a key, or with Remove a key or a section.
type Edit struct {
	Line   int             `json:"line"`
	Column string          `json:"column"`
	Key    string          `json:"key"`
	Text   string          `json:"text"`
	List   []string        `json:"list"`
	Remove bool            `json:"remove"`
	Add    json.RawMessage `json:"add"`
}

// sheet is a table as a page shows it.
type sheet struct {
	Columns []string            `json:"columns"`
	Known   []string            `json:"known_columns"` // all that it may have; those that it has not, in the build's unit
	Rows    []csvtable.SheetRow `json:"rows"`
	Added   int                 `json:"added"`  // rows more than there were
	Pasted  []string            `json:"pasted"` // the headings that pasted cells went to
	Words   map[string][]string `json:"words"`  // to offer for the cells of a column
}

// edited makes the changes asked for in a table.
func (r *Request) edited(text string, columns []csvtable.Column) (string, sheet, error) {
	s := csvtable.OpenSheet(text)
	before := len(s.Rows())
	for _, e := range r.Edits {
		cells := map[string]string{}
		switch {
		case e.Add != nil:
			if err := json.Unmarshal(e.Add, &cells); err != nil {
				return text, sheet{}, err
			}
			s.Add(cells)
		case e.Remove:
			s.Remove(e.Line)
		default:
			if err := s.Set(e.Line, e.Column, e.Text); err != nil {
				return text, sheet{}, err
			}
		}
	}
	var pasted []string
	if r.Paste != "" {
		var err error
		if pasted, err = s.Paste(r.Paste, columns); err != nil {
			return text, sheet{}, err
		}
	}
	rows := s.Rows()
	return s.Text(), sheet{s.Names(), s.Headings(columns, r.lengthUnit()), rows, len(rows) - before, pasted, offered(columns, rows)}, nil
}

// offered are the words of the columns that have any, and those that the rows have there.
func offered(columns []csvtable.Column, rows []csvtable.SheetRow) map[string][]string {
	out := map[string][]string{}
	for _, c := range columns {
		words := slices.Clone(c.Words)
		for _, row := range rows {
			if cell := row.Cells[c.Name]; words != nil && cell != "" && !slices.Contains(words, cell) {
				words = append(words, cell)
			}
		}
		out[c.Name] = words
	}
	return out
}

// lengthUnit is that of the build where it can be read, as headings have it.
func (r *Request) lengthUnit() string {
	if b, err := build.Read([]byte(r.Build), buildFile, nil); err == nil && b.LengthUnit != unit.Millimetres {
		return "in"
	}
	return "mm"
}

// readings are the readings as a page shows them, with the changes asked for. What
// is wrong with them comes as faults, beside the result.
func readings(r *Request) (any, error) {
	text, cells, err := r.edited(r.Readings, reading.Columns())
	if err != nil {
		return nil, err
	}
	r.Readings = text
	r.despite = struct {
		Readings string `json:"readings"`
		sheet
	}{text, cells}
	if strings.TrimSpace(text) != "" {
		_, err = reading.Read(strings.NewReader(text), readingsFile, r.pitch)
	}
	return r.despite, err
}

// marks are the measured marks in the same way.
func marks(r *Request) (any, error) {
	text, cells, err := r.edited(r.Marks, mark.Columns())
	if err != nil {
		return nil, err
	}
	r.Marks = text
	r.despite = struct {
		Marks string `json:"marks"`
		sheet
	}{text, cells}
	if strings.TrimSpace(text) != "" {
		_, err = mark.ReadReadings(strings.NewReader(text), marksFile)
	}
	return r.despite, err
}

// pitch reads the note of a hung string under the pitch standard of the build, where
// that can be read.
func (r *Request) pitch(text string) (unit.Frequency, error) {
	var standard unit.Frequency = tuning.ConcertA
	if b, err := build.Read([]byte(r.Build), buildFile, nil); err == nil {
		standard = b.Strings.PitchStandard
	}
	n, err := tuning.ParseNote(text)
	return n.Pitch(standard), err
}

// keys are all keys of the build file, for the forms of a page.
func keys(r *Request) (any, error) {
	if err := r.orDemo(); err != nil {
		return nil, err
	}
	sections, err := build.Keys([]byte(r.Build))
	return struct {
		Sections []build.KeySection `json:"sections"`
	}{sections}, err
}

// set changes the build file. Where it does not read afterwards the text comes
// beside the faults.
func set(r *Request) (any, error) {
	if err := r.orDemo(); err != nil {
		return nil, err
	}
	var edits []build.Edit
	for _, e := range r.Edits {
		edits = append(edits, build.Edit{Key: e.Key, Text: e.Text, List: e.List, Remove: e.Remove})
	}
	text, err := build.Change([]byte(r.Build), edits...)
	if err != nil {
		return nil, err
	}
	r.Build = string(text)
	r.despite = map[string]string{"build": r.Build}
	if _, err := build.Read(text, buildFile, nil); err != nil {
		return nil, err
	}
	return r.despite, nil
}
