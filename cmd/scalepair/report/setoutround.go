package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/build"
	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/fan/mark"
)

// How finely lengths of the bench are printed. What calipers set, or a slot
// needs, goes to 0.01 mm or 0.001 in, in decimals; marks and slots to the
// calipers' own step. What a rule lays off (blank, wire, bridge, pickups) goes
// in the builder's unit, in fractions where they want them. Differences that
// are judged and not set (errors, the width of a cent) go to 0.01 mm or
// 0.0001 in.

// fineUnits are units for small differences, which go in decimals where
// lengths go in fractions of an inch.
func fineUnits(u show.Units) show.Units {
	if u.Length == unit.InchFractions {
		u.Length = unit.DecimalInches
	}
	return u
}

// caliper prints lengths as calipers show them, given in millimetres.
type caliper struct{ show.Units }

func caliperUnits(u show.Units) caliper { return caliper{fineUnits(u)} }

func (b *bench) caliper() caliper { return caliperUnits(b.Units) }

// len prints the number alone: to 0.01 mm, or 0.001 in.
func (c caliper) len(mm float64) string {
	if c.Length == unit.Millimetres {
		return c.Len(mm, 2)
	}
	return c.Len(mm, 1)
}

// text adds the unit.
func (c caliper) text(mm float64) string { return c.len(mm) + " " + c.Length.Symbol() }

// shows tells whether a small distance survives the rounding of the two places
// that it lies between: it must be two steps at least (judgement).
func (b *bench) shows(mm float64) bool { return mm >= 2*b.s.List.Resolution.StepMM()*(1-1e-9) }

// rounding says how finely the list is printed, why, and what that does.
func (b *bench) rounding() {
	r := b.s.List.Resolution
	text := fmt.Sprintf("What is set out (steps 2 to %d) is rounded to %s, %s. That alone moves no note by more than %s cents%s",
		b.lastTask(), r, finenessWords(b.Units, b.s.Fineness), centsText(b.roundingCents(r)), b.coarse(r))
	if b.Units.Length == unit.InchFractions && r.Unit != unit.InchFractions {
		text += fmt.Sprintf(" Blank, wire, bridge and pickups are in fractions, for a rule; marks and slots are not, since 1/64 in could move a note by %s cents.",
			centsText(b.roundingCents(sixtyFourth)))
	}
	b.r.Text(text + " A step from mark to mark is the difference of the two rounded positions, so that the steps sum to the positions exactly.")
}

var sixtyFourth = mark.Resolution{Unit: unit.InchFractions, PerUnit: 64}

// roundingCents is the most that rounding a mark can do to its note.
func (b *bench) roundingCents(r mark.Resolution) float64 {
	last := b.s.Layout.Frets[b.s.Layout.Spec.Frets]
	return r.StepMM() / 2 / min(last.Bass.OneCent.MM(), last.Treble.OneCent.MM())
}

func centsText(cents float64) string { return show.Fixed(math.Max(cents, 0.01), 2) }

// coarseCents is from where a finer rounding is worth its figures (judgement).
const coarseCents = 0.5

// coarse ends the sentence on cents, with what would be finer where it matters.
func (b *bench) coarse(r mark.Resolution) string {
	cents := b.roundingCents(r)
	if cents <= coarseCents {
		return "."
	}
	text := " (--calipers 0.05mm, or 0.002in, is finer)."
	if t := b.Job.CheckOptions().Tolerance; t.Cents > 0 && cents > t.Cents {
		text += fmt.Sprintf(" That is more than the %s cents which scalepair check lets pass: such a board can fail with every mark where it was printed.", trim(t.Cents))
	}
	return text
}

// finenessWords says why marks are rounded as they are.
func finenessWords(u show.Units, f build.Fineness) string {
	theirs, took := f.Stated.MM(), f.StepMM()
	switch {
	case f.From == "":
		return "what common calipers show (caliper_resolution under [measuring] says what yours do)"
	case f.From == "--calipers":
		return "as --calipers asks"
	case math.Abs(took-theirs) < 1e-6:
		return "the step of your calipers (caliper_resolution under " + f.From + ")"
	case theirs < took*(1-1e-6) && f.Resolution == build.Finest(u.Length):
		return fmt.Sprintf("the finest that a drawn mark can be set to (judgement), though your calipers show %s (caliper_resolution under %s)", stepText(u, theirs), f.From)
	}
	return fmt.Sprintf("the round step nearest to the %s of your calipers (caliper_resolution under %s)", stepText(u, theirs), f.From)
}

// stepText names a tool's step as short as it goes: "0.5 mm", "1/32 in",
// "0.0005 in".
func stepText(u show.Units, mm float64) string {
	l := unit.MM(mm)
	if u.Length == unit.Millimetres {
		return trim(math.Round(l.MM()*1e4)/1e4) + " mm"
	}
	if parts := 64 * l.Inches(); parts >= 1-1e-9 && math.Abs(parts-math.Round(parts)) < 1e-9 {
		return unit.InchFractions.Format(l, 0) + " in"
	}
	return trim(math.Round(l.Inches()*1e5)/1e5) + " in"
}
