package tension

import (
	"bytes"
	"sort"
	"sync"

	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/trace"
	"scalepair/data/unit"
)

// edge is how far a diameter may stand past the ends of the strength table
// and still count as inside: a nanometre, far below what a caliper shows and
// far above the rounding of a conversion from inches.
const edge unit.Length = 1e-9

// MinStrength is the least tensile strength of music wire by diameter in Pa,
// from the minima of ASTM A228 (data.WireStrength), linear in diameter between
// rows.
//
// Thinner than the first row (0.102 mm) it is that row's; thicker than the last
// (0.762 mm) the slope of the last two rows goes on, down to 0 at 6.35 mm; outside
// is then true, and the value a guess. A diameter that is not above 0, or so thick
// that nothing is left, gives 0: not known.
func MinStrength(tr *trace.Trace, dia unit.Length) (pa float64, outside bool) {
	table := strengthTable()
	first, last := table[0], table[len(table)-1]
	outside = !(dia >= first.dia-edge && dia <= last.dia+edge)
	name := "S, least strength of music wire of that diameter"
	if outside {
		name += " (outside the table, a guess)"
	}
	switch {
	case !(dia > 0):
		return 0, true
	case dia <= first.dia:
		return tr.Given(name, first.pa, "Pa", strengthSource+", its first row"), outside
	}
	above := sort.Search(len(table)-1, func(i int) bool { return table[i].dia >= dia })
	lo, hi := table[above-1], table[above]
	slope := (hi.pa - lo.pa) / (hi.dia - lo.dia).M()
	pa = max(0, hi.pa+float64(slope*(dia-hi.dia).M()))
	if pa > 0 {
		tr.Given("dlo, the row below", lo.dia.M(), "m", strengthSource)
		tr.Given("Slo, its least strength", lo.pa, "Pa", strengthSource)
		tr.Given("dhi, the row above", hi.dia.M(), "m", strengthSource)
		tr.Given("Shi, its least strength", hi.pa, "Pa", strengthSource)
		tr.Step(name, "Slo + (Shi - Slo) (d - dlo)/(dhi - dlo)", pa, "Pa", "straight line between rows; beyond them, on")
	}
	return pa, outside
}

const strengthSource = "ASTM A228, table of tensile strength, as reproduced in a wire distributor's data page"

// strengthRow is the least strength at one diameter.
type strengthRow struct {
	dia unit.Length
	pa  float64
}

// strengthTable reads the embedded table once. It is rising in diameter; that
// and its numbers are checked by a test, so a fault here is a bug.
var strengthTable = sync.OnceValue(func() []strengthRow {
	table, faults := csvtable.Read(bytes.NewReader(data.WireStrength()), "a228.csv", []csvtable.Column{{Name: "diameter_in"}, {Name: "min_ksi"}, {Name: "max_ksi"}})
	rows := make([]strengthRow, len(table))
	for i, row := range table {
		inches, _ := row.Number("diameter_in", &faults)
		ksi, _ := row.Number("min_ksi", &faults)
		rows[i] = strengthRow{dia: unit.Inches(inches), pa: ksi * unit.KilopoundPerSquareInch}
	}
	if err := faults.Err(); err != nil {
		panic(err)
	}
	return rows
})

// Breaking is the stress in the core over its least strength: 1 breaks.
//
//	(T/A)/S
//
// T: tension, N; A: area of the core, m2; S: strength, Pa, all for the wire
// before it stretched, as wire tables give it. Where A or S is not known (0)
// it is 0, which means 'not known', never 'safe'.
func (w Wire) Breaking(t unit.Force) unit.Ratio {
	if w.CoreArea == 0 || w.Strength == 0 {
		return 0
	}
	return unit.Ratio(t.N() / w.CoreArea / w.Strength)
}

// BreakingTraced is [Wire.Breaking] with its steps recorded. state is "open" or
// "bent", symbol that of the tension.
func (w Wire) BreakingTraced(tr *trace.Trace, state, symbol string, t unit.Force) unit.Ratio {
	if w.CoreArea == 0 {
		return 0
	}
	if state == "open" {
		tr.Given("A, area of the core", w.CoreArea, "m2", fromGauge)
	}
	tr.Step("stress "+state+", stress in the core, "+state, symbol+"/A", t.N()/w.CoreArea, "Pa", "definition")
	if w.Strength == 0 {
		return 0
	}
	if state == "open" {
		tr.Given("S, least strength of the core", w.Strength, "Pa", "music wire: ASTM A228 minima, second-hand, linear between rows; else given with the gauge")
	}
	share := w.Breaking(t)
	tr.Step("share "+state+", % of breaking strength, "+state, "100 x stress "+state+"/S", share.Percent(), "%", fromAbove)
	return share
}
