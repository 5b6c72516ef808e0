package report

import (
	"fmt"
	"math"
	"strconv"

	"scalepair/cmd/scalepair/show"
)

// saddles prints compensation, saddle points and how bridge and saddles are
// placed.
func (b *bench) saddles() {
	b.heading("Bridge and saddles")
	if b.s.Saddles == nil {
		b.r.Text(b.noSaddles())
		return
	}
	b.compensations()
	b.placing()
	b.drilling()
}

// noSaddles says what is missing for the saddle points.
func (b *bench) noSaddles() string {
	l, u := b.s.Layout, b.Units
	why := "no set of gauges is settled"
	if b.s.Detail != nil {
		why = "no string's core is known"
	}
	last := l.Frets[l.Spec.Frets].Line.Cross.MM()
	return fmt.Sprintf("How far each saddle must stand back cannot be told: %s. The theoretical saddle line crosses the centreline %s behind the last fret and stands %s; every saddle stands a few millimetres behind it.",
		why, u.LenText(l.Saddle.Cross.MM()-last, markDecimals), slantWords(l.Saddle.Slant.Rad()))
}

// unknownBack says that string i has no compensation.
func (b *bench) unknownBack(i int) bool { return b.s.Detail.Strings[i].CompensationErr != nil }

// unknownBacks lists the strings without a compensation.
func (b *bench) unknownBacks() []int {
	var out []int
	for i := range b.s.Detail.Strings {
		if b.unknownBack(i) {
			out = append(out, i+1)
		}
	}
	return out
}

// compensations prints how far each saddle stands behind its theoretical line.
func (b *bench) compensations() {
	u := fineUnits(b.Units)
	b.r.Text("Compensation is how far a saddle stands behind its theoretical place, along its string, to play in tune at fret 12. It lies between the least and the most: begin in the middle, and let the tuner decide.")
	t := b.r.Table("compensation", "", show.Figures("string"), show.Words("note"), show.Words("gauge"), show.Figures(u.HeadLen("least")),
		show.Figures(u.HeadLen("most")), show.Figures(u.HeadLen("begin at")), show.Figures(u.HeadLen("nut to saddle")), show.Figures(u.HeadLen("screw back")))
	for i, p := range b.s.Saddles.Points {
		row := []string{strconv.Itoa(p.String), b.note(0, p.String), b.gauge(b.s.Detail.Gauges[i])}
		if b.unknownBack(i) {
			row = append(row, none, none, none, none, none)
		} else {
			row = append(row, u.Len(p.Compensation.Lo.MM(), 1), u.Len(p.Compensation.Hi.MM(), 1), u.Len(p.Compensation.Middle().MM(), 1),
				u.Len(p.FromNut.MM(), 1), u.Len(p.Compensation.Middle().MM()-b.s.Saddles.Forward.MM(), 1))
		}
		t.Row(row...)
	}
	b.compensationNotes(t)
}

func (b *bench) compensationNotes(t *show.Table) {
	t.Note("Nut to saddle: along the string, at 'begin at'. Screw back: how far to turn a saddle back from the front of its travel, once the bridge is placed as below.")
	req, u := b.Plan.Request(), fineUnits(b.Units)
	h := req.Action
	text := fmt.Sprintf("Reckoned with strings %s (treble) to %s (bass) above fret 12", u.Len(h[0].MM(), 1), u.LenText(h[len(h)-1].MM(), 1))
	if req.ActionAssumed {
		text += ", which is assumed"
	}
	if req.TailsAssumed {
		text += ", and with assumed lengths beyond nut and saddle"
	}
	if len(req.Cases) > 1 {
		text += fmt.Sprintf(", in the tuning %s", req.Cases[0].Name)
	}
	t.Note("%s.", text)
	for i, s := range b.s.Detail.Strings {
		if b.unknownBack(i) {
			t.Note("String %d: %v.", s.Number, s.CompensationErr)
		}
	}
}

// placing says where the bridge goes and whether the saddles' travel is
// enough.
func (b *bench) placing() {
	s, u := b.s.Saddles, fineUnits(b.Units)
	items := []string{
		fmt.Sprintf("Placing: turn every saddle as far forward (towards the nut) as it goes. Place the bridge, or each string's own bridge, so that the saddles then stand before the theoretical saddle line by %s, along their strings: 'foremost' in the last table.",
			u.LenText(-s.Forward.MM(), 1)),
		b.travel(),
		"Starting: from there turn each saddle back by its 'screw back'. Tune to pitch, compare the note at fret 12 with the octave, and move the saddle: back when the fretted note is sharp, forward when it is flat.",
		"Drill only after both outer strings were tried at pitch with the bridge clamped, and both came into tune well inside their saddles' travel.",
	}
	b.r.Bullets(items...)
}

// travel holds the need against the saddles' travel, where that is stated.
func (b *bench) travel() string {
	s, u := b.s.Saddles, fineUnits(b.Units)
	need := fmt.Sprintf("Travel: the saddles must reach from there to %s behind the theoretical line, %s of travel", u.LenText(s.Rear.MM(), 1), u.LenText(s.Need.MM(), 1))
	has := b.Job.Build.Limits.SaddleTravel.MM()
	if unknown := b.unknownBacks(); unknown != nil {
		return need + fmt.Sprintf(". That is without string %s, whose core is not known and which may need more.", numbers(unknown))
	}
	switch {
	case has == 0:
		return need + ". Measure that yours have it (saddle_travel under [limits] lets this be checked)."
	case has < s.Need.MM():
		return need + fmt.Sprintf("; yours have %s, which is NOT enough. Take saddles with more travel, or place each string's saddle by itself.", u.LenText(has, 1))
	}
	return need + fmt.Sprintf("; yours have %s, which is enough.", u.LenText(has, 1))
}

// drilling gives the saddle points from places on the neck.
func (b *bench) drilling() {
	l, u := b.s.Layout, b.Units
	twelve := "fret 12"
	if l.Spec.Frets < 12 {
		twelve = "where fret 12 would be"
	}
	b.r.Para("Carry the centreline on to the body with a long straight edge. Along it, measure from where %s, the last fret or the body end crosses it; from there square out to the side named.", twelve)
	t := b.r.Table("saddle-points", "Saddle points", show.Figures("string"), show.Figures(u.HeadLen("out")), show.Words("side"),
		show.Figures(u.HeadLen("along, from fret 12")), show.Figures(u.HeadLen("from last fret")), show.Figures(u.HeadLen("from body end")),
		show.Figures(u.HeadLen("foremost, from last fret")))
	last := crossing(l, l.Spec.Frets)
	for i, p := range b.s.Saddles.Points {
		row := append([]string{strconv.Itoa(p.String)}, outCells(u.Len(math.Abs(p.Out.MM()), 1), p.Out.MM())...)
		if b.unknownBack(i) {
			row = append(row, none, none, none)
		} else {
			row = append(row, u.Len(p.Along12.MM(), 1), u.Len(p.AlongLast.MM(), 1), u.Len(p.AlongBodyEnd.MM(), 1))
		}
		t.Row(append(row, u.Len(p.Foremost.X.MM()-last, 1))...)
	}
	t.Note("Where the string leaves the saddle at 'begin at'; foremost is the same with the saddle fully forward.")
}
