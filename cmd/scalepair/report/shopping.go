package report

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/gauges"
)

// Single is one gauge of the shopping list.
type Single struct {
	Gauge   int   // index into the stock
	Strings []int // the strings it serves, string 1 first
	// LeastWindingMM is the wound part that the longest of them needs: own
	// length, saddle tail and 10 mm; 0 on a plain string.
	LeastWindingMM float64
}

// windingRoomMM is what the wound part must reach beyond the nut (DESIGN's
// judgement).
const windingRoomMM = 10

// Singles counts the single strings of a settled set by gauge, string 1 first.
func (in *Input) Singles(s *job.SetOut) []Single {
	var out []Single
	if s.Detail == nil {
		return out
	}
	at := map[int]int{}
	for i, d := range s.Detail.Strings {
		k, ok := at[d.Gauge]
		if !ok {
			k, at[d.Gauge] = len(out), len(out)
			out = append(out, Single{Gauge: d.Gauge})
		}
		out[k].Strings = append(out[k].Strings, d.Number)
		if in.Plan.Stock()[d.Gauge].Family != gauges.Plain {
			need := 1000*(d.LengthM+in.Plan.Request().Tails[i].SaddleM) + windingRoomMM
			out[k].LeastWindingMM = max(out[k].LeastWindingMM, need)
		}
	}
	return out
}

// Shopping adds the list of what to buy for one pair to a report: single
// strings by gauge, the blank, the fret wire.
func (in *Input) Shopping(r *show.Report, s *job.SetOut) {
	u := fineUnits(in.Units)
	t := r.Table("shopping", "", show.Words("what"), show.Figures("how many"), show.Words("remarks"))
	for _, single := range in.Singles(s) {
		t.Row("single "+in.singleWords(single.Gauge), fmt.Sprint(len(single.Strings)), in.singleRemarks(single))
	}
	blank, size := in.blankWords(s)
	t.Row(blank, "1", size)
	t.Row("fret wire", u.LenText(s.Wire.Total.MM(), 0), fmt.Sprintf("in pieces from %s to %s; the sum of them is %s",
		u.Len(least(s), 0), u.LenText(longest(s), 0), u.LenText(s.Wire.Sum.MM(), 0)))
	if slices.ContainsFunc(in.Singles(s), func(single Single) bool { return single.LeastWindingMM > 0 }) {
		t.Note("Wound part: own length, saddle tail, and %s beyond the nut.", u.LenText(windingRoomMM, 0))
	}
	if s.Detail == nil {
		t.Note("Single strings follow once a set of gauges is settled.")
	} else if in.usesUncertain(s.Detail.Gauges) || in.builtOnly(s.Detail.Gauges) != nil {
		t.Note("Gauges that are suspect or were never weighed: buy one of each first, weigh it, run again, and only then buy the rest.")
	}
}

func least(s *job.SetOut) float64 {
	out := s.Wire.Cuts[0].Length.MM()
	for _, c := range s.Wire.Cuts {
		out = min(out, c.Length.MM())
	}
	return out
}

func longest(s *job.SetOut) float64 {
	out := 0.0
	for _, c := range s.Wire.Cuts {
		out = max(out, c.Length.MM())
	}
	return out
}

// singleWords names a gauge with its construction and diameter.
func (in *Input) singleWords(g int) string {
	s := in.Plan.Stock()[g]
	return fmt.Sprintf("%s, %s, %s", in.gauge(g), s.Family, caliperUnits(in.Units).text(s.Outer.MM()))
}

func (in *Input) singleRemarks(s Single) string {
	words := []string{"for string " + numbers(s.Strings)}
	if s.LeastWindingMM > 0 {
		words = append(words, "wound part at least "+fineUnits(in.Units).LenText(s.LeastWindingMM, 0))
	}
	if in.firstWeigh(s.Gauge) {
		words = append(words, "buy one first and weigh it")
	}
	return strings.Join(words, "; ")
}

// firstWeigh says whether a gauge is to be weighed before a set of it is bought.
func (in *Input) firstWeigh(g int) bool {
	s := in.Plan.Stock()[g]
	return s.Suspect || s.Disagrees || s.Readings == 0
}

// blankWords names the blank to buy: the one worked with, or the least size.
func (in *Input) blankWords(s *job.SetOut) (what, size string) {
	u, need := in.Units, s.Layout.LeastBlank()
	size = fmt.Sprintf("at least %s x %s", u.Len(need.Length.MM(), scaleDecimals), u.LenText(need.Width.MM(), scaleDecimals))
	if s.LeastThicknessMM > 0 {
		size += fmt.Sprintf(", planed no thinner than %s", u.LenText(s.LeastThicknessMM, scaleDecimals))
	}
	if s.Blank < 0 {
		return "fingerboard blank", size
	}
	return "fingerboard blank: " + s.Blanks[s.Blank].Blank.Name, size
}
