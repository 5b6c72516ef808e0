package report

import (
	"fmt"
	"slices"
	"strconv"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
)

// blank says how large a blank the board needs, which on offer serve, and how
// the one worked with must lie.
func (b *bench) blank() {
	b.heading("The blank")
	u, need := b.Units, b.s.Layout.LeastBlank()
	text := fmt.Sprintf("Smallest blank: %s long and %s wide, with %s to saw away on every side.",
		u.LenText(need.Length.MM(), scaleDecimals), u.LenText(need.Width.MM(), scaleDecimals), u.LenText(b.s.Layout.Spec.SawAllowance.MM(), scaleDecimals))
	if b.s.LeastThicknessMM > 0 {
		text += fmt.Sprintf(" Planed for the slots, it must be at least %s thick.", u.LenText(b.s.LeastThicknessMM, scaleDecimals))
	}
	b.r.Text(text)
	b.blankTable()
	switch {
	case b.s.Blank >= 0:
		b.lie(b.s.Blanks[b.s.Blank])
	case len(b.s.Blanks) > 0:
		b.r.Text("None of the blanks on offer is large enough. All that follows holds for any blank that is.")
	}
}

func (b *bench) blankTable() {
	if len(b.s.Blanks) == 0 {
		return
	}
	u, fine := b.Units, b.caliper()
	columns := []show.Column{show.Words("blank"), show.Words("serves"), show.Figures(u.HeadLen("length")), show.Figures(u.HeadLen("length spare")),
		show.Figures(u.HeadLen("width")), show.Figures(u.HeadLen("width spare")), show.Figures(u.HeadLen("thick"))}
	known := b.s.Depths != nil && slices.ContainsFunc(b.s.Blanks, func(f build.BlankFit) bool { return f.Blank.Thickness.MM() > 0 })
	if known {
		columns = append(columns, show.Figures(fine.HeadLen("left under slots")), show.Figures(fine.HeadLen("left at edges")))
	}
	t := b.r.Table("blanks", "Blanks on offer", columns...)
	for _, f := range b.s.Blanks {
		row := []string{f.Blank.Name, servesWords(f), u.Len(f.Blank.Length.MM(), scaleDecimals), u.SignedLen(f.SpareLength.MM(), scaleDecimals),
			u.Len(f.Blank.Width.MM(), scaleDecimals), u.SignedLen(f.SpareWidth.MM(), scaleDecimals)}
		if thick := f.Blank.Thickness.MM(); thick > 0 {
			row = append(row, u.Len(thick, scaleDecimals))
			if known {
				row = append(row, fine.Len(f.LeftUnderMM, scaleDecimals), fine.Len(f.LeftAtEdgeMM, scaleDecimals))
			}
		} else {
			row = append(row, none)
		}
		t.Row(row...)
	}
	if known {
		t.Note("Left under slots, and at their ends after radiusing: of the thickness as offered. What you plane off comes off these too.")
	}
}

// servesWords says whether a blank serves, and if not why.
func servesWords(f build.BlankFit) string {
	switch {
	case f.SpareLength.MM() < 0 && f.SpareWidth.MM() < 0:
		return "too small"
	case f.SpareLength.MM() < 0:
		return "too short"
	case f.SpareWidth.MM() < 0:
		return "too narrow"
	case f.Thin != nil:
		return "too thin"
	}
	return "yes"
}

// lie says how a blank must lie.
func (b *bench) lie(f build.BlankFit) {
	u := b.Units
	b.r.Para("Work with %s. Its length, and so its grain, runs along the centreline. What is spare is shared equally: "+
		"draw the centreline %s from the bass edge of the blank, the nut end's base line %s from its nut end, "+
		"so that the nut line will cross the centreline %s from that end.", f.Blank.Name,
		u.LenText(f.CentreFromBassEdge.MM(), scaleDecimals), u.LenText(f.SpareLength.MM()/2, scaleDecimals),
		u.LenText(f.NutCrossFromEnd.MM(), scaleDecimals))
}

