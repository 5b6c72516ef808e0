package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// Checked is one judgement of measured marks.
type Checked struct {
	Layout   *fan.Layout
	Readings []mark.Reading
	Options  mark.Options
	Report   mark.Report
	File     string // the measured marks
}

// checker writes the report of one judgement.
type checker struct {
	*Input
	c *Checked
	r *show.Report
}

// Check prints the verdict first, then what to do, then every mark.
func Check(in *Input, c *Checked) *show.Report {
	k := &checker{in, c, &show.Report{Title: in.title("Marks checked for")}}
	k.verdict()
	k.slips()
	for _, l := range c.Report.Lines {
		k.line(l)
	}
	k.across()
	k.against()
	return k.r
}

// verdict is the answer in one paragraph.
func (k *checker) verdict() {
	r := k.c.Report
	measured := 2*(len(k.c.Layout.Frets)-1) - r.Unmeasured
	if r.Pass {
		k.r.Para("IN TOLERANCE: %s stand within %s.", k.marksWords(measured), k.tolerance())
	} else {
		k.r.Para("NOT IN TOLERANCE: %s. Put this right before the saw touches wood, and measure again.", listed(k.reasons()))
	}
	if r.Unmeasured > 0 {
		k.r.Para("%s measured, and nothing is said of %s.", plural(r.Unmeasured, "mark")+wasNot(r.Unmeasured), map[bool]string{true: "it", false: "them"}[r.Unmeasured == 1])
	}
}

func (k *checker) marksWords(measured int) string {
	if k.c.Report.Unmeasured == 0 {
		return fmt.Sprintf("all %d marks", measured)
	}
	return fmt.Sprintf("the %d marks that were measured", measured)
}

func wasNot(n int) string {
	if n == 1 {
		return " was not"
	}
	return " were not"
}

// reasons say why a board does not pass.
func (k *checker) reasons() []string {
	var out []string
	r := k.c.Report
	if r.Outside > 0 {
		out = append(out, plural(r.Outside, "mark")+" off by more than "+k.tolerance())
	}
	if r.Undecided > 0 {
		out = append(out, plural(r.Undecided, "mark")+" that no reading joins to the nut")
	}
	if a := r.Across; a != nil && a.Verdict == mark.Outside {
		out = append(out, "the treble nut off its place beside the bass nut")
	}
	for _, s := range r.Slips {
		if s.Matters && (s.IsReading() || len(out) == 0) {
			words := "a slip that must be cleared up"
			if s.IsReading() {
				words = "a reading that must be taken again"
			}
			out = append(out, words)
			break
		}
	}
	return out
}

func (k *checker) tolerance() string {
	if t := k.c.Options.Tolerance; t.Cents > 0 {
		return trim(t.Cents) + " cents"
	}
	return k.mm(k.c.Options.Tolerance.MM)
}

// mm prints a small length with its unit, for calipers; in decimals where
// lengths go in fractions of an inch.
func (k *checker) mm(mm float64) string { return k.fine().LenText(mm, 2) }

func (k *checker) fine() show.Units { return fineUnits(k.Units) }

