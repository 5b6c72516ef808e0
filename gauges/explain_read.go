package gauges

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// named is a value whose parts stand in the work under symbols.
type named struct {
	value
	wSym, ownSym string
	boundedSym   string      // "" where no error of its own has bounds
	shared       []sharedSym // in the order of value.common
}

type sharedSym struct{ source, symbol string }

func (n named) symbolOf(source string) string {
	for _, s := range n.shared {
		if s.source == source {
			return s.symbol
		}
	}
	return ""
}

// weighings shows every weighing; rows that fell on one step of the balance
// come as one.
func (k *works) weighings(t Instruments, rows []Reading) []named {
	var groups [][]Reading
	for _, r := range rows {
		i := slices.IndexFunc(groups, func(g []Reading) bool { return t.sameRounding(&g[0], &r) })
		if i < 0 {
			groups = append(groups, []Reading{r})
			continue
		}
		groups[i] = append(groups[i], r)
	}
	var out []named
	for j, group := range groups {
		out = append(out, k.weighing(t, group, fmt.Sprint(j+1)))
	}
	return out
}

// weighing shows one weighing, or several of equal pieces, as number j.
func (k *works) weighing(t Instruments, group []Reading, j string) named {
	total := 0.0
	for _, g := range group {
		total += g.allLengthsM()
	}
	r := middle(group[0], total, len(group))
	v := t.value(&r, 0, 0, len(group))
	m := k.given("m"+j, "mass together"+r.when(), r.MassKg, "kg", r.line())
	n := k.given("n"+j, "pieces of that", float64(r.pieces()), "", r.line())
	l := k.lengthOf(group, r, j)
	w := k.step("w"+j, "linear density of that", fmt.Sprintf("%s/(%s %s)", m, l, n), v.w, "kg/m", "definition")

	dm := k.once("dm", "step of the balance", t.massStep(&r), "kg", fromTools)
	dl := k.once("dl", "step of the ruler", t.lengthStep(&r), "m", fromTools)
	steps := []string{
		k.step("sm"+j, "relative uncertainty of the mass, step", fmt.Sprintf("%s/(sqrt(12) %s)", dm, m), StepU(t.massStep(&r))/r.MassKg, "", guideStep),
		k.step("sl"+j, "relative uncertainty of the length, step", fmt.Sprintf("%s/(sqrt(12) %s)", dl, l), StepU(t.lengthStep(&r))/r.LengthM, "", guideStep),
	}
	own := slices.Clone(steps)
	if repeat := float64(t.BalanceRepeatability); repeat > 0 {
		rep := k.once("rep", "repeatability of the balance", repeat, "kg", fromTools)
		formula := rep + "/" + m
		if len(group) > 1 {
			formula = fmt.Sprintf("%s/(sqrt(%d) %s)", rep, len(group), m)
		}
		own = append(own, k.step("pm"+j, "relative uncertainty of the mass, repeatability", formula, repeat/math.Sqrt(float64(len(group)))/r.MassKg, "", "definition"))
	}
	out := named{value: v, wSym: w, ownSym: k.ownPart(j, w, own, v), boundedSym: k.boundedPart(j, w, steps, v)}
	if a := float64(t.BalanceAccuracy); a > 0 {
		am := k.once("am", "accuracy of the balance", a, "kg", fromTools)
		out.shared = append(out.shared, k.sharedPart(sourceBalance, j, fmt.Sprintf("%s %s/(sqrt(3) %s)", w, am, m), v, guideBound))
	}
	if a := float64(t.RulerAccuracy); a > 0 {
		al := k.once("al", "accuracy of the ruler", a, "m", fromTools)
		out.shared = append(out.shared, k.sharedPart(sourceRuler, j, fmt.Sprintf("-%s %s/(sqrt(3) %s)", w, al, l), v, guideBound))
	}
	return out
}

// ownPart is what errors of this value alone do to it.
func (k *works) ownPart(j, w string, own []string, v value) string {
	return k.step("o"+j, "standard uncertainty from errors of its own", w+" sqrt("+squares(own)+")", v.indep, "kg/m", guideSum)
}

