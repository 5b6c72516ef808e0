package report

import (
	"scalepair/fan"
	"scalepair/fan/draw"
	"scalepair/tension/choice"
)

// DrawingWords gives what a drawing of a layout says: its title, the notes and
// gauges on the strings, the compensation of the saddles; and the dots and the saw of the build. d
// is nil while no set of gauges is settled; then the strings carry their notes
// alone. A string whose compensation is not known has none.
func (in *Input) DrawingWords(l *fan.Layout, d *choice.Detail) draw.Options {
	o := draw.Options{Title: in.title("Fan of"), Unit: in.Units.Length, Dots: &in.Run.Build.Dots, Kerf: in.Run.Build.FretWire.Kerf}
	for i := range l.Strings {
		words := draw.StringWords{Note: in.note(0, i+1)}
		if d != nil {
			words.Gauge = in.gauge(d.Gauges[i])
		}
		o.Strings = append(o.Strings, words)
	}
	if d != nil {
		o.Compensations = compensations(d)
	}
	return o
}

// compensations are those of all strings, over all tunings, nil where one is not
// known.
func compensations(d *choice.Detail) []*fan.Compensation {
	out := make([]*fan.Compensation, len(d.Strings))
	for i, s := range d.Strings {
		if s.CompensationErr == nil {
			out[i] = &s.Compensation
		}
	}
	return out
}

// SaddleNotes say which saddle points of a drawing are the theoretical ones, and
// which range the others show.
func (in *Input) SaddleNotes(compensations []*fan.Compensation) []string {
	var unknown []int
	for i, c := range compensations {
		if c == nil {
			unknown = append(unknown, i+1)
		}
	}
	var out lines
	out.sayIf(unknown != nil, "compensation not known: %s; a ring without a cross is the theoretical saddle point", several("string", unknown))
	out.sayIf(len(unknown) < len(compensations) && len(in.Tunings()) > 1, "the range drawn at a saddle is that over all tunings")
	return out
}
