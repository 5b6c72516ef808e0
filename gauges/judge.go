package gauges

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scalepair/data/fault"
)

// FalseAlarm is the chance that a stock without any slip raises an alarm. It is
// shared out evenly over all judgements that are made: of each gauge against
// the fit, and of each gauge's readings among themselves.
const FalseAlarm = 0.05

// fitAll fits every family, judges every gauge against the fit made without
// it, and estimates what has no reading.
func (c combiner) fitAll(s *Stock, faults *fault.List) {
	all := families(s.Gauges)
	each := FalseAlarm / float64(max(1, judgements(s.Gauges, all)))
	for _, f := range all {
		by := trusted(f.dots, f.form(), each/2)
		f.mark(s.Gauges, by, each/2)
		fit, ok := f.makeFit(s.Gauges, by)
		if ok {
			s.Fits = append(s.Fits, fit)
		}
		f.fill(s.Gauges, fit, ok, c.tools.EstimateOutside, c.entries, faults)
	}
	s.each = each
	markDisagreement(s.Gauges, each)
}

// judgements counts what can raise an alarm. A family of two judges none of
// its gauges, since one makes no fit.
func judgements(all []Gauge, families []*family) int {
	n := 0
	for _, f := range families {
		if len(f.dots) > 2 {
			n += len(f.dots)
		}
	}
	for i := range all {
		if all[i].dof > 0 {
			n++
		}
	}
	return n
}

// mark writes the judgements into the gauges. A dot that nothing can judge has
// none.
func (f *family) mark(all []Gauge, by *others, p float64) {
	judgements := make([]Judgement, len(f.dots))
	for i := range f.dots {
		g := &all[f.dots[i].gauge]
		if !by.judges(i) {
			g.note("too few of its kind: nothing checks its readings")
			continue
		}
		judgements[i] = Judgement{by: by, i: i, weight: float64(g.LinearDensity), p: p}
		g.Judged, g.Suspect = &judgements[i], !by.in[i]
	}
}

// markDisagreement marks the gauges whose readings stand further apart than
// chance p allows.
func markDisagreement(all []Gauge, p float64) {
	for i := range all {
		g := &all[i]
		if g.dof > 0 && chi2Tail(g.chi2, float64(g.dof)) < p {
			g.Disagrees = true
			g.note(fmt.Sprintf("its readings disagree: the uncertainty is widened %s times", decimals(math.Sqrt(g.chi2/float64(g.dof)), 1)))
		}
	}
}

// Suspects lists the readings to look at for slips, farthest off first. It needs
// the gauges in the order in which Combine gave them.
func (s Stock) Suspects() []Suspect {
	var out []Suspect
	for i, g := range s.Gauges {
		switch {
		case g.Disagrees:
			out = append(out, s.by.disagreeing(s.by.entries[i], g))
		case g.Suspect:
			out = append(out, s.by.offTheFit(s.by.entries[i], g)...)
		}
	}
	slices.SortStableFunc(out, func(a, b Suspect) int { return cmp.Compare(math.Abs(float64(b.Off)), math.Abs(float64(a.Off))) })
	return out
}

// offTheFit names the readings of a gauge that stands off from its fit: every
// one of them, since they agree with each other.
func (c combiner) offTheFit(e *entry, g Gauge) []Suspect {
	var out []Suspect
	for _, r := range e.rows {
		out = append(out, c.suspect(e, g, r, standing{float64(g.Judged.Off()), float64(g.Judged.U())}, g.Judged.describe()))
	}
	return out
}

// describe says how far off the judgement is.
func (j *Judgement) describe() string {
	side := "above"
	if j.Off() < 0 {
		side = "below"
	}
	return fmt.Sprintf("stands %s %% %s the fit made without it; up to %s %% would pass", percent(float64(j.Off())), side, percent(float64(j.Limit())))
}

// percent shows a fraction as a per cent, without its sign.
func percent(x float64) string { return decimals(100*math.Abs(x), 1) }

// disagreeing names the reading of a gauge that stands farthest from the rest:
// from the fit where there is one, else from the mean of the others.
func (c combiner) disagreeing(e *entry, g Gauge) Suspect {
	worst, most := 0, -1.0
	var found standing
	for i, r := range e.rows {
		s := c.alone(e, g, i, r)
		if d := math.Abs(s.off) / s.u; d > most {
			worst, most, found = i, d, s
		}
	}
	why := fmt.Sprintf("has readings further apart than chance allows, and this one is farthest off, %s %%", percent(found.off))
	if len(e.rows) == 1 {
		why = "has a reading and a construction further apart than chance allows"
	}
	return c.suspect(e, g, e.rows[worst], found, why)
}

// standing is how far off something stands, as Judgement.Off, with the standard
// uncertainty of that.
type standing struct{ off, u float64 }

// alone judges one row against the fit, or against the other rows where
// nothing is fitted.
func (c combiner) alone(e *entry, g Gauge, i int, r Reading) standing {
	v := c.tools.value(&r, float64(g.EA), g.EI, 1)
	against, u := float64(g.LinearDensity), 0.0
	if g.Judged != nil {
		against, u = float64(g.Judged.Fit()), float64(g.Judged.U())
	} else if others := slices.Delete(slices.Clone(e.rows), i, i+1); len(others) > 0 {
		rest := *e
		rest.rows = others
		kinds, _, _ := c.kinds(&rest, float64(g.EA), g.EI)
		m := combineKinds(kinds)
		against, u = m.w, m.u()/m.w
	} else if e.built != nil {
		b := e.built.value(e.r.Gauge, e.r.Construction)
		against, u = b.w, b.u()/b.w
	}
	return standing{v.w/against - 1, RootSum(v.u()/v.w, u)}
}
