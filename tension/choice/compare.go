package choice

import (
	"fmt"

	"scalepair/data/fault"
	"scalepair/data/unit"
	"scalepair/fan"
)

// Column asks for one column of a comparison.
type Column struct {
	// Name stands in faults.
	Name string
	// Request is the whole request of the column; its grid holds one pair. Its
	// Given is not read.
	Request Request
	// Set is the column's set, by string, as indexes into the request's stock;
	// nil asks for the best set of the stock.
	Set []int
}

// Compared is one column worked out.
type Compared struct {
	Plan *Plan
	// Suggested says that the set is the best of the stock for this column.
	Suggested bool
	// Detail is nil where the stock has no set that keeps the limits on
	// strings; None is then the limit that removed most from one string.
	Detail *Detail
	None   Miss
	// Ways are the fewest swaps that bring the set nearer to the wanted tension;
	// nil without a wanted tension.
	Ways []Way
}

// Compare works out the columns of a comparison. within is the tension misfit,
// in percent, that the ways of each column try to reach. Limits are reported
// and drop nothing; only the choice of a set keeps the limits on strings.
func Compare(columns []Column, within float64) ([]Compared, error) {
	var out []Compared
	var faults fault.List
	for _, c := range columns {
		one, err := compareOne(c, within)
		if err != nil {
			faults.Include(fault.Place{Input: c.Name}, err)
			continue
		}
		out = append(out, one)
	}
	return out, faults.Err()
}

func compareOne(c Column, within float64) (Compared, error) {
	if len(c.Request.BassMM) != 1 || len(c.Request.TrebleMM) != 1 {
		panic(fmt.Sprintf("choice: column %q is not of one pair", c.Name))
	}
	bass, treble := c.Request.BassMM[0], c.Request.TrebleMM[0]
	c.Request.Given = c.Set
	plan, err := Prepare(c.Request)
	if err != nil {
		return Compared{}, err
	}
	out := Compared{Plan: plan, Suggested: c.Set == nil}
	set := c.Set
	if set == nil {
		if !plan.CanSuggest() {
			return out, fault.Fault{What: "no set can be suggested: neither tension nor bending force has a target that any set could meet",
				Remedy: "give the column its gauges, or say under [feel] what tension is wanted"}
		}
		if set, out.None = plan.Suggest(bass, treble); set == nil {
			return out, nil
		}
	}
	if out.Detail, err = plan.Detail(bass, treble, set); err != nil {
		return out, err
	}
	out.Ways, err = plan.Ways(out.Detail, within)
	return out, err
}

// CanSuggest says whether the score tells one set from another: tension or
// bending force has a target that does not come from the set itself.
func (p *Plan) CanSuggest() bool {
	f := &p.req.Feel
	return p.HasTerm(TensionTerm) && f.Tension.Source != OwnMean || p.HasTerm(BendingForceTerm) && f.BendingForce.Source != OwnMean
}

// Suggest is the score-best set of the stock for one pair, exact as in a
// search, whatever gauges the request gives. Limits on the pair as a whole are
// left to a Detail to report. Where there is none the set is nil, and the miss
// is the limit that removed most from one string.
func (p *Plan) Suggest(bassMM, trebleMM float64) ([]int, Miss) {
	miss := Miss{BassMM: bassMM, TrebleMM: trebleMM, Gauge: -1}
	frame, reason := p.base.Frame(unit.MM(bassMM), unit.MM(trebleMM))
	if reason != fan.Fits {
		miss.Reason, miss.Neck = Unbuildable, reason
		return nil, miss
	}
	w := newSearcher(p)
	_, miss = w.chooseSet(&frame)
	if miss.Reason != Kept {
		miss.BassMM, miss.TrebleMM = bassMM, trebleMM
		return nil, miss
	}
	return append([]int(nil), w.set...), Miss{}
}
