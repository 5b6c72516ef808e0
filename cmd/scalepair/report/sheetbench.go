package report

import (
	"slices"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/sheet"
	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
	"scalepair/fan/draw"
)

// fan draws the fan in strips, with its slants.
func (c *composer) fan() {
	s := c.f.SetOut
	c.add(func(r *show.Report) {
		r.Heading("The fan")
		c.slants(r, s.Layout)
	})
	o := c.DrawingWords(s.Layout, s.Detail)
	o.Hide = []draw.LayerName{draw.LayerTitle, draw.LayerKey, draw.LayerBars}
	d, err := draw.Fan(s.Layout, o)
	if err == nil {
		c.last().Drawing, err = sheet.NewDrawing(d, "The face of the board, nut at the left, bass side below; not in true size, and no template: scalepair draw writes that. "+
			"Thin lines across: slots, carried on in grey to their numbers, with their end points ringed. Heavy outline: the board. Long dashes: the blank. Dashes and dots: centreline, and the line square to it. "+
			"Grey lines along: strings. Rings with a cross: dots. Crossed circles: saddle points, with the range of their compensation.")
	}
	if err != nil && c.err == nil {
		c.err = err
	}
}

// slants prints the slants in one row, and what else the fan asks of the
// player and of the nut.
func (c *composer) slants(r *show.Report, l *fan.Layout) {
	columns, row := []show.Column{show.Figures("nut")}, []string{show.Deg(l.Nut.Slant.Rad())}
	for _, s := range l.Slants() {
		columns, row = append(columns, show.Figures("fret "+strconv.Itoa(s.Fret))), append(row, show.Deg(s.Slant.Rad()))
	}
	t := r.Table("slants", "Slants in degrees, positive where the bass end is nearer the bridge", append(columns, show.Figures("saddle line"))...)
	t.Row(append(row, show.Deg(l.Saddle.Slant.Rad()))...)
	items := []string{"Reach from the nut to fret 1 on the bass line: " + c.Units.LenText(l.Frets[1].Bass.Step.MM(), markDecimals) + "."}
	if l.Parallel {
		items = append(items, "Equal lengths: the frets are square, and the neutral fret has no effect.")
	}
	r.Bullets(items...)
}

// roomFor are the lists beside which what was measured is written down.
var roomFor = []string{"bass-marks", "treble-marks", "checks"}

// bench adds the setting-out list, step by step as setout prints it, to be
// ticked. What is bought and the cautions have their own places.
func (c *composer) bench() {
	first := true
	for _, s := range sheet.Split(SetOut(c.Input, c.f.SetOut)) {
		if strings.HasSuffix(s.Title, ". Shopping list") || s.Title == "Cautions" {
			continue
		}
		if first {
			s.Part, first = "At the bench", false
			s.Title = "Setting out"
			s.Blocks = s.Blocks[1:] // pair and gauges stand at the head of the sheet
		}
		s.Tick = s.Title != limitsHeading
		for _, b := range s.Blocks {
			if t, ok := b.(*show.Table); ok && slices.Contains(roomFor, t.Name) {
				s.Room = "measured"
			}
		}
		c.out.Sections = append(c.out.Sections, s)
	}
}
