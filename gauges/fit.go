package gauges

import (
	"fmt"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// FitKind is the law that a family is fitted with.
type FitKind int

// The laws: one density over plain wire; one density of the wrap, where every
// core is known; ln w as a straight line in ln d.
const (
	OneDensity FitKind = iota
	WrapDensity
	PowerLaw
)

// String gives "one density", "one wrap density" or "power law".
func (k FitKind) String() string {
	return [...]string{"one density", "one wrap density", "power law"}[k]
}

// Fit is the law that ties the gauges of one family together.
type Fit struct {
	Family   string
	Material string // of the core
	Kind     FitKind

	DensityKgM3, UDensityKgM3 float64 // of the wire or the wrap; 0 for a power law
	Exponent, UExponent       float64 // of a power law; else 0

	Scatter        unit.Ratio // the family's own scatter as a fraction of the fitted density (power law: of the linear density)
	ScatterAssumed bool       // too few gauges to see a scatter: 2 %, judgement

	MinOuter, MaxOuter unit.Length // the fitted diameters
	Used               []string    // labels of the gauges that the fit stands on
	LeftOut            []string    // labels of suspect gauges, kept out

	law         law
	sources     []string // of law's shares
	bounded     []bool   // which of them have bounds, see CommonPart
	coreDensity float64
}

// Judgement is how a gauge stands to the fit that was made without it.
//
// Its figures are worked out when asked for, since most runs ask for no gauge's.
// They panic on a Judgement that Combine has not made.
type Judgement struct {
	by     *others
	i      int     // of the gauge's dot
	weight float64 // own linear density, kg/m
	p      float64 // chance of a false alarm in one tail
}

// Off is (own linear density - FitKgM)/FitKgM: 0.05 is 5 % heavier than the fit.
func (j *Judgement) Off() unit.Ratio {
	d := &j.by.dots[j.i]
	off, _ := j.by.law(j.i).about(*d)
	return unit.Ratio(d.lean * off)
}

// Fit is what the fit gives.
func (j *Judgement) Fit() unit.LinearDensity {
	return unit.LinearDensity(j.weight / (1 + float64(j.Off())))
}

// U is the standard uncertainty of Off: reading, diameters, fit and the family's
// scatter.
func (j *Judgement) U() unit.Ratio {
	d, l := &j.by.dots[j.i], j.by.law(j.i)
	_, u := l.about(*d)
	return unit.Ratio(d.lean * l.widened(u, d.x, j.p))
}

// Limit is the |Off| beyond which a gauge is suspect.
func (j *Judgement) Limit() unit.Ratio { return max(leastSlip, unit.Ratio(normalQuantile(j.p))*j.U()) }

// Suspect is one reading to look at again.
type Suspect struct {
	Place fault.Place
	Gauge string
	Why   string     // what gave it away, with figures
	Fits  string     // what mass or length would agree
	Slips []string   // what may have happened, likeliest first; may be empty
	Off   unit.Ratio // as Judgement.Off, of this reading alone
}

// String is the suspect in one line: place, gauge, what gave it away, what would
// fit, what may have happened.
func (s Suspect) String() string {
	out := fmt.Sprintf("gauge %s %s; %s", s.Gauge, s.Why, s.Fits)
	if s.Place != (fault.Place{}) {
		out = s.Place.String() + ": " + out
	}
	for _, what := range s.Slips {
		out += "; " + what
	}
	return out
}

// Options are the choices that a stock is made with. The zero value is the
// default.
type Options struct {
	// MinStrength gives the least strength of music wire, for the breaking load
	// of hung-weight tests; nil leaves that load unknown.
	MinStrength func(diaM float64) (pa float64, outside bool)
}
