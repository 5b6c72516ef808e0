package report

import (
	"fmt"
	"math"
	"strconv"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// asked says in words what the build asks for.
func (in *Input) asked(r *show.Report) {
	b := in.Job.Build
	req := in.Plan.Request()
	var items []string
	add := func(format string, args ...any) { items = append(items, fmt.Sprintf(format, args...)) }
	for i := range req.Cases {
		add("Tuning: %s, A4 = %s Hz%s.", in.caseWords(i, req.Cases[i]), strconv.FormatFloat(b.Strings.PitchStandard.Hz(), 'f', -1, 64), weightWords(&req, i))
	}
	if len(req.Cases) > 1 {
		by := "their weighted mean counts"
		if req.By == choice.Worst {
			by = "each string counts in the tuning that suits it least, whatever the weights"
		}
		add("One set must serve all of them; %s.", by)
	}
	if req.Given != nil {
		add("Gauges given: %s (low string first).", in.Set(req.Given))
	} else {
		add("Gauges free, from a stock of %d.%s", len(req.Usable), in.orderingWords())
	}
	in.askedReference(add)
	in.askedFeel(add)
	in.askedLimits(add)
	r.Heading("What was asked")
	r.Bullets(items...)
}

// weightWords gives a tuning's weight where several count in a mean.
func weightWords(req *choice.Request, i int) string {
	if len(req.Cases) < 2 || req.By == choice.Worst {
		return ""
	}
	return ", weight " + trim(req.Cases[i].Weight)
}

func (in *Input) orderingWords() string {
	if in.Plan.Request().Ordering {
		return " No string lighter than its treble neighbour, no plain string on the bass side of a wound one."
	}
	return " Any order of gauges is allowed."
}

func (in *Input) askedReference(add func(string, ...any)) {
	ref := in.Job.Build.Reference
	if ref == nil {
		return
	}
	name := ref.Name
	if name == "" {
		name = "the reference instrument"
	}
	pair := in.Pair(ref.Bass.MM(), ref.Treble.MM())
	if ref.Bass == ref.Treble {
		pair = in.Units.LenText(ref.Bass.MM(), scaleDecimals) + ", straight"
	}
	add("Like %s: %s, %s, strung %s.%s", name, pair, ref.Tuning, in.Set(in.Plan.Request().Reference.Gauges), in.mappingWords(ref.Tuning.Strings()))
}

// mappingWords says which string of the reference stands for which, where
// their numbers differ.
func (in *Input) mappingWords(have int) string {
	want := in.Job.Tunings()[0].Strings()
	switch {
	case have == want:
		return ""
	case in.Plan.Request().Feel.MoreStrings == choice.Across:
		return " Its strings are spread over yours by position."
	case want > have:
		return fmt.Sprintf(" String by string from the treble; strings beyond its %d are to be like its last.", have)
	}
	return " String by string from the treble."
}

func (in *Input) askedFeel(add func(string, ...any)) {
	f := in.Plan.Request().Feel
	add("Tension: %s.", in.targetWords(f.Tension))
	strings := in.Plan.BendStrings()
	if len(strings) == 0 || len(f.BendFrets) == 0 {
		add("Bending force: no string is bent.")
	} else {
		add("Bending force: %s, for a bend of %s cents on string %s at fret %s.", in.targetWords(f.BendingForce),
			strconv.FormatFloat(f.BendCents, 'f', -1, 64), numbers(strings), numbers(f.BendFrets))
	}
	switch f.Overtone.Source {
	case choice.LikeReference:
		add("Inharmonicity of the lowest string, how far its tenth partial stands above ten times the pitch: no more than the reference's.")
	case choice.Stated:
		add("Inharmonicity of the lowest string, how far its tenth partial stands above ten times the pitch: no more than %s cents.", show.Cents(f.Overtone.Values[0]))
	}
	w := f.Weights
	add("Score: %s x tension + %s x bending force + %s x inharmonicity, each a mean of squared ln(value/target).",
		trim(w.Tension), trim(w.BendingForce), trim(w.Overtone))
	for _, l := range in.Plan.LeftOut() {
		if l.Strings == nil {
			add("Left out of the score: %s, since %s.", l.Term, l.Why)
		} else {
			add("Left out of the score: %s of string %s, since %s.", l.Term, numbers(l.Strings), l.Why)
		}
	}
}

func trim(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func (in *Input) targetWords(t choice.Target) string {
	switch t.Source {
	case choice.LikeReference:
		return "like the reference"
	case choice.OwnMean:
		return "even, about the set's own mean"
	case choice.Stated:
		if len(t.Values) == 1 {
			return in.Units.ForceText(t.Values[0]) + " on every string"
		}
		words := make([]string, len(t.Values))
		for i, v := range t.Values {
			words[len(words)-1-i] = in.Units.ForceN(v)
		}
		return listed(words) + " " + in.Units.Force.Symbol() + ", low string first"
	}
	return "no target"
}

// askedLimits names the grid and the limits that are on.
func (in *Input) askedLimits(add func(string, ...any)) {
	req := in.Plan.Request()
	add("Bass scale: %s. Treble scale: %s.", in.span(req.BassMM), in.span(req.TrebleMM))
	l, u := req.Limits, in.Units
	words := []string{}
	on := func(active bool, format string, args ...any) {
		if active {
			words = append(words, fmt.Sprintf(format, args...))
		}
	}
	on(l.DifferenceMM > 0, "difference up to %s", u.LenText(l.DifferenceMM, scaleDecimals))
	on(l.FretSlantRad > 0, "slant of nut and frets up to %s", show.DegText(l.FretSlantRad))
	on(l.SaddleSlantRad > 0, "slant of the saddle line up to %s", show.DegText(l.SaddleSlantRad))
	on(l.NutToFret1MM > 0, "nut to fret 1 up to %s on the bass line", u.LenText(l.NutToFret1MM, scaleDecimals))
	on(l.Blanks != nil, "a blank on offer must serve")
	on(l.BreakingOpen > 0, "breaking share up to %s open", show.PercentText(l.BreakingOpen, 0))
	on(l.BreakingBent > 0, "%s bent", show.PercentText(l.BreakingBent, 0))
	on(l.LeastTensionN > 0, "tension from %s", u.ForceText(l.LeastTensionN))
	on(l.MostTensionN > 0, "tension up to %s", u.ForceText(l.MostTensionN))
	on(l.MostBendingForceN > 0, "bending force up to %s", u.ForceText(l.MostBendingForceN))
	on(l.InharmonicityCents > 0, "inharmonicity of the lowest string up to %s cents", show.Cents(l.InharmonicityCents))
	on(l.SaddleTravelM > 0, "compensation within a saddle travel of %s", u.LenText(1000*l.SaddleTravelM, scaleDecimals))
	if len(words) > 0 {
		add("Limits: %s.", listed(words))
	}
}

// span names a grid: "660.0 to 720.0 mm by 5.0", a list, or one length.
func (in *Input) span(mm []float64) string {
	u := in.Units
	switch n := len(mm); {
	case n == 0:
		return none
	case n == 1:
		return u.LenText(mm[0], scaleDecimals)
	case n > 2 && evenlySpaced(mm):
		return fmt.Sprintf("%s to %s by %s", u.Len(mm[0], scaleDecimals), u.LenText(mm[n-1], scaleDecimals), u.Len(mm[1]-mm[0], 2))
	default:
		words := make([]string, n)
		for i, x := range mm {
			words[i] = u.Len(x, scaleDecimals)
		}
		return listed(words) + " " + u.Length.Symbol()
	}
}

func evenlySpaced(mm []float64) bool {
	for i := 2; i < len(mm); i++ {
		if math.Abs((mm[i]-mm[i-1])-(mm[1]-mm[0])) > 1e-6 {
			return false
		}
	}
	return true
}

// neutralWords names a neutral fret.
func neutralWords(n fan.Neutral) string {
	if n.Bridge {
		return "the bridge"
	}
	return "fret " + trim(n.Fret)
}
