package build

import (
	"cmp"
	"embed"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tuning"
)

// Start says what a first build file is to be about.
type Start struct {
	// Name of the build; "My build" when blank.
	Name string
	// Tuning as notes or by name; when empty a common one of Strings
	// strings is taken, six in B for a baritone.
	Tuning string
	// Strings is the number of strings when Tuning is empty: 6 to 9, or 4 to 6
	// for a bass; 0 is 6. Fewer than 6 make a bass by themselves.
	Strings int
	// Bass asks for a bass where the number of strings leaves it open.
	Bass bool
	// Unit is that of the lengths: inches and pounds-force, else millimetres and
	// newtons.
	Unit unit.LengthUnit
}

//go:embed template
var templates embed.FS

// Template gives a commented build file and readings file to begin with. The
// readings are invented and say so; they are there so that every command runs
// at once, and are to be replaced.
func Template(s Start) (buildFile, readingsFile []byte, err error) {
	t, err := s.tuning()
	if err != nil {
		return nil, nil, err
	}
	m := measures{inches: s.Unit != unit.Millimetres}
	k := instrumentOf(t)
	text, err := templates.ReadFile("template/build.toml.tmpl")
	if err != nil {
		return nil, nil, err
	}
	page := k.page(s, t, m)
	// ${Name} stands for a value of the page, ${metric|inch} for one of the two.
	filled := os.Expand(string(text), func(name string) string {
		if metric, inch, both := strings.Cut(name, "|"); both {
			return m.pick(metric, inch)
		}
		return page[name]
	})
	readings, err := templates.ReadFile("template/" + k.name + "_" + m.pick("mm", "in") + ".csv")
	return alignRemarks(filled), readings, err
}

// alignRemarks puts the remarks that the template sets off with a tab into one
// column. No tab comes from elsewhere: texts have theirs escaped.
func alignRemarks(text string) []byte {
	const column = 38
	lines := strings.SplitAfter(text, "\n")
	for i, line := range lines {
		if before, remark, found := strings.Cut(line, "\t"); found {
			lines[i] = before + strings.Repeat(" ", max(2, column-len(before))) + remark
		}
	}
	return []byte(strings.Join(lines, ""))
}

// commonTunings are those of so many strings in the embedded list. Six are a
// baritone, since a guitar against a guitar asks for no fan.
var (
	commonTunings     = map[int]string{6: "baritone B", 7: "seven-string standard", 8: "eight-string F#", 9: "nine-string C#"}
	commonBassTunings = map[int]string{4: "bass", 5: "five-string bass", 6: "six-string bass"}
)

func (s Start) tuning() (tuning.Tuning, error) {
	if s.Tuning != "" {
		t, err := tuning.Parse(s.Tuning)
		if err != nil {
			return t, err
		}
		what, remedy := wrongTuning(t, t.Strings(), true)
		if s.Strings != 0 && s.Strings != t.Strings() {
			what, remedy = fmt.Sprintf("it has %d strings, --strings asks for %d", t.Strings(), s.Strings), "leave out one of the two"
		}
		if what != "" {
			err = fault.Fault{What: what, Given: s.Tuning, Remedy: remedy}
		}
		return t, err
	}
	n, common, remedy := cmp.Or(s.Strings, 6), commonTunings, "6 to 9 strings, or give the tuning"
	if s.Bass || n < 6 {
		common, remedy = commonBassTunings, "4 to 6 strings for a bass, or give the tuning"
	}
	if common[n] == "" {
		return tuning.Tuning{}, fault.Fault{What: fmt.Sprintf("no common tuning is known for %d strings", n), Remedy: remedy}
	}
	return tuning.Parse(common[n])
}

// instrument is what a first build file is like by its kind (judgement, from
// what such instruments are commonly built with).
type instrument struct {
	name                string
	frets               int
	scale               both // of the reference
	tuning              string
	gauges              []string // low string first
	below, above        both     // how far the range goes below and above the scale
	nutStep, saddleStep float64  // from string to string, mm
}

var (
	guitar = instrument{name: "guitar", frets: 24, scale: both{648, 25.5}, tuning: "E2 A2 D3 G3 B3 E4",
		gauges: []string{"w46", "w36", "w26", "p17", "p13", "p10"},
		below:  both{30, 1.25}, above: both{80, 3.25}, nutStep: 7.2, saddleStep: 10.4}
	bass = instrument{name: "bass", frets: 22, scale: both{864, 34}, tuning: "E1 A1 D2 G2",
		gauges: []string{"w105", "w85", "w65", "w45"},
		below:  both{40, 1.5}, above: both{105, 4.25}, nutStep: 10, saddleStep: 18.5}
)

