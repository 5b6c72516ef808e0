package report

import (
	"fmt"
	"math"
	"strings"

	"scalepair/fan/mark"
)

// slips name what went wrong, and what to do.
func (k *checker) slips() {
	k.r.Heading("What the passes say together")
	var items []string
	for _, s := range k.c.Report.Slips {
		items = append(items, k.slipWords(s))
	}
	if items == nil {
		items = append(items, "No reading and no mark stands out from the others."+k.shows())
		switch {
		case k.onlyUnsure():
			if k.c.Report.Outside > 0 {
				items = append(items, "These marks lie outside the tolerance, but not surely: "+k.outside(true)+". Measure them again; draw anew from the nut only what is then off.")
			}
		case k.c.Report.Outside > 0:
			items = append(items, "But these marks lie outside the tolerance: "+k.outside(true)+". Where the verdict is 'not sure', measure again first; then draw them anew from the nut.")
		}
	}
	k.r.Bullets(items...)
}

// slipWords tells one slip: what, how much, where entered, what to do, and
// what cannot be told from it.
func (k *checker) slipWords(s mark.Slip) string {
	text := fmt.Sprintf("%s (%s%s).", capital(s.Words()), k.sizeWords(s.Finding), entered(s.Finding))
	if len(s.Others) == 0 && s.Kind == mark.MarkOff {
		text += " All its readings agree."
	}
	if len(s.Others) == 0 && (s.Kind == mark.OffsetSlip || s.Kind == mark.DiagonalSlip) && len(k.c.Report.Slips) == 1 {
		text += " The marks are right."
	}
	if !s.Matters {
		return text + " This is smaller than the tolerance, and may stay."
	}
	if s.Kind == mark.OffsetSlip && k.minusMissing(s) {
		text += " Is its minus missing? It has one where the treble nut lies nearer the head than the bass nut, as here."
	}
	if len(s.Others) == 0 {
		return text + " Do: " + s.Remedy() + "."
	}
	others, remedy := make([]string, len(s.Others)), ""
	for i, o := range s.Others {
		others[i] = fmt.Sprintf("%s (%s%s)", o.Words(), k.sizeWords(o), entered(o))
	}
	for _, f := range append([]mark.Finding{s.Finding}, s.Others...) {
		if !f.IsReading() && remedy == "" {
			remedy = " If it stays so: " + f.Remedy() + "."
		}
	}
	return fmt.Sprintf("%s Or, which these readings cannot tell from it: %s. Measure again before you redo anything.%s", text, orListed(others), remedy)
}

// minusMissing tells whether a nut offset was entered without its sign.
func (k *checker) minusMissing(s mark.Slip) bool {
	plan := k.c.Layout.NutOffset.MM()
	return plan < 0 && math.Abs(s.MM+2*plan) < k.offsetTolerance()
}

// entered says where a reading stands in its file.
func entered(f mark.Finding) string {
	if f.Place.Line == 0 {
		return ""
	}
	return fmt.Sprintf(", line %d", f.Place.Line)
}

// orListed joins words: "a, b or c".
func orListed(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
	return strings.Join(words, "")
}

// sizeWords says how large a slip is, and which way.
func (k *checker) sizeWords(f mark.Finding) string {
	size := fmt.Sprintf("%s ± %s", k.fine().Len(math.Abs(f.MM), 2), k.mm(math.Max(f.U, 0.005)))
	long := f.MM > 0
	pick := func(yes, no string) string {
		if long {
			return size + " " + yes
		}
		return size + " " + no
	}
	switch f.Kind {
	case mark.RulerSlip, mark.OffsetSlip, mark.DiagonalSlip, mark.StepSlip, mark.RulerZeroOff, mark.RulerMoved, mark.CaliperZeroOff:
		return pick("too long", "too short")
	case mark.SpanOff:
		return pick("too far apart", "too close together")
	case mark.RulerScaleOff:
		return pick(fmt.Sprintf("too long at fret %d", f.Fret), fmt.Sprintf("too short at fret %d", f.Fret))
	case mark.Stretched:
		return pick(fmt.Sprintf("too far from the nut at fret %d", f.Fret), fmt.Sprintf("too near the nut at fret %d", f.Fret))
	}
	return pick("too near the bridge", "too near the head")
}

// shows says how small a slip of one mark these readings would have shown.
func (k *checker) shows() string {
	low, high, blind := math.Inf(1), 0.0, 0
	for _, l := range k.c.Report.Lines {
		for _, m := range l.Marks {
			if m.Readings > 0 && m.ShowsMM == 0 {
				blind++
			}
			if m.ShowsMM > 0 {
				low, high = min(low, m.ShowsMM), max(high, m.ShowsMM)
			}
		}
	}
	text := ""
	if high > 0 {
		best := ""
		if k.mm(low) != k.mm(high) {
			best = fmt.Sprintf(" (%s where the readings are best)", k.mm(low))
		}
		text += fmt.Sprintf(" A single mark that is off by more than %s%s would have shown in 95 of 100 cases.", k.mm(high), best)
	}
	if blind > 0 {
		text += fmt.Sprintf(" At %s a slip could not have shown.", plural(blind, "mark"))
	}
	return text
}