// depths says how deep to saw, and how the tang will sit in the cut.
func (b *bench) depths() {
	b.heading("Slot depth and kerf")
	saw, fine := b.s.Sawing, b.caliper()
	if b.s.Depths == nil {
		b.r.Text(`How deep to saw follows from the fret wire: write tang_depth = "1.5 mm" (yours) under [fret_wire].`)
		b.kerf()
		return
	}
	air := fmt.Sprintf("%s of tang and %s of air under it", fine.text(saw.TangDepth.MM()), fine.text(saw.Clearance.MM()))
	one := fine.text(b.s.Depths[0].Saw.MM())
	switch {
	case b.flat():
		b.r.Para("The board stays flat: saw every slot %s deep, %s.", one, air)
	case saw.RadiusFirst:
		b.r.Para("Radius the board first, then saw every slot %s deep along the curve: %s.", one, air)
		b.r.Para("Under the ends of the slots, where the curve is lowest, %s of board is then reckoned enough; in the middle, and under all of a slot sawn flat, it is %s (judgement). The thickness asked for above rests on that.",
			fine.text(fan.LeastUnderEnd.MM()), fine.text(fan.LeastUnderSlot.MM()))
	default:
		b.r.Para("Saw the flat board, then radius it (%s). In the middle a slot needs %s; at its ends the crown falls away, so it needs more. One straight cut to the depth under 'saw to' serves all along.",
			b.crownWords(), air)
		b.depthTable()
	}
	b.kerf()
}

// crownWords names the crown's radius.
func (b *bench) crownWords() string {
	nut, last := b.s.Layout.Spec.Radii()
	if nut == last {
		return b.Units.LenText(nut.MM(), 0)
	}
	return fmt.Sprintf("%s at the nut to %s at the last fret", b.Units.Len(nut.MM(), 0), b.Units.LenText(last.MM(), 0))
}

func (b *bench) flat() bool {
	nut, _ := b.s.Layout.Spec.Radii()
	return nut == 0
}

// thickness is that of the blank worked with, 0 where it is not known.
func (b *bench) thickness() float64 {
	if b.s.Blank < 0 {
		return 0
	}
	return b.s.Blanks[b.s.Blank].Blank.Thickness.MM()
}

func (b *bench) depthTable() {
	fine := b.caliper()
	thickness := b.thickness()
	columns := []show.Column{show.Figures("fret"), show.Figures(fine.HeadLen("radius")), show.Figures(fine.HeadLen("needed, middle")),
		show.Figures(fine.HeadLen("bass end")), show.Figures(fine.HeadLen("treble end")), show.Figures(fine.HeadLen("saw to"))}
	if thickness > 0 {
		columns = append(columns, show.Figures(fine.HeadLen("left under")))
	}
	t := b.r.Table("depths", "", columns...)
	for _, d := range b.s.Depths {
		row := []string{strconv.Itoa(d.Fret), fine.Len(d.Radius.MM(), 0), fine.len(d.Middle.MM()), fine.len(d.Bass.MM()),
			fine.len(d.Treble.MM()), fine.len(d.Saw.MM())}
		if thickness > 0 {
			row = append(row, fine.len(thickness-d.Saw.MM()))
		}
		t.Row(row...)
	}
	if thickness > 0 {
		t.Note("Left under: of %s thick, as %s is offered.", fine.text(thickness), b.s.Blanks[b.s.Blank].Blank.Name)
	}
}

// kerf says how the tang sits in the saw's cut.
func (b *bench) kerf() {
	s, fine := b.s.Sawing, b.caliper()
	if s.TangInCut() == fan.KerfUnknown {
		b.r.Text("With kerf, tang_width and barb_width under [fret_wire] the saw's cut is held against the tang here.")
		return
	}
	barbs := "not given"
	if s.BarbWidth.MM() > 0 {
		barbs = fine.text(s.BarbWidth.MM())
	}
	b.r.Para("Saw's cut %s, tang %s, over its barbs %s: %s. Try it on an offcut of the same wood before the first slot.",
		fine.text(s.Kerf.MM()), fine.text(s.TangWidth.MM()), barbs, s.TangInCut())
}

// wire prints the cut list of the fret wire.
func (b *bench) wire() {
	b.heading("Fret wire")
	u, w := b.Units, b.s.Wire
	f := b.Job.Build.FretWire
	b.r.Para("Cut each piece %s longer than its slot at both ends.", u.LenText(f.Overhang.MM(), scaleDecimals))
	t := b.r.Table("wire", "", show.Figures("fret"), show.Figures(u.HeadLen("slot")), show.Figures(u.HeadLen("cut to")))
	for _, c := range w.Cuts {
		t.Row(fretWords(c.Fret), u.Len(c.Length.MM()-2*f.Overhang.MM(), scaleDecimals), u.Len(c.Length.MM(), scaleDecimals))
	}
	t.Total("all", "", u.Len(w.Sum.MM(), scaleDecimals))
	b.r.Para("With %s %% to spare: %s to buy.", trim(f.Spare.Percent()), u.LenText(w.Total.MM(), 0))
}
