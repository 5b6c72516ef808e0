package fan

import (
	"fmt"
	"math"

	"scalepair/data/odd"
)

// Odd watches what a spec says beside its scale pair. Places name the build
// file's keys.
func (s Spec) Odd() odd.List {
	var out odd.List
	look := func(row int, key, about string, x float64) { out.Look(&watched[row], placeOf(key), about, x) }
	look(watchFrets, keyFrets, "", float64(s.Frets))
	s.oddSpread(&out)
	if s.MarginBassMM == s.MarginTrebleMM {
		look(watchMargin, keyEdgeMargin, "", s.MarginBassMM)
	} else {
		look(watchMargin, keyBassMargin, "on the bass side", s.MarginBassMM)
		look(watchMargin, keyTrebleMargin, "on the treble side", s.MarginTrebleMM)
	}
	look(watchNutShelf, keyNutShelf, "", s.NutShelfMM)
	look(watchOverhang, keyOverhang, "", s.BodyEndOverhangMM)
	look(watchAllowance, keySawAllowance, "", s.SawAllowanceMM)
	return out
}

// oddSpread watches how the strings lie side by side at the nut and at the
// other place that is given. Of listed steps the narrow ones may be courses.
func (s Spec) oddSpread(out *odd.List) {
	gaps := float64(s.Strings - 1)
	look := func(row int, key string, spanMM float64, spacing Spacing) {
		u := watched[row]
		if spacing.Rule == Listed {
			u.Low = leastCourseStepMM
		}
		out.Look(&u, placeOf(key), "", spanMM/gaps)
	}
	if w := s.Board; w != nil {
		margins := s.MarginBassMM + s.MarginTrebleMM
		look(watchNutStep, keyNutWidth, w.NutMM-margins, s.NutSpacing)
		out.Look(&watched[watchTaper], placeOf(keyOtherWidth), "", w.WidthMM/w.NutMM)
		return
	}
	look(watchNutStep, keyNutSpread, s.NutSpreadMM, s.NutSpacing)
	look(watchSaddleStep, keySaddleSpread, s.SaddleSpreadMM, s.saddleRule())
	out.Look(&watched[watchTaper], placeOf(keySaddleSpread), "", s.SaddleSpreadMM/s.NutSpreadMM)
}

// saddleRule is the rule in force at the saddles.
func (s Spec) saddleRule() Spacing {
	if s.SaddleSpacing.Rule == LikeNut {
		return s.NutSpacing
	}
	return s.SaddleSpacing
}

// Odd watches what follows from the scale pair: lengths, slants, and the room
// between the highest frets.
func (f Frame) Odd() odd.List {
	var out odd.List
	look := func(row int, key, about string, x float64) { out.Look(&watched[row], placeOf(key), about, x) }
	look(watchLength, keyBass, "of the bass string", f.bass)
	look(watchLength, keyTreble, "of the treble string", f.treble)
	look(watchDifference, keyBass, "", f.diff)
	last := float64(f.base.spec.Frets)
	look(watchFretSlant, keyBass, "of the nut", math.Atan(f.NutTan()))
	if slant := math.Atan(f.TanSlant(last)); !watched[watchFretSlant].Holds(slant) {
		look(watchFretSlant, keyBass, fmt.Sprintf("of fret %d", f.base.spec.Frets), slant)
	}
	look(watchSaddleSlant, keyBass, "", math.Atan(f.SaddleTan()))
	shortest := min(f.bass, f.treble)
	look(watchLastStep, keyFrets, "", shortest*(K(last)-K(last-1)))
	return out
}

// Odd watches fret wire, saw and crown; a 0 that stands for 'not known' is
// left alone.
func (s Sawing) Odd() odd.List {
	var out odd.List
	look := func(row int, key, about string, mm float64) {
		if mm != 0 {
			out.Look(&watched[row], placeOf(key), about, mm)
		}
	}
	if s.RadiusNutMM == s.RadiusLastMM {
		look(watchRadius, keyRadius, "", s.RadiusNutMM)
	} else {
		look(watchRadius, keyRadiusNut, "at the nut", s.RadiusNutMM)
		look(watchRadius, keyRadiusLast, "at the last fret", s.RadiusLastMM)
		look(watchCone, keyRadiusLast, "", s.RadiusLastMM/s.RadiusNutMM)
	}
	look(watchTang, keyTang, "", s.TangMM)
	look(watchClearance, keyClearance, "", s.ClearanceMM)
	look(watchKerf, keyKerf, "", s.KerfMM)
	look(watchTangWidth, keyTangWidth, "", s.TangWidthMM)
	look(watchBarbWidth, keyBarbWidth, "", s.BarbWidthMM)
	return out
}

// OddWire watches how much fret wire is bought: overhang at either edge, mm,
// and what is bought on top, as a share.
func OddWire(overhangMM, spare float64) odd.List {
	var out odd.List
	out.Look(&watched[watchWireOverhang], placeOf("fret_wire.overhang"), "", overhangMM)
	out.Look(&watched[watchSpare], placeOf("fret_wire.spare_percent"), "", spare)
	return out
}

// Odd watches a blank on offer. The places are the keys within its entry.
func (o Offer) Odd() odd.List {
	var out odd.List
	about := "of " + o.Name
	out.Look(&watched[watchBlankLength], placeOf("length"), about, o.LengthMM)
	out.Look(&watched[watchBlankWidth], placeOf("width"), about, o.WidthMM)
	if o.ThicknessMM != 0 {
		out.Look(&watched[watchThickness], placeOf("thickness"), about, o.ThicknessMM)
	}
	return out
}

// OddLine watches the slant that is given for a further line, such as a
// pickup's. It has no place.
func OddLine(name string, slantRad float64) odd.List {
	var out odd.List
	out.Look(&watched[watchLineSlant], placeOf(""), "of "+name, slantRad)
	return out
}

// OddDepths watches the depth of the slots; the deepest speaks for all.
func OddDepths(list []SlotDepth) odd.List {
	var out odd.List
	deepest := SlotDepth{}
	for _, d := range list {
		if d.SawMM > deepest.SawMM {
			deepest = d
		}
	}
	if u := &watched[watchDepth]; len(list) > 0 && !u.Holds(deepest.SawMM) {
		out.Look(u, placeOf(keyTang), fmt.Sprintf("at fret %d", deepest.Fret), deepest.SawMM)
	}
	return out
}
