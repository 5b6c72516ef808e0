package report

import (
	"fmt"
	"strings"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/show"
	"scalepair/gauges/fit"
)

// Gauges prints the whole stock: what must be looked at again, the table, the
// fits, what could not have shown, and how well it was weighed. plot is the
// drawing of the fits, "" for none.
func Gauges(in *Input, plot string) *show.Report {
	r := &show.Report{Title: in.title("Gauges of")}
	r.Text(in.stockWords())
	in.suspects(r, in.Job.Stock.Suspects())
	if plot != "" {
		r.Figure(plotCaption, plot)
	}
	in.stockTable(r)
	in.fits(r)
	in.stockNotes(r)
	in.blind(r)
	in.hungTests(r, in.hungOf(in.Job.Stock.Gauges))
	in.tools(r)
	in.craft(r)
	return r
}

// stockWords counts what is known and how.
func (in *Input) stockWords() string {
	s := in.Job.Stock
	weighed, built, estimated := 0, 0, 0
	for _, g := range s.Gauges {
		switch {
		case g.Estimated:
			estimated++
		case g.Readings == 0:
			built++
		default:
			weighed++
		}
	}
	words := []string{fmt.Sprintf("%d weighed or hung (%s)", weighed, plural(in.readings(), "reading"))}
	if built > 0 {
		words = append(words, fmt.Sprintf("%d known by core and wraps alone", built))
	}
	if estimated > 0 {
		words = append(words, fmt.Sprintf("%d estimated from a fit", estimated))
	}
	return fmt.Sprintf("%s in stock, from %s: %s.", plural(len(s.Gauges), "gauge"), in.Job.Build.Readings, listed(words))
}

func (in *Input) readings() int {
	n := 0
	for _, g := range in.Job.Stock.Gauges {
		n += g.Readings
	}
	return n
}

// suspects lists readings to look at again, or says that none stands off.
func (in *Input) suspects(r *show.Report, list []fit.Suspect) {
	if len(list) == 0 {
		r.Text("No reading stands off from its kind or from the other readings of its gauge.")
		return
	}
	r.Heading("Look at these again")
	var items []string
	for _, s := range list {
		items = append(items, in.suspectWords(s))
	}
	r.Bullets(items...)
	r.Text("Nothing was changed for it: a suspect reading counts for its own gauge as it stands, and is kept out of the fit. Weigh the piece again, and correct or delete the row.")
}

// suspectWords says what stands off, what would fit and what may have happened.
func (in *Input) suspectWords(s fit.Suspect) string {
	out := s.Gauge
	if place := s.Place.String(); place != "" {
		out += " (" + place + ")"
	}
	out += " " + in.inUnits(s.Why+". "+capital(s.WouldFit)+".")
	if len(s.Slips) > 0 {
		out += " Perhaps: " + strings.Join(s.Slips, " Or: ")
	}
	return out
}

// stockNotes prints what the stock has to say of single gauges: constructions
// against readings, cores that are not known, readings that disagree. What is
// said of several gauges in the same words is said once.
func (in *Input) stockNotes(r *show.Report) {
	var texts []string
	who := map[string][]string{}
	for _, g := range in.Job.Stock.Gauges {
		for _, n := range others(g.Notes) {
			if who[n] == nil {
				texts = append(texts, n)
			}
			who[n] = append(who[n], g.Label)
		}
	}
	if texts == nil {
		return
	}
	r.Heading("Notes")
	var items []string
	for _, n := range texts {
		items = append(items, listed(who[n])+": "+in.inUnits(n)+".")
	}
	r.Bullets(items...)
}

// blind says how small a slip this stock could not have shown.
func (in *Input) blind(r *show.Report) {
	least, most, alone := in.limits()
	r.Heading("What could not have shown")
	var items []string
	if most.Limit > 0 {
		text := fmt.Sprintf("A slip shows when it moves a linear density by more than %s (%s) to %s (%s). Smaller ones pass unseen",
			show.PercentText(float64(least.Limit), 1), least.Gauge, show.PercentText(float64(most.Limit), 1), most.Gauge)
		if n := len(most.Slips); n > 0 {
			text += fmt.Sprintf(": of %s, say, %s", most.Gauge, most.Slips[n-1])
		}
		items = append(items, text+". Name a gauge to see its own: scalepair gauges "+in.example()+".")
	}
	if alone != nil {
		items = append(items, "Nothing checks "+listed(alone)+": weigh a second piece, or more gauges of that kind.")
	}
	items = append(items, "One balance that reads heavy, or one ruler that is short, moves all gauges alike and never shows: weigh something of known mass, and lay two rulers side by side.")
	r.Bullets(items...)
}

// limits gives the gauges in which the smallest and only the largest slip
// would show, suspects aside, and those that nothing checks.
func (in *Input) limits() (least, most fit.Blind, alone []string) {
	odd := map[string]bool{}
	for _, g := range in.Job.Stock.Gauges {
		odd[g.Label] = g.Suspect || g.Disagrees
	}
	for _, b := range in.Job.Stock.Blind() {
		switch {
		case b.Limit == 0:
			alone = append(alone, b.Gauge)
		case odd[b.Gauge]:
		case most.Limit == 0:
			least, most = b, b
		case b.Limit > most.Limit:
			most = b
		case b.Limit < least.Limit:
			least = b
		}
	}
	return least, most, alone
}

// example is the command line's way to name the least certain gauge.
func (in *Input) example() string {
	worst, path := in.Job.Stock.Gauges[0], in.Job.Path
	for _, g := range in.Job.Stock.Gauges {
		if g.RelU() > worst.RelU() && g.Readings > 0 {
			worst = g
		}
	}
	words := []string{worst.Label}
	if path != "" && path != job.DefaultFile {
		words = []string{path, worst.Label}
	}
	for i, w := range words {
		if strings.ContainsAny(w, " \t") {
			words[i] = `"` + w + `"`
		}
	}
	return strings.Join(words, " ")
}