// highestBass is the MIDI number of the highest note that a first string of a
// bass is taken to have, E3; anything higher is a guitar (judgement).
// highestGuitar is E4: above it the lengths to try shrink with the pitch, since
// the string would break.
const highestBass, highestGuitar = 52, 64

// instrumentOf gives the kind of instrument that has a tuning.
func instrumentOf(t tuning.Tuning) instrument {
	if highest(t) <= highestBass {
		return bass
	}
	return guitar
}

func highest(t tuning.Tuning) (semitone int) {
	for _, n := range t.Notes {
		semitone = max(semitone, n.Semitone)
	}
	return semitone
}

// page is what stands for the template's names. Texts, lengths and lists are as TOML
// writes them.
func (k instrument) page(s Start, t tuning.Tuning, m measures) map[string]string {
	n, common := t.Strings(), fan.CommonDots(k.frets)
	gaps, scale := float64(n-1), m.of(k.scale)
	shrink := math.Exp2(-max(0, float64(highest(t)-highestGuitar)) / 12)
	lengths := func(from, to float64) string {
		const round = 8 // an eighth of an inch, or a whole millimetre
		at := func(x float64) string {
			if m.inches {
				return trim(math.Round(x*shrink*round)/round) + " in"
			}
			return trim(math.Round(x*shrink)) + " mm"
		}
		return quote(at(from) + " to " + at(to) + " by " + m.pick("5 mm", "0.125 in"))
	}
	ordering, bending := "", `"no harder than the reference"`+"\t"+`# or "like the reference", `+m.pick(`"no harder than 12 N"`, `"no harder than 2.7 lbf"`)+`, "none"`
	if t.ReEntrant() {
		ordering = "\nordering = false\t# since the strings do not rise one by one"
	}
	if k.name == bass.name {
		bending = `"none"` + "\t# basses are rarely bent"
	}
	return map[string]string{
		"Name": quote(cmp.Or(strings.TrimSpace(s.Name), "My build")), "Tuning": quote(t.String()), "Ordering": ordering, "Instrument": k.name, "Units": quote(s.Unit.String()),
		"BendingForce": bending, "Frets": strconv.Itoa(k.frets),
		"ReferenceScale": quote(m.pick(trim(k.scale.mm)+" mm", trim(k.scale.in)+" in")), "ReferenceTuning": quote(k.tuning), "ReferenceGauges": labelList(k.gauges),
		"Treble": lengths(scale-m.of(k.below), scale), "Bass": lengths(scale-m.of(k.below), scale+m.of(k.above)),
		"Gauges":           labelList(slices.Repeat(k.gauges[:1], n)),
		"Towards":          labelList(slices.Repeat([]string{"middle"}, n)),
		"ReferenceStrings": numberList(slices.Repeat([]int{1}, n)),
		"Dots":             numberList(common.Face), "DoubleDots": numberList(common.Double),
		"NutSpread": m.rounded(k.nutStep*gaps, 0.5), "SaddleSpread": m.rounded(k.saddleStep*gaps, 0.5),
		"BlankLength": m.rounded(0.75*(k.scale.mm+k.above.mm)+60, 10), "BlankWidth": m.rounded(k.saddleStep*gaps+30, 5),
	}
}

func trim(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// labelList writes a list of texts as TOML does.
func labelList(texts []string) string {
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = quote(t)
	}
	return "[" + strings.Join(out, ", ") + "]"
}

// numberList writes a list of whole numbers as TOML does.
func numberList(list []int) string { return strings.ReplaceAll(fmt.Sprint(list), " ", ", ") }

// both is one size in both systems, round in each.
type both struct{ mm, in float64 }

// measures is the system of units that a build file is written in.
type measures struct{ inches bool }

func (m measures) pick(metric, inch string) string {
	if m.inches {
		return inch
	}
	return metric
}

func (m measures) of(b both) float64 {
	if m.inches {
		return b.in
	}
	return b.mm
}

// rounded gives the next larger size that is a whole number of steps, or of
// sixteenths of an inch.
func (m measures) rounded(mm, step float64) string {
	ceil := func(x, step float64) float64 { return math.Ceil(x/step-1e-9) * step } // with room for rounding
	if m.inches {
		return quote(unit.InchFractions.Format(unit.Inches(ceil(mm/25.4, 1.0/16)), 0) + " in")
	}
	return quote(trim(ceil(mm, step)) + " mm")
}
