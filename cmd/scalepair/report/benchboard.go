package report

import (
	"fmt"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// How finely lengths of the bench are printed. What calipers set, or a slot
// needs, goes to 0.01 mm or 0.001 in, in decimals; marks and slots to the
// calipers' own resolution. What a rule lays off (blank, wire, bridge, pickups)
// goes in the builder's unit, in fractions where they want them. Differences that
// are judged and not set (errors, the width of a cent) go to 0.01 mm or
// 0.0001 in.

// rounding says how finely the list is printed, why, and what that does.
func (b *Bench) rounding() string {
	r, u := b.fineness.Resolution, b.in.Units
	text := fmt.Sprintf("What is set out (steps 2 to %d) is rounded to %s, %s. That alone moves no note by more than %s cents%s",
		2+len(b.Steps), r, finenessWords(u, b.fineness), centsWords(b.Rounding), b.coarse(r))
	if u.Length == unit.InchFractions && r.Unit != unit.InchFractions {
		text += fmt.Sprintf(" The blank's size, wire, bridge and pickups are in fractions, for a rule; what is set out is not, since 1/64 in could move a note by %s cents.",
			centsWords(b.roundingCents(mark.Resolution{Unit: unit.InchFractions, PerUnit: 64})))
	}
	return text + " A step from mark to mark is the difference of the two rounded positions, so that the steps sum to the positions exactly."
}

// roundingCents is the most that rounding a mark can do to its note.
func (b *Bench) roundingCents(r mark.Resolution) unit.Cents {
	last := b.l.Frets[b.l.Spec.Frets]
	return unit.Cents(r.Length() / 2 / min(last.Bass.OneCent, last.Treble.OneCent))
}

func centsWords(c unit.Cents) string { return unit.Fixed(max(c.Value(), 0.01), 2) }

// coarseCents is from where a finer rounding is worth its figures (judgement).
const coarseCents = 0.5

// coarse ends the sentence on cents, with what would be finer where it matters.
func (b *Bench) coarse(r mark.Resolution) string {
	c := b.roundingCents(r)
	if c <= coarseCents {
		return "."
	}
	text := " (--calipers 0.05mm, or 0.002in, is finer)."
	if most := b.in.Run.CheckOptions().WithDefaults().ToleranceCents; most > 0 && c > most {
		text += fmt.Sprintf(" That is more than the %s cents which scalepair check lets pass: such a board can fail with every mark where it was printed.", trim(most.Value()))
	}
	return text
}

// finenessWords say why marks are rounded as they are.
func finenessWords(u table.Units, f build.Fineness) string {
	switch theirs, took := f.Stated, f.Length(); {
	case f.From == "":
		return "what common calipers show (caliper_resolution under [measuring] says what yours do)"
	case f.From == "--calipers":
		return "as --calipers asks"
	case size(took-theirs) < 1e-6*unit.Millimetre:
		return "the resolution of your calipers (caliper_resolution under " + f.From + ")"
	case theirs < took && f.Resolution == build.Finest(u.Length):
		return fmt.Sprintf("the finest that a drawn mark can be set to (judgement), though your calipers show %s (caliper_resolution under %s)", resolutionText(u, theirs), f.From)
	default:
		return fmt.Sprintf("the round one nearest to the %s of your calipers (caliper_resolution under %s)", resolutionText(u, theirs), f.From)
	}
}

// writeBlank says how large a blank the board needs, which on offer fit, and how
// the one worked with must lie.
func (b *Bench) writeBlank(doc *document.Document) {
	in := b.in
	text := fmt.Sprintf("Smallest blank: %s long and %s wide, with %s to saw away on every side.",
		in.length(b.Layout.BlankLength), in.length(b.Layout.BlankWidth), in.length(b.l.Spec.SawAllowance))
	if b.LeastThickness > 0 {
		text += fmt.Sprintf(" Planed for the slots, it must be at least %s thick.", in.length(b.LeastThickness))
	}
	doc.Para("%s", text)
	if len(b.fits) == 0 {
		return
	}
	doc.Table(b.Layout.Blanks)
	if b.blank < 0 {
		doc.Para("None of the blanks on offer is large enough. All that follows holds for any blank that is; blank = true under [limits] has advise take pairs only that come out of one on offer.")
		return
	}
	doc.Para("Work with %s. Its length, and so its grain, runs along the centreline. What is spare is shared equally: "+
		"draw the centreline %s from the bass edge of the blank, the nut end's base line %s from its nut end, "+
		"so that the nut line will cross the centreline %s from that end.", b.Blank.Name,
		b.set(b.Blank.Centreline), b.set(b.Blank.BaseLine), b.set(b.Blank.NutLine))
}

// set prints a length as the tool sets it, as the measures of the steps are.
func (b *Bench) set(l unit.Length) string {
	return b.fineness.Format(b.fineness.Round(l).Parts) + " " + b.fineness.Unit.Symbol()
}

// WorkedBlank is the blank on offer that is worked with, and how the fan lies in
// it.
type WorkedBlank struct {
	Name       string      `json:"name"`
	Centreline unit.Length `json:"centreline_from_bass_edge_mm"`
	BaseLine   unit.Length `json:"base_line_from_nut_end_mm"`
	NutLine    unit.Length `json:"nut_line_from_nut_end_mm"` // where it crosses the centreline
}

func (b *Bench) workedBlank() *WorkedBlank {
	if b.blank < 0 {
		return nil
	}
	f := b.fits[b.blank]
	return &WorkedBlank{f.Blank.Name, f.CentreFromBassEdge, f.SpareLength / 2, f.NutCrossFromEnd}
}

// SawOf is what the depth and the width of the slots follow from; 0 where it is
// not given.
type SawOf struct {
	TangDepth  unit.Length `json:"tang_depth_mm"`
	Clearance  unit.Length `json:"clearance_mm"`
	Kerf       unit.Length `json:"kerf_mm"`
	HalfKerf   unit.Length `json:"half_kerf_mm"` // how far the fence stands from the slot's middle
	TangWidth  unit.Length `json:"tang_width_mm"`
	BarbWidth  unit.Length `json:"barb_width_mm"`
	RadiusNut  unit.Length `json:"radius_at_nut_mm"`
	RadiusLast unit.Length `json:"radius_at_last_fret_mm"`
}

func (b *Bench) sawOf() SawOf {
	w := b.saw.FretWire
	nut, last := b.l.Spec.Radii()
	return SawOf{w.TangDepth, w.Clearance, w.Kerf, w.Kerf / 2, w.TangWidth, w.BarbWidth, nut, last}
}

// depthTable says how deep to saw every slot; nil while the tang is not known.
func (b *Bench) depthTable() *table.Table {
	if b.depths == nil {
		return nil
	}
	fine, thick := b.in.fine(), unit.Length(0)
	if b.blank >= 0 {
		thick = b.fits[b.blank].Blank.Thickness
	}
	t := table.Of("depths", "", b.depths,
		table.Whole("fret", "fret", func(d fan.SlotDepth) int { return d.Fret }),
		table.Length(fine.Units, "radius", "radius", 0, func(d fan.SlotDepth) unit.Length { return d.Radius }),
		fineLength(fine, "needed, middle", "needed_in_the_middle", func(d fan.SlotDepth) unit.Length { return d.Middle }),
		fineLength(fine, "bass end", "needed_at_bass_end", func(d fan.SlotDepth) unit.Length { return d.Bass }),
		fineLength(fine, "treble end", "needed_at_treble_end", func(d fan.SlotDepth) unit.Length { return d.Treble }),
		fineLength(fine, "saw to", "saw_to", func(d fan.SlotDepth) unit.Length { return d.Saw }),
		fineLength(fine, "left under", "left_under", func(d fan.SlotDepth) unit.Length { return thick - d.Saw }).When(thick > 0))
	if thick > 0 {
		t.Note(fmt.Sprintf("Left under: of %s thick, as %s is offered.", fine.text(thick), b.fits[b.blank].Blank.Name))
	}
	return t
}

// kerfWords say how the tang sits in the saw's cut.
var kerfWords = map[fan.KerfFit]string{
	fan.KerfUnknown: "not known: give the saw's cut and the tang's width",
	fan.KerfHolds:   "the tang fits the cut",
	fan.KerfWedges:  "the cut is narrower than the tang: it wedges the slots open and bends the neck back",
	fan.KerfLoose:   "the cut is not narrower than the barbs: nothing holds the fret but glue",
}

// writeDepths says how deep to saw, and how the tang will sit in the cut.
func (b *Bench) writeDepths(doc *document.Document) {
	fine, w := b.in.fine(), b.Saw
	nut, last := w.RadiusNut, w.RadiusLast
	switch {
	case b.depths == nil:
		doc.Para(`How deep to saw follows from the fret wire: write tang_depth = "1.5 mm" (yours) under [fret_wire].`)
	default:
		air := fmt.Sprintf("%s of tang and %s of air under it", fine.text(w.TangDepth), fine.text(w.Clearance))
		one := fine.text(b.depths[0].Saw)
		switch {
		case nut == 0:
			doc.Para("The board stays flat: saw every slot %s deep, %s.", one, air)
		case b.RadiusFirst:
			doc.Para("Radius the board first, then saw every slot %s deep along the curve: %s.", one, air)
			doc.Para("Under the ends of the slots, where the curve is lowest, %s of board is enough; in the middle, and under all of a slot sawn flat, it takes %s (judgement). The thickness asked for above rests on that.",
				fine.text(fan.LeastUnderEnd), fine.text(fan.LeastUnderSlot))
		default:
			radius := b.in.Units.LenText(nut, 0)
			if nut != last {
				radius = fmt.Sprintf("%s at the nut to %s at the last fret", b.in.Units.Len(nut, 0), b.in.Units.LenText(last, 0))
			}
			doc.Para("Saw the flat board, then radius it (%s). In the middle a slot needs %s; at its ends the board falls away, so it needs more. One straight cut to the depth under 'saw to' is deep enough all along.", radius, air)
			doc.Table(b.Depths)
		}
	}
	if b.saw.TangInCut() == fan.KerfUnknown {
		doc.Para("With kerf, tang_width and barb_width under [fret_wire] the saw's cut is compared with the tang here.")
		return
	}
	barbs := "not given"
	if w.BarbWidth > 0 {
		barbs = fine.text(w.BarbWidth)
	}
	doc.Para("Saw's cut %s, tang %s, over its barbs %s: %s. Try it on an offcut of the same wood before the first slot.",
		fine.text(w.Kerf), fine.text(w.TangWidth), barbs, b.Kerf)
}

// WireOf is the fret wire to cut and to buy.
type WireOf struct {
	Cuts  *table.Table `json:"cuts"`
	Sum   unit.Length  `json:"sum_mm"`
	ToBuy unit.Length  `json:"to_buy_mm"`
}

func (b *Bench) wireOf() WireOf {
	u := b.in.Units
	t := table.Of("wire", "", b.wire.Cuts,
		table.Whole("fret", "fret", func(c fan.Cut) int { return c.Fret }).As(func(c fan.Cut) string {
			if c.Fret == 0 {
				return "nut line"
			}
			return fmt.Sprint(c.Fret)
		}),
		table.Length(u, "slot", "slot", scaleDecimals, func(c fan.Cut) unit.Length { return c.Length - 2*b.saw.Overhang }),
		table.Length(u, "cut to", "length", scaleDecimals, func(c fan.Cut) unit.Length { return c.Length }),
	).Total(map[string]string{"fret": "all", "length": u.Len(b.wire.Sum, scaleDecimals)})
	return WireOf{t, b.wire.Sum, b.wire.Total}
}

func (b *Bench) writeWire(doc *document.Document) {
	doc.Para("Cut each piece %s longer than its slot at both ends.", b.in.length(b.saw.Overhang))
	doc.Table(b.Wire.Cuts)
	doc.Para("With %s %% to spare: %s to buy.", trim(b.saw.Spare.Percent()), b.in.Units.LenText(b.Wire.ToBuy, 0))
}
