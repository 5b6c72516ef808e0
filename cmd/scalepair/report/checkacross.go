package report

import (
	"fmt"
	"math"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan/mark"
)

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
		end := mark.Treble
		if d.Kind == mark.FromTrebleNut {
			end = mark.Bass
		}
		t.Row(mark.DiagonalName(end, d.Fret), u.Len(d.PlanMM, 2), u.Len(d.MM, 2), u.Len(d.ExpectedMM, 2),
			u.Len(math.Max(d.OffU, 0.01), 2), u.SignedLen(d.MM-d.ExpectedMM, 2), none)
	}
	verdict := a.Verdict.String()
	if a.Verdict != mark.NotMeasured && !a.Sure {
		verdict += ", not sure"
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
	ruler, calipers := k.Job.StepsFrom()
	k.r.Para("Held against the pair %s, neutral %s, %d frets. Steps of the tools, where a row states none: ruler %s, calipers %s.",
		k.Pair(l.Spec.Bass, l.Spec.Treble), squareWords(l.Spec.Neutral), l.Spec.Frets,
		toolWords(k.Units, o.Ruler.StepMM, ruler, "ruler_resolution"), toolWords(k.Units, o.Caliper.StepMM, calipers, "caliper_resolution"))
	if k.c.Report.Pass {
		k.r.Text("Saw in the same session and the same air: wood and marks move with the weather.")
	}
}

// toolWords names a tool's step and who says so.
func toolWords(u show.Units, mm float64, from, key string) string {
	if from == "" {
		return fmt.Sprintf("%s (assumed; %s under [measuring] or [marking] says what yours tells apart)", stepText(u, mm), key)
	}
	return fmt.Sprintf("%s (%s under %s)", stepText(u, mm), key, from)
}
