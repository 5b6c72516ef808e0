package report

import (
	"fmt"
	"slices"

	"scalepair/gauges"
	"scalepair/tension/choice"
)

// shortCautions end every run that speaks of strings at pitch.
var shortCautions = []string{
	"Raise an untried string in steps, with eye protection: it can break and whip. A bent plain string near its breaking share snaps at the saddle: no sharp edge there, smooth nut slots. Old strings are weaker than the table. Slacken all strings before reaching under them.",
	"The total tension bears on neck, truss rod, bridge and glue joints. Whether a given instrument can carry it is for a competent luthier or its plan to judge, and this tool does not.",
}

// benchCautions end every run that speaks of work at the bench.
var benchCautions = []string{
	"Saws and blades cut; wood dust, dark tropical woods above all, irritates and sensitises: mask and extraction.",
	"Set out, check and saw in one session in the shop's usual air; measure the blank again on the day. Nut slots are filed to the string on the fretted instrument, never from this sheet.",
}

// wholeCautions stand on the printed sheet.
func wholeCautions() []string {
	return slices.Concat(shortCautions, benchCautions, []string{
		"A paper template is a check until its 100 mm bars are measured.",
		"A hung weight falls when the string breaks: eye protection, the weight a hand's breadth over a padded floor, hands and feet away, never over half the breaking load.",
		"Finishes, electrics and protected woods: the maker's sheet and local law. Where a rule of your place says otherwise, the rule holds.",
	})
}

// detailCautions are those that a detail's own numbers ask for.
func (in *Input) detailCautions(d *choice.Detail) []string {
	var out []string
	var warm, hot []int
	for _, s := range d.Strings {
		most := 0.0
		for _, c := range s.Cases {
			most = max(most, c.ShareOpen)
		}
		switch {
		case most > choice.StrongCautionShare:
			hot = append(hot, s.Number)
		case most > choice.CautionShare:
			warm = append(warm, s.Number)
		}
	}
	if hot != nil {
		out = append(out, "Strong caution: string "+numbers(hot)+" stands above 75 % of the core's least strength, past the end of its elastic range. It is likely to break.")
	}
	if warm != nil {
		out = append(out, "Caution: string "+numbers(warm)+" stands above 65 % of the core's least strength, where the elastic range may end.")
	}
	if change, ok := totalChange(d, 0); ok && (change > 0.10 || change < -0.10) {
		out = append(out, "The total tension differs by more than 10 % from the reference instrument's: a neck and top built like the reference's may not suit it.")
	}
	if in.usesUncertain(d.Gauges) {
		out = append(out, "A gauge here is estimated or suspect, or its readings disagree: buy one single string of it, weigh it, run again, and only then buy the rest.")
	}
	if beside := in.disorder(d.Gauges); beside != nil {
		out = append(out, fmt.Sprintf("Are gauges exchanged? Strings should grow heavier towards the bass, and no plain one follow a wound one, but %s. ordering = false under [strings] says that it is meant so.", listed(beside)))
	}
	if built := in.builtOnly(d.Gauges); built != nil {
		of := "it"
		if len(built) > 1 {
			of = "each"
		}
		out = append(out, fmt.Sprintf("Never weighed, but reckoned from core and wraps: %s. Buy one single string of %s, weigh it, run again, and only then buy the rest.", listed(built), of))
	}
	return out
}

// disorder names the neighbours in a set that break the ordering rule, where the
// plan keeps to it.
func (in *Input) disorder(set []int) []string {
	if !in.Plan.Request().Ordering {
		return nil
	}
	var out []string
	for i := 1; i < len(set); i++ {
		treble, bass := in.Plan.Stock()[set[i-1]], in.Plan.Stock()[set[i]]
		if bass.LinearDensity < treble.LinearDensity || bass.Family == gauges.Plain && treble.Family != gauges.Plain {
			out = append(out, fmt.Sprintf("string %d is %s and string %d %s", i+1, in.gauge(set[i]), i, in.gauge(set[i-1])))
		}
	}
	return out
}

// builtOnly names the gauges of a set that were never weighed and are no
// estimates: a construction is all that is known of them.
func (in *Input) builtOnly(set []int) []string {
	var out []string
	for _, g := range set {
		if s := in.Plan.Stock()[g]; s.Built && s.Readings == 0 && !slices.Contains(out, s.Label) {
			out = append(out, s.Label)
		}
	}
	return out
}

func (in *Input) usesUncertain(set []int) bool {
	for _, g := range set {
		if s := in.Plan.Stock()[g]; s.Estimated || s.Suspect || s.Disagrees {
			return true
		}
	}
	return false
}

// totalChange is the change of the total tension from the reference's, as a
// share of it.
func totalChange(d *choice.Detail, c int) (float64, bool) {
	if d.ReferenceTotalN == 0 {
		return 0, false
	}
	return d.Totals[c].TensionN/d.ReferenceTotalN - 1, true
}
