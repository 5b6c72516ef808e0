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
	unsure := k.unsure(mark.Within)
	switch {
	case r.Pass:
		surely := ""
		if unsure > 0 {
			surely = fmt.Sprintf(", %d of them not surely", unsure)
		}
		k.r.Para("IN TOLERANCE: %s stand within %s%s.", k.marksWords(measured), k.tolerance(), surely)
	case k.onlyUnsure():
		k.r.Para("NOT SURE, MEASURE AGAIN: %s. Measure again, finely and both ways, before the saw touches wood; until then redraw nothing.", listed(k.unsureReasons()))
	default:
		k.r.Para("NOT IN TOLERANCE: %s. Put this right before the saw touches wood, and measure again.", listed(k.reasons()))
	}
	if unsure += k.unsure(mark.Outside); unsure > 0 {
		k.r.Para("Not sure: at %s the best position lies nearer to the tolerance than twice its own ±, so finer readings could still turn the verdict. To be certain of such a mark, measure it again.", plural(unsure, "mark"))
	}
	if r.Unmeasured > 0 {
		k.r.Para("%s measured, and nothing is said of %s.", plural(r.Unmeasured, "mark")+wasNot(r.Unmeasured), map[bool]string{true: "it", false: "them"}[r.Unmeasured == 1])
	}
}

// onlyUnsure says that a board does not pass for nothing but what lies outside
// without being sure to: nothing is known to be wrong, nothing to be right.
func (k *checker) onlyUnsure() bool {
	r := k.c.Report
	across := r.Across != nil && r.Across.Verdict == mark.Outside
	return r.Undecided == 0 && r.Outside == k.unsure(mark.Outside) && !(across && r.Across.Sure) &&
		(r.Outside > 0 || across) && !slices.ContainsFunc(r.Slips, func(s mark.Slip) bool { return s.Matters })
}

// unsureReasons say what may be outside.
func (k *checker) unsureReasons() []string {
	var out []string
	if n := k.c.Report.Outside; n > 0 {
		out = append(out, fmt.Sprintf("%s may be off by more than %s (%s)", plural(n, "mark"), k.tolerance(), k.outside(false)))
	}
	if a := k.c.Report.Across; a != nil && a.Verdict == mark.Outside {
		out = append(out, "the treble nut may be off its place beside the bass nut")
	}
	return out
}

// unsure counts the marks of a verdict that the readings do not make sure, but
// for those that a slip leaves in doubt.
func (k *checker) unsure(v mark.Verdict) int {
	n := 0
	for _, l := range k.c.Report.Lines {
		for _, m := range l.Marks {
			if m.Verdict == v && !m.Sure && !m.Disputed {
				n++
			}
		}
	}
	return n
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
		out = append(out, fmt.Sprintf("%s off by more than %s (%s)", plural(r.Outside, "mark"), k.tolerance(), k.outside(false)))
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

// outside names the marks outside the tolerance, with how far they are off
// where that is wanted.
func (k *checker) outside(sizes bool) string {
	var words []string
	for _, l := range k.c.Report.Lines {
		for _, m := range l.Marks {
			if m.Verdict != mark.Outside {
				continue
			}
			word := fmt.Sprintf("%v %d", l.Line, m.Fret)
			if sizes {
				word += " by " + k.fine().SignedLen(m.ErrorMM, 2) + " " + k.Units.Length.Symbol()
			}
			words = append(words, word)
		}
	}
	if more := len(words) - mostNamed; more > 0 {
		return strings.Join(words[:mostNamed], ", ") + fmt.Sprintf(" and %d more", more)
	}
	return listed(words)
}

// mostNamed bounds the marks named in one sentence; the tables name all.
const mostNamed = 6

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

// line prints the marks of one line.
func (k *checker) line(l mark.LineResult) {
	name := l.Line.String()
	if !slices.ContainsFunc(l.Marks, func(m mark.MarkResult) bool { return m.Readings > 0 }) {
		k.r.Para("%s line: nothing was measured.", capital(name))
		return
	}
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
		return m.Verdict.String() + ", not sure"
	}
	return m.Verdict.String()
}

func (k *checker) lineNotes(t *show.Table, l mark.LineResult) {
	if l.Line == mark.Bass {
		t.Note("Found: both passes together, from the nut, ± one standard uncertainty. Off is positive where the mark stands too near the bridge, and its note is then sharp. 'Not sure': nearer to the tolerance than twice the uncertainty. 'In doubt': a slip named above may concern this mark.")
	}
	if slices.ContainsFunc(l.Marks, func(m mark.MarkResult) bool { return m.Verdict == mark.Undecided }) {
		t.Note("Undecided: no reading joins the mark to the nut. It is reckoned as if the fret named stood right; measure that one from the nut.")
	}
	for _, row := range l.LeftOut {
		r := k.c.Readings[row]
		t.Note("Left out as a wrong reading: %s, line %d.", r.Name(), r.Place.Line)
	}
	if l.HandMM > 0 || l.ScatterMM > 0 {
		t.Note("By these readings your hand sets the tool on a mark to about %s, and the marks scatter by about %s.", k.mm(math.Max(l.HandMM, 0.01)), k.mm(math.Max(l.ScatterMM, 0.01)))
	}
}