// slips name what went wrong, and what to do.
func (k *checker) slips() {
	k.r.Heading("What the passes say together")
	var items []string
	for _, s := range k.c.Report.Slips {
		items = append(items, k.slipWords(s))
	}
	if items == nil {
		items = append(items, "No reading and no mark stands out from the others."+k.shows())
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
	if !s.Matters {
		text += " This is smaller than the tolerance."
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
	case mark.RulerSlip, mark.OffsetSlip, mark.DiagonalSlip, mark.StepSlip, mark.RulerZeroOff, mark.CaliperZeroOff:
		return pick("too long", "too short")
	case mark.SpanOff:
		return pick("too far apart", "too close together")
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

// line prints the marks of one line.
func (k *checker) line(l mark.LineResult) {
	name := l.Line.String()
	u := k.fine()
	t := k.r.Table(name+"-marks", capital(name)+" line", show.Figures("fret"), show.Figures(u.HeadLen("laid out")), show.Figures(u.HeadLen("found")),
		show.Figures(u.HeadLen("±")), show.Figures(u.HeadLen("off")), show.Figures("off cents"), show.Words("verdict"))
	for _, m := range l.Marks {
		if m.Readings == 0 || m.Verdict == mark.NotMeasured {
			t.Row(strconv.Itoa(m.Fret), u.Len(m.PlanMM, 2), none, none, none, none, m.Verdict.String())
			continue
		}
		t.Row(strconv.Itoa(m.Fret), u.Len(m.PlanMM, 2), u.Len(m.PlanMM+m.ErrorMM, 2), u.Len(math.Max(m.U, 0.01), 2), u.SignedLen(m.ErrorMM, 2),
			show.SignedCents(m.ErrorCents), verdictWords(m))
	}
	k.lineNotes(t, l)
}

// verdictWords says how sure a verdict is.
func verdictWords(m mark.MarkResult) string {
	switch {
	case m.Verdict == mark.Undecided:
		return fmt.Sprintf("undecided, from %d", m.DatumFret)
	case m.Disputed:
		return m.Verdict.String() + ", in doubt"
	case !m.Sure:
		return m.Verdict.String() + ", barely"
	}
	return m.Verdict.String()
}

func (k *checker) lineNotes(t *show.Table, l mark.LineResult) {
	if l.Line == mark.Bass {
		t.Note("Found: both passes together, from the nut, ± one standard uncertainty. Off is positive where the mark stands too near the bridge, and its note is then sharp. 'Barely': nearer to the tolerance than twice the uncertainty. 'In doubt': a slip named above may concern this mark.")
	}
	if slices.ContainsFunc(l.Marks, func(m mark.MarkResult) bool { return m.Verdict == mark.Undecided }) {
		t.Note("Undecided: no reading joins the mark to the nut. It is reckoned as if the fret named stood right; measure that one from the nut.")
	}
	for _, row := range l.LeftOut {
		r := k.c.Readings[row]
		t.Note("Left out as a wrong reading: %s, line %d.", r.Name(), r.Place.Line)
	}
	if l.HandMM > 0 || l.ScatterMM > 0 {
		t.Note("By these readings your hand sets the tool on a mark to about %s, and the marks scatter by about %s.", k.mm(l.HandMM), k.mm(l.ScatterMM))
	}
}

// across prints how the two lines stand to one another.
func (k *checker) across() {
	a, u := k.c.Report.Across, k.fine()
	if a == nil {
		k.r.Text("Neither diagonals nor nut offset were measured. A slip in the treble nut shows on neither line alone: measure both diagonals.")
		return
	}
	t := k.r.Table("across", "Between the lines", show.Words("what"), show.Figures(u.HeadLen("laid out")), show.Figures(u.HeadLen("measured")),
		show.Figures(u.HeadLen("wanted")), show.Figures(u.HeadLen("±")), show.Figures(u.HeadLen("off")), show.Words("verdict"))
	for _, d := range a.Diagonals {
		name := d.Kind.String()
		if d.Fret != k.c.Layout.Spec.Frets {
			name += fmt.Sprintf(" to fret %d", d.Fret)
		}
		t.Row(name, u.Len(d.PlanMM, 2), u.Len(d.MM, 2), u.Len(d.ExpectedMM, 2),
			u.Len(math.Max(d.OffU, 0.01), 2), u.SignedLen(d.MM-d.ExpectedMM, 2), "")
	}
	verdict := a.Verdict.String()
	if a.Verdict != mark.NotMeasured && !a.Sure {
		verdict += ", barely"
	}
	if a.Verdict != mark.NotMeasured {
		t.Row("nut offset, by all of these", u.Len(a.PlanOffsetMM, 2), u.Len(a.OffsetMM, 2), u.Len(a.PlanOffsetMM, 2), u.Len(math.Max(a.U, 0.01), 2), u.SignedLen(a.ErrorMM, 2), verdict)
	}
	t.Note("Wanted: with the marks where they were found. Nut offset: along the treble line, from the square through the bass nut mark; off by up to %s will do.", k.mm(k.offsetTolerance()))
}

func (k *checker) offsetTolerance() float64 {
	if t := k.c.Options.OffsetToleranceMM; t > 0 {
		return t
	}
	return mark.DefaultOffsetToleranceMM
}

// against says what the board was held against, and the tools' steps.
func (k *checker) against() {
	o, l := k.c.Options, k.c.Layout
	k.r.Para("Held against the pair %s, neutral %s, %d frets. Steps of the tools, where a row states none: ruler %s, calipers %s ([marking] in the build file sets them).",
		k.pair(l.Spec.BassMM, l.Spec.TrebleMM), squareWords(l.Spec.Neutral), l.Spec.Frets, k.mm(o.Ruler.StepMM), k.mm(o.Caliper.StepMM))
	if k.c.Report.Pass {
		k.r.Text("Saw in the same session and the same air: wood and marks move with the weather.")
	}
}
