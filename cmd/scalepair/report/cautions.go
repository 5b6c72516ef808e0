package report

import (
	"fmt"
	"math"
	"slices"

	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension/choice"
)

// The cautions, short at the end of a run and whole on the printed sheet.
var (
	// stringCautions end every run that speaks of strings at pitch.
	stringCautions = []string{
		"Raise an untried string in steps, with eye protection: it can break and whip.",
		"Whether neck and joints can carry the total tension is for a luthier to judge.",
	}
	// benchCautions end every run that speaks of work at the bench.
	benchCautions = []string{
		"Saws and blades cut; wood dust, dark tropical woods above all, irritates and sensitises: mask and extraction.",
		"Set out, check and saw in one session in the shop's usual air; measure the blank again on the day. Nut slots are filed to the string on the fretted instrument, never from this sheet.",
	}
	sheetCautions = []string{
		"A bent plain string near its breaking strength snaps at the saddle: no sharp edge there, smooth nut slots. Old strings are weaker than the table. Slacken all strings before reaching under them.",
		"The total tension bears on neck, truss rod, bridge and glue joints. This tool does not judge whether an instrument can carry it: ask a competent luthier, or its plan.",
		"A paper template is a check until its check bars are measured.",
		"A hung weight falls when the string breaks: eye protection, the weight a hand's breadth over a padded floor, hands and feet away, never over half the breaking load.",
		"Finishes, electrics and protected woods: the maker's sheet and local law. Where a rule of your place says otherwise, the rule holds.",
	}
)

// wholeCautions stand on the printed sheet.
func wholeCautions() []string {
	return slices.Concat(stringCautions, benchCautions, sheetCautions)
}

// polymerModulus parts polymer cores from metal ones: the softest metal of the
// material list has 90 GPa, the stiffest polymer 5 GPa.
const polymerModulus = 20e9 // Pa

// muchChange is the change of the total tension that a neck built like the
// reference's may not carry (judgement).
const muchChange unit.Ratio = 0.10

// detailCautions are those that a set's own numbers ask for.
func (in *Input) detailCautions(d *choice.Detail) []string {
	var warm, hot, polymer []int
	for _, s := range slices.Backward(d.Strings) {
		most := unit.Ratio(0)
		for _, t := range s.Tunings {
			most = max(most, t.Breaking)
		}
		g := in.Plan.Stock()[s.Gauge]
		switch {
		case g.YoungsPa > 0 && g.YoungsPa < polymerModulus:
			polymer = append(polymer, s.Number)
		case most > choice.StrongCaution:
			hot = append(hot, s.Number)
		case most > choice.Caution:
			warm = append(warm, s.Number)
		}
	}
	var much []string
	for c, one := range in.Plan.Request().Cases {
		if change := totalChange(d, c); change != nil && size(*change) > muchChange {
			much = append(much, one.Name)
		}
	}
	where := ""
	if len(d.Totals) > 1 {
		where = " in " + listed(much)
	}
	beside := in.disorder(d.Gauges)
	out := steep(d.NutSlant, d.LastFretSlant, d.SaddleSlant)
	out.sayIf(hot != nil, "Strong caution: above 75 %% of the least breaking strength, past the end of the elastic range and likely to break: %s.", several("string", hot))
	out.sayIf(warm != nil, "Above 65 %% of the least breaking strength, where the elastic range may end: %s.", several("string", warm))
	out.sayIf(polymer != nil, "Polymer core: %s. Its modulus grows with tension, so bending force may be up to 25 %% off; no elastic limit is known, and it goes on stretching for days.", several("string", polymer))
	out.sayIf(much != nil, "The total tension differs by more than 10 %% from the reference's%s: a neck and top built like the reference's may not suit it.", where)
	out = append(out, in.unsure(d.Gauges)...)
	out.sayIf(beside != nil, "Are gauges exchanged? Strings should grow heavier towards the bass, and no plain one follow a wound one, but %s. ordering = false under [strings] says that it is meant so.", listed(beside))
	return out
}

// unsure says which gauges of a set are to be weighed before the set is bought.
func (in *Input) unsure(set []int) []string {
	var out lines
	list := in.labelled(set, weighFirst)
	out.sayIf(list != nil, "Estimated, suspect or never weighed: %s. Buy one single string of each, weigh it, run again, and only then buy the rest.", listed(list))
	return out
}

// weighFirst reports whether a gauge is to be weighed before a set of it is
// bought.
func weighFirst(g gauges.Gauge) bool { return g.Suspect || g.Disagrees || g.Readings == 0 }

// steepest is the slant from which a fan wants a trial before it is built.
// Judgement, without source: a hand and the hardware that can be had decide.
const steepest unit.Angle = 25 * unit.Degree

// size is a quantity without its sign.
func size[Q ~float64](x Q) Q { return Q(math.Abs(float64(x))) }

// steep warns of lines that slant more than that. All frets lie between the nut and
// the last.
func steep(nut, last, saddle unit.Angle) (out lines) {
	var words lines
	words.sayIf(size(nut) > steepest, "the nut by %s", table.DegText(size(nut)))
	words.sayIf(size(last) > steepest, "the last fret by %s", table.DegText(size(last)))
	words.sayIf(size(saddle) > steepest, "the saddle line by %s", table.DegText(size(saddle)))
	out.sayIf(words != nil, "Steep: %s. Beyond about %s (judgement) frets are hard to finger and to press clean, and few nuts, bridges and pickups are made for it: hold a straight edge at that angle over a neck you know, and find the parts, before wood is cut. Less difference, or another neutral fret, is less steep.",
		listed(words), table.DegText(steepest))
	return out
}

// steepCautions are those of a fan by itself.
func steepCautions(l *fan.Layout) []string {
	return append([]string{}, steep(l.Nut.Slant, l.Frets[l.Spec.Frets].Line.Slant, l.Saddle.Slant)...)
}

// labelled names the gauges of a set that something holds of, once each, low
// string first.
func (in *Input) labelled(set []int, holds func(gauges.Gauge) bool) []string {
	var out []string
	for _, i := range slices.Backward(set) {
		if g := in.Plan.Stock()[i]; holds(g) && !slices.Contains(out, g.Label) {
			out = append(out, g.Label)
		}
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

// changePerString is the change of the mean tension of a string, nil where the
// reference has as many strings.
func (in *Input) changePerString(d *choice.Detail, c int) *unit.Ratio {
	change, ref := totalChange(d, c), in.Plan.Request().Reference
	if change == nil || len(ref.Gauges) == len(d.Strings) {
		return nil
	}
	return new((1+*change)*unit.Ratio(len(ref.Gauges))/unit.Ratio(len(d.Strings)) - 1)
}

// totalChange is the change of the total tension from the reference's, as a
// share of it; nil where one of them is not known.
func totalChange(d *choice.Detail, c int) *unit.Ratio {
	if d.ReferenceTension == 0 || d.Totals[c].Tension.Value == 0 {
		return nil
	}
	return new(unit.Ratio(d.Totals[c].Tension.Value/d.ReferenceTension - 1))
}
