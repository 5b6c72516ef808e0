package report

import (
	"scalepair/fan"
)

// spanWords says where the spans hold, and that listed steps are stretched to
// board widths, as sentences; "" where neither needs saying.
func (in *Input) spanWords(l *fan.Layout) string {
	text := ""
	if !l.Parallel {
		text = "A span is taken where the nut line or the saddle line crosses the centreline, and these lines are slanted: " +
			"the strings' own ends lie before and behind that place, so the steps need not add up to the span to the last digit."
	}
	n := in.Job.Build.Neck
	if n.NutWidth > 0 && (l.Spec.NutSpacing.Rule == fan.Listed || l.Spec.SaddleSpacing.Rule == fan.Listed) {
		if text != "" {
			text += " "
		}
		text += "The spans follow from the board's widths and margins, so of the steps you listed only the proportions count."
	}
	return text
}
