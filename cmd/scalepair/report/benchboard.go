package report

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// edges give the board's outline on the blank: its edges by where they cross the
// base lines, its ends from nut line and last slot.
func (b *Bench) edges() Step {
	spec, f, need, corners := b.l.Spec, b.l.Frame, b.l.LeastBlank(), b.l.Board().Corners
	last := b.l.Frets[spec.Frets]
	var rows []measure
	add := func(edge string, margin unit.Length) {
		rows = append(rows,
			b.of("", f.HalfSpread(need.MinX)+margin, "%s, out from the centreline on the nut end's base line", edge),
			b.of("", f.HalfSpread(need.MaxX)+margin, "%s, out from the centreline on the body end's base line", edge))
	}
	bass, treble := spec.Margins()
	if bass == treble {
		add("either edge", bass)
	} else {
		add("bass edge", bass)
		add("treble edge", treble)
	}
	if spec.NutShelf > 0 {
		rows = append(rows, b.of("", spec.NutShelf, "nut end behind the nut line, square to it"))
	}
	return Step{Title: "Board edges and ends",
		Do: []string{"On both base lines mark the board's edges, outside the string lines, and join them. Carry the nut line on to both edges. " +
			b.endWords() + " Leave the blank square until the slots are sawn; then saw it to this outline."},
		Tables: tables{b.measures("edges", append(rows,
			b.of("", last.Slot.Bass.Distance(corners[1]), "along the bass edge from the last slot to the body end"),
			b.of("", last.Slot.Treble.Distance(corners[2]), "along the treble edge from the last slot to the body end"),
			b.of("", 2*f.HalfSpread(0)+bass+treble, "check: the board's width, square across, where the nut line crosses the centreline"),
			b.of("", 2*f.HalfSpread(last.Line.Cross)+bass+treble, "check: the same where the last fret crosses it"))...)}}
}

// endWords say how nut end and body end run.
func (b *Bench) endWords() string {
	nut := "The nut line is the board's end."
	switch {
	case b.l.Spec.ZeroFret:
		nut = "The zero fret stands on the nut line. The board goes on behind it, its nut end parallel to the nut line; " +
			"the nut stands there, clear of the fret, and only spaces the strings."
	case b.l.Spec.NutShelf > 0:
		nut = "The nut end runs parallel to the nut line, behind it by the nut shelf."
	}
	if b.l.Spec.BodyEnd == fan.SquareEnd {
		return nut + " The body end stands square to the centreline."
	}
	return nut + " The body end runs parallel to the last fret."
}

// SawOf is what the depth and the width of the slots follow from; 0 where it is
// not given.
type SawOf struct {
	fan.FretWire
	HalfKerf   unit.Length `json:"half_kerf_mm"` // how far the fence stands from the slot's middle
	RadiusNut  unit.Length `json:"radius_at_nut_mm"`
	RadiusLast unit.Length `json:"radius_at_last_fret_mm"`
}

// WireOf is the fret wire: all pieces together, and what to buy.
type WireOf struct {
	Sum   unit.Length `json:"sum_mm"`
	ToBuy unit.Length `json:"to_buy_mm"`
}

// cut is one slot with all that is done to it.
type cut struct {
	fan.Fence
	slot  fan.Fret
	depth fan.SlotDepth
	wire  unit.Length
}