// boundedPart is what those of them do that have bounds: roundings.
func (k *works) boundedPart(j, w string, steps []string, v value) string {
	formula := w + " sqrt(sqrt(" + strings.Join(steps, "^4 + ") + "^4))"
	return k.step("b"+j, "the same, roundings alone, by fourth powers", formula, v.bounded, "kg/m", fromShapes)
}

// sharedPart is what one shared error does to a value.
func (k *works) sharedPart(source, j, formula string, v value, from string) sharedSym {
	symbol := k.stem(source) + j
	k.step(symbol, "standard uncertainty from the "+source+", shared", formula, partOf(v, source).U, "kg/m", from)
	return sharedSym{source, symbol}
}

func partOf(v value, source string) CommonPart {
	for _, p := range v.common {
		if p.Source == source {
			return p
		}
	}
	return CommonPart{}
}

// squares writes "a^2 + b^2".
func squares(symbols []string) string {
	return strings.Join(symbols, "^2 + ") + "^2"
}

// lengthOf gives the length of each piece; rows taken together have the mean.
func (k *works) lengthOf(group []Reading, r Reading, j string) string {
	if len(group) == 1 {
		return k.given("l"+j, "length of each piece", r.LengthM, "m", r.line())
	}
	var sums []string
	for i, g := range group {
		at := j + string(rune('a'+i))
		l := k.given("l"+at, "length of each piece"+g.when(), g.LengthM, "m", g.line())
		sums = append(sums, fmt.Sprintf("%s %d", l, g.pieces()))
	}
	return k.step("l"+j, "the same, mean of the rows that fell on one step of the balance",
		fmt.Sprintf("(%s)/(%d n%s)", strings.Join(sums, " + "), len(group), j), r.LengthM, "m", "such rows count as one: they share the rounding")
}

func (r Reading) when() string {
	if r.Date == "" {
		return ""
	}
	return ", " + r.Date
}

// line says where a reading stands.
func (r Reading) line() string {
	if r.Place.Line == 0 {
		return "the readings"
	}
	return fmt.Sprintf("%s, line %d", r.Place.Input, r.Place.Line)
}

// hangings shows every hung-weight test.
func (k *works) hangings(t Instruments, e *entry, ea, ei float64) []named {
	var out []named
	for _, r := range e.rows {
		if r.Kind == Hung {
			out = append(out, k.hanging(t, r, ea, ei, "h"+fmt.Sprint(len(out)+1)))
		}
	}
	return out
}

func (k *works) hanging(t Instruments, r Reading, ea, ei float64, j string) named {
	gravity, _ := t.gravity()
	v := t.value(&r, ea, ei, 1)
	m := k.given("M"+j, "everything that hung"+r.when(), r.HungKg, "kg", r.line())
	l := k.given("l"+j, "clamp to clamp", r.SpeakingM, "m", r.line())
	f := k.given("f"+j, "sounded pitch", r.FreqHz, "Hz", r.line())
	g := k.once("g", "gravity", gravity, "m/s2", fromTools)
	w, by, clamps := fmt.Sprintf("%s %s/(2 %s %s)^2", m, g, l, f), "", ""
	if ea > 0 {
		load := r.HungKg * gravity
		stretch := load / ea
		e := k.step("e"+j, "stretch under the load", fmt.Sprintf("%s %s/EA", m, g), stretch, "", bondsLaw)
		by = k.step("by"+j, "how the load counts, with its stretch", fmt.Sprintf("1 + %s/(1 + %s)", e, e), 1+stretch/(1+stretch), "", "differential of the linear density") + " "
		var ends string
		ends, clamps = k.ends(slimness(ei, load, r.SpeakingM), fmt.Sprintf("sqrt(EI/(%s %s))/%s", m, g, l), j)
		w += fmt.Sprintf(" (1 + %s) %s", e, ends)
	}
	wSym := k.step("w"+j, "linear density of that, slack", w, v.w, "kg/m", hangingLaw)
	own := k.hangOwn(t, r, ea, j, by)
	out := named{value: v, wSym: wSym, ownSym: k.ownPart(j, wSym, own, v), boundedSym: k.boundedPart(j, wSym, own[:2], v)}
	k.hangShared(t, &out, j, by, clamps)
	return out
}

