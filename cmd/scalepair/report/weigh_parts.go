package report

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"scalepair/cmd/scalepair/show"
	"scalepair/data/unit"
	"scalepair/gauges"
)

// part is one source of a result's uncertainty.
type part struct {
	words, help string
	u           float64 // what it alone makes of it, in the result's unit
}

// parts takes the uncertainty of a result apart by source, largest first. Each
// gauge's own readings are a source, and so is everything that several share.
//
//	u^2 = sum over gauges (I Indep/w)^2 + sum over sources (sum I Common/w + I_c CorePart/d)^2
//
// I: change of the result per relative change of the linear density w, I_c: of the
// core d. First-order propagation, the Guide to the Expression of Uncertainty
// in Measurement 5.1 and 5.2.
func (w *Weigh) parts(in *Input) []part {
	var out []part
	shared := map[string]float64{}
	var sources []string
	add := func(source string, u float64) {
		if _, ok := shared[source]; !ok {
			sources = append(sources, source)
		}
		shared[source] += u
	}
	for _, i := range w.InPlay(in) {
		g := in.Plan.Stock()[i]
		words, help := ownWords(g)
		out = append(out, part{words, help, math.Abs(w.ByWeight[i] * float64(g.Indep) / float64(g.LinearDensity))})
		for _, c := range g.Common {
			add(c.Source, w.ByWeight[i]*c.U/float64(g.LinearDensity))
		}
		for _, c := range g.CoreParts {
			add(c.Source, w.ByCore[i]*c.U/float64(g.Core))
		}
	}
	for _, s := range sources {
		out = append(out, part{in.sourceWords(s), in.sourceHelp(s), math.Abs(shared[s])})
	}
	slices.SortStableFunc(out, func(a, b part) int { return cmp.Compare(b.u, a.u) })
	return out
}

// uncertainty puts the parts together.
func (w *Weigh) uncertainty(parts []part) float64 {
	u := 0.0
	for _, p := range parts {
		u = math.Hypot(u, p.u)
	}
	return u
}

func ownWords(g gauges.Gauge) (words, help string) {
	switch {
	case g.Estimated:
		return "the estimate of " + g.Label, "weigh it"
	case g.Readings == 0:
		return "the construction of " + g.Label, "weigh it"
	}
	return "the readings of " + g.Label, "weigh it again"
}

// sourceHelp says what would make a shared part smaller.
func (in *Input) sourceHelp(source string) string {
	label, isCore := strings.CutPrefix(source, "core of ")
	switch {
	case isCore:
		return in.coreHelp(label)
	case source == "balance":
		return "check it against a known mass; longer pieces"
	case source == "ruler":
		return "longer pieces, a better ruler"
	case source == "calipers":
		return "check them against a gauge block or known wire"
	case source == "gravity":
		return "state your own gravity under [measuring]"
	case strings.HasPrefix(source, "fit of"), strings.HasPrefix(source, "slope of the fit"):
		return "weigh what is estimated"
	case strings.HasPrefix(source, "packing of"), strings.HasPrefix(source, "density of"):
		return "weigh what is known by core and wraps only"
	}
	return ""
}

// coreHelp says whether calipers would know a core better than it is known.
func (in *Input) coreHelp(label string) string {
	g := in.Job.Stock.Gauges[in.stockIndex(label)]
	t := in.Job.Tools()
	measured := gauges.RootSum(float64(gauges.StepU(t.CaliperResolution)), float64(gauges.BoundU(t.CaliperAccuracy)))
	switch {
	case float64(g.UCore) > 1.2*measured:
		return "measure it: your calipers know it to " + in.toolLength(roundTo(measured, 1e-7)) + ", not " + in.toolLength(roundTo(float64(g.UCore), 1e-7))
	case g.UCore > 0:
		return "a micrometer: your calipers know it no better"
	}
	return ""
}

func roundTo(x, step float64) float64 { return math.Round(x/step) * step }

func forceOf(n float64) unit.Force { return unit.Force(n) }

// leastPart is the share of the variance from which a part is listed.
const leastPart = 0.01

// hangsOn is the table of what the uncertainty is made of.
func (in *Input) hangsOn(r *show.Report, w *Weigh, parts []part, u float64) {
	if u == 0 {
		return
	}
	t := r.Table("parts", "What the uncertainty is made of", show.Words("part"), show.Figures("share %"), show.Words("what would help"))
	for _, p := range parts {
		if share := p.u * p.u / (u * u); share >= leastPart {
			t.Row(p.words, show.Percent(share, 0), p.help)
		}
	}
	t.Note("Share: of the variance, which is the uncertainty squared. Parts below 1 %% are left out. Moduli, densities and the model's own errors are not counted.")
}