// slots lists every slot with its fence, its depth and its wire.
func (b *Bench) slots() Step {
	var rows []cut
	var square []int
	for i, f := range b.fences {
		row := cut{Fence: f, slot: b.l.Frets[f.Fret]}
		if b.depths != nil {
			row.depth = b.depths[i]
		}
		for _, w := range b.wire.Cuts {
			if w.Fret == f.Fret {
				row.wire = w.Length
			}
		}
		if row.slot.Line.TanSlant == 0 {
			square = append(square, f.Fret)
		}
		rows = append(rows, row)
	}
	half := b.saw.Kerf / 2
	fence := half > 0 && half >= 2*b.fineness.Length()*(1-1e-9) // to be seen between two rounded places (judgement)
	r, u, fine := b.fineness.Round, b.in.Units, b.in.fine()
	t := table.Of("slots", "", rows,
		table.Whole("fret", "fret", func(c cut) int { return c.Fret }),
		table.Angle("slant", "slant", func(c cut) unit.Angle { return c.Slant }),
		setColumn(b, "bass edge", "set_bass_edge", func(c cut) mark.Rounded { return r(c.BassAlongEdge) }),
		setColumn(b, "treble edge", "set_treble_edge", func(c cut) mark.Rounded { return r(c.TrebleAlongEdge) }),
		setColumn(b, "fence, bass edge", "set_fence_bass_edge", func(c cut) mark.Rounded { return r(c.FaceBassAlongEdge) }).Hidden(!fence),
		setColumn(b, "fence, treble edge", "set_fence_treble_edge", func(c cut) mark.Rounded { return r(c.FaceTrebleAlongEdge) }).Hidden(!fence),
		fineLength(fine, "saw to", "saw_to", func(c cut) unit.Length { return c.depth.Saw }).When(b.depths != nil),
		table.Length(u, "slot long", "slot_length", scaleDecimals, func(c cut) unit.Length { return c.slot.Slot.Length }),
		table.Length(u, "cut wire to", "wire_length", scaleDecimals, func(c cut) unit.Length { return c.wire }))
	do := "Join the two marks of every fret and carry the line to both edges; its ends are given along the edges from where the nut line meets them. " +
		"Clamp a straight fence across the board, its working face half a kerf nearer the nut than the slot's middle, and saw along it on the bridge side."
	if len(square) > 0 {
		do += fmt.Sprintf(" A mitre box fits a square slot only: %s.", fretWords(square))
	}
	if b.l.Spec.ZeroFret {
		do += " Fret 0 is the zero fret: its slot lies on the nut line itself, and its fence stands behind that line, so its places are below zero."
	}
	switch text := b.in.Units.Decimal().LenText(half, markDecimals); {
	case fence:
		t.Note(fmt.Sprintf("Half a kerf is %s, square to the slot. Slant: positive where the bass end is nearer the bridge.", text))
	case half > 0:
		t.Note(fmt.Sprintf("The fence's own places are left out: half a kerf, %s, would be lost at %s. Draw the slot's line, and set the fence off it by that much, square to the slot and towards the nut, with a strip of that thickness.", text, b.fineness.Resolution))
	default:
		t.Note("With the saw's cut given as kerf under [fret_wire], the fence's own places are printed too.")
	}
	return Step{Title: "Slots and fret wire", Do: []string{do, b.depthWords() + " " + b.kerfWords(),
		fmt.Sprintf("Cut each piece of wire %s longer than its slot at both ends; all pieces together take %s.", b.in.length(b.Saw.Overhang), u.LenText(b.Wire.Sum, 0))},
		Tables: tables{t}}
}

// fretWords name frets, all of them in one word.
func fretWords(list []int) string {
	if n := len(list); n > 2 && list[n-1]-list[0] == n-1 {
		return fmt.Sprintf("frets %d to %d", list[0], list[n-1])
	}
	return several("fret", list)
}

// depthWords say how deep to saw.
func (b *Bench) depthWords() string {
	fine, w := b.in.fine(), b.Saw
	if b.depths == nil {
		return `How deep to saw follows from the fret wire: write tang_depth = "1.5 mm" (yours) under [fret_wire].`
	}
	air := fmt.Sprintf("%s of tang and %s of air under it", fine.text(w.TangDepth), fine.text(w.Clearance))
	switch one := fine.text(b.depths[0].Saw); {
	case w.RadiusNut == 0:
		return fmt.Sprintf("The board stays flat: saw every slot %s deep, %s.", one, air)
	case b.RadiusFirst:
		return fmt.Sprintf("Radius the board first, then saw every slot %s deep along the curve: %s. Under the ends of the slots, where the curve is lowest, %s of board is enough; in the middle it takes %s (judgement), and the thickness asked for rests on that.",
			one, air, fine.text(fan.LeastUnderEnd), fine.text(fan.LeastUnderSlot))
	}
	radius := b.in.Units.LenText(w.RadiusNut, 0)
	if w.RadiusNut != w.RadiusLast {
		radius = fmt.Sprintf("%s at the nut to %s at the last fret", b.in.Units.Len(w.RadiusNut, 0), b.in.Units.LenText(w.RadiusLast, 0))
	}
	return fmt.Sprintf("Saw the flat board, then radius it (%s): 'saw to' is %s, and what the radius takes off at the ends of the slot.", radius, air)
}