// ends shows what the stiffness does at the clamps: the factor on the unit
// weight, and the formula of its relative uncertainty.
func (k *works) ends(eps float64, formula, j string) (factor, relU string) {
	x := k.step("eps"+j, "stiffness against pull and length (wound: the core's, at least)", formula, eps, "", stiffLaw)
	c := k.step("cl"+j, "what firm clamps add to the square of the pitch, at most", fmt.Sprintf("(1 + 2 %s + 4 %s^2)^2", x, x), clamped(eps), "", stiffLaw)
	value, _ := clampFactor(eps)
	return k.step("K"+j, "factor of stiffness and clamps, the middle between hinged and firm", fmt.Sprintf("(1 + pi^2 %s^2) (1 + %s)/2", x, c), value, "", betweenEnds),
		fmt.Sprintf("(%s - 1)/(sqrt(3) (%s + 1))", c, c)
}

// hangOwn shows the relative uncertainties that are a hung reading's own, the
// two roundings first.
func (k *works) hangOwn(t Instruments, r Reading, ea float64, j, by string) []string {
	gravity, _ := t.gravity()
	hungStep, cents := first(r.HungResolutionKg, float64(t.HungResolution)), first(r.PitchCents, float64(t.Pitch))
	byLoad := 1.0
	if ea > 0 {
		stretch := r.HungKg * gravity / ea
		byLoad += stretch / (1 + stretch)
	}
	own := []string{
		k.step("sM"+j, "relative uncertainty of the load, step", fmt.Sprintf("%s%s/(sqrt(12) M%s)", by, k.once("dM", "step of the scales", hungStep, "kg", fromTools), j),
			byLoad*StepU(hungStep)/r.HungKg, "", guideStep),
		k.step("sl"+j, "relative uncertainty of the length, step, twice", fmt.Sprintf("2 %s/(sqrt(12) l%s)", k.once("dl", "step of the ruler", t.lengthStep(&r), "m", fromTools), j),
			2*StepU(t.lengthStep(&r))/r.SpeakingM, "", guideStep),
		k.step("sf"+j, "relative uncertainty of the pitch, twice", fmt.Sprintf("2 %s ln(2)/1200", k.once("pc", "standard uncertainty of the pitch", cents, "cents", fromTools)),
			2*cents*math.Ln2/1200, "", "definition of the cent"),
	}
	if ea == 0 {
		own = append(own, k.given("st"+j, "stretch under the load, core not known", unknownStretch, "", "judgement"))
	}
	return own
}

// hangShared adds the errors that hung readings share. clamps is the formula of
// what the ends do, "" where the core is unknown.
func (k *works) hangShared(t Instruments, out *named, j, by, clamps string) {
	_, uGravity := t.gravity()
	from := guideBound
	if clamps == "" {
		from, clamps = "judgement", k.once("uc", "relative uncertainty from the clamps, core not known", unknownClamps, "", "judgement")
	}
	if partOf(out.value, sourceClamps).U > 0 {
		out.shared = append(out.shared, k.sharedPart(sourceClamps, j, out.wSym+" "+clamps, out.value, from))
	}
	for _, p := range []struct {
		source, stem, what, unit, formula, from string
		bound                                   float64
	}{
		{sourceGravity, "ug", "standard uncertainty of gravity", "m/s2", "%s " + by + "%s/g", guideSum, uGravity},
		{sourceScales, "aM", "accuracy of the scales", "kg", "%s " + by + "%s/(sqrt(3) M" + j + ")", guideBound, float64(t.HungAccuracy)},
		{sourceRuler, "al", "accuracy of the ruler", "m", "-2 %s %s/(sqrt(3) l" + j + ")", guideBound, float64(t.RulerAccuracy)},
	} {
		if p.bound > 0 {
			symbol := k.once(p.stem, p.what, p.bound, p.unit, fromTools)
			out.shared = append(out.shared, k.sharedPart(p.source, j, fmt.Sprintf(p.formula, out.wSym, symbol), out.value, p.from))
		}
	}
}
