package answer

import (
	"bytes"
	"errors"
	"fmt"
	"slices"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/dxf"
	"scalepair/fan/draw/pdf"
	"scalepair/fan/draw/svg"
	"scalepair/fan/draw/tile"
)

// Drawn is one drawing as a file of its kind, and what it is in words.
type Drawn struct {
	Text []byte
	What string
}

// Draw draws the fan of the pair in use as files of the kinds wanted. A board too
// wide for the paper that is taken where none is named is the build's matter, and
// no wrong flag.
func (q *Question) Draw(o Drawing, kinds []DrawKind) ([]Drawn, error) {
	if err := q.marks(); err != nil {
		return nil, err
	}
	l, d, err := q.fretted()
	if err != nil {
		return nil, err
	}
	words := q.DrawingWords(l, d)
	words.LeftHanded, words.Hide, words.Date, words.Remarks, words.Overrun = o.words.LeftHanded, o.words.Hide, o.words.Date, o.words.Remarks, o.words.Overrun
	if words.Kerf == 0 && words.Overrun > 0 {
		return nil, fault.Fault{Place: q.place(), What: "the saw's cut is not known, and without it slots have no outline to run on", Remedy: `write kerf = "0.6 mm" (yours) under [fret_wire]`}
	}
	drawing := draw.Fan(l, words)
	o.sheets.Unit = q.Units.Length
	var out []Drawn
	for _, kind := range kinds {
		one, err := o.file(drawing, kind)
		var narrow fault.Fault
		if errors.As(err, &narrow) {
			if narrow.Place.Input = "--" + narrow.Place.Input; narrow.Place.Input == "--paper" && !o.set.Changed("paper") {
				narrow.Place = q.place()
			}
			err = narrow
		}
		if err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	if slices.Contains(words.Hide, draw.LayerSaddles) {
		return out, nil
	}
	for _, line := range q.SaddleNotes(words.Compensations) {
		q.Note("%s", line)
	}
	words.Hide = append(words.Hide, draw.LayerSaddles)
	if slices.Contains(kinds, PDF) && !o.onePage {
		q.noteShorter(drawing, draw.Fan(l, words), o.sheets)
	}
	return out, nil
}

// noteShorter says how many sheets a drawing without its saddles saves.
func (q *Question) noteShorter(whole, short draw.Drawing, o tile.Options) {
	long, err := tile.Lay(whole, o)
	less, err2 := tile.Lay(short, o)
	if err == nil && err2 == nil && len(less.Sheets) < len(long.Sheets) {
		q.Note("without the saddles (--hide saddles) it takes %d sheets in place of %d", len(less.Sheets), len(long.Sheets))
	}
}

// file writes a drawing as a file.
func (o *Drawing) file(d draw.Drawing, kind DrawKind) (Drawn, error) {
	var b bytes.Buffer
	if kind == DXF {
		err := dxf.Write(&b, d)
		return Drawn{b.Bytes(), "a drawing in mm"}, err
	}
	lay := tile.Lay
	if o.onePage || kind == SVG {
		lay = tile.One
	}
	plan, err := lay(d, o.sheets)
	if err != nil {
		return Drawn{}, err
	}
	if kind == SVG {
		err = svg.Write(&b, plan.Sheets[0])
		return Drawn{b.Bytes(), "one sheet in true size"}, err
	}
	err = pdf.Write(&b, d.Title, plan.Sheets)
	return Drawn{b.Bytes(), o.paper(plan)}, err
}

// paper says how many sheets of which paper a PDF has.
func (o *Drawing) paper(plan tile.Plan) string {
	u, first := o.sheets.Unit, plan.Sheets[0]
	length := func(mm float64) string { return u.Format(unit.MM(mm), 0) }
	var what string
	switch n := len(plan.Sheets); {
	case o.onePage:
		what = fmt.Sprintf("one page of %s x %s %s", length(first.Width), length(first.Height), u.Symbol())
	case o.sheets.Paper.IsRoll():
		long := first.Width
		if long == o.sheets.Paper.Width.MM() {
			long = first.Height
		}
		what = length(long) + " " + u.Symbol() + " of a roll"
	case n == 1:
		what = "1 sheet of " + o.sheets.Paper.Name
	default:
		what = fmt.Sprintf("%d sheets of %s", n, o.sheets.Paper.Name)
	}
	if plan.NoKey {
		what += ", without the key, for which none has room; --one-page has it"
	}
	return what
}