// kerfWords say how the tang will sit in the saw's cut.
func (b *Bench) kerfWords() string {
	fine, w, barbs := b.in.fine(), b.Saw, "not given"
	words, known := map[fan.KerfFit]string{
		fan.KerfHolds:  "the tang fits the cut",
		fan.KerfWedges: "the cut is narrower than the tang: it wedges the slots open and bends the neck back",
		fan.KerfLoose:  "the cut is not narrower than the barbs: nothing holds the fret but glue",
	}[b.saw.TangInCut()]
	if !known {
		return "With kerf, tang_width and barb_width under [fret_wire] the saw's cut is compared with the tang here."
	}
	if w.BarbWidth > 0 {
		barbs = fine.text(w.BarbWidth)
	}
	return fmt.Sprintf("Saw's cut %s, tang %s, over its barbs %s: %s. Try it on an offcut of the same wood before the first slot.",
		fine.text(w.Kerf), fine.text(w.TangWidth), barbs, words)
}

// dotRow is a dot on the face, on the side, or one of each, by their fret.
type dotRow struct {
	fret       int
	other      bool // the second of a pair
	face, side bool
	along, out mark.Rounded // of the face
	edge       mark.Rounded // of the side
}

func (b *Bench) dots() Step {
	var rows []dotRow
	of, r := b.in.Run.Build.Dots, b.fineness.Round
	for _, d := range b.l.FaceDots(of) {
		rows = append(rows, dotRow{fret: d.Fret, face: true, along: r(d.At.X), out: r(d.At.Y)})
	}
	for _, d := range b.l.SideDots(of) {
		i := slices.IndexFunc(rows, func(o dotRow) bool { return o.fret == d.Fret && !o.side })
		if i < 0 {
			i, rows = len(rows), append(rows, dotRow{fret: d.Fret})
		}
		rows[i].side, rows[i].edge = true, r(d.At.Distance(b.l.Frets[0].Slot.Bass))
	}
	slices.SortStableFunc(rows, func(a, b dotRow) int { return a.fret - b.fret })
	for i := range rows {
		rows[i].other = i > 0 && rows[i].fret == rows[i-1].fret
	}
	face, side := func(d dotRow) bool { return d.face }, func(d dotRow) bool { return d.side }
	out := func(d dotRow) string { return b.fineness.Format(max(d.out.Parts, -d.out.Parts)) }
	anyFace, anySide := slices.ContainsFunc(rows, face), slices.ContainsFunc(rows, side)
	t := table.Of("dots", "", rows,
		table.Whole("fret", "fret", func(d dotRow) int { return d.fret }).As(func(d dotRow) string {
			return map[bool]string{true: "other "}[d.other] + fmt.Sprint(d.fret)
		}),
		setColumn(b, "face, from the nut line", "set_face_from_nut_line", func(d dotRow) mark.Rounded { return d.along }).Known(face).When(anyFace),
		setColumn(b, "out from the centreline", "set_face_out_to_bass_side", func(d dotRow) mark.Rounded { return d.out }).As(out).Known(face).When(anyFace),
		table.Words("side", "", func(d dotRow) string { return sideOf(d.out.Set, out(d)) }).Known(face).When(anyFace),
		setColumn(b, "bass edge, from the nut line", "set_side_from_nut_line", func(d dotRow) mark.Rounded { return d.edge }).Known(side).When(anySide))
	var bore []string
	if anyFace {
		bore = append(bore, b.in.fine().text(of.FaceDiameter)+" for the dots on the face")
	}
	if anySide {
		bore = append(bore, b.in.fine().text(of.SideDiameter)+" for those in the edge")
	}
	return Step{Title: "Dots", Tables: tables{t}, Do: []string{"Dots lie midway between two fret lines, before their fret: on the face along the centreline from where the nut line crosses it, " +
		"in the bass edge along the edge from the nut line. Bore " + listed(bore) + "."}}
}

// sideOf names the side of the centreline on which y lies; out is how y prints
// without its sign, and what prints as zero lies on it.
func sideOf(y unit.Length, out string) string {
	switch {
	case strings.Trim(out, "0.") == "":
		return "on it"
	case y > 0:
		return "bass"
	}
	return "treble"
}
