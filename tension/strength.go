package tension

import (
	"bytes"
	"math"
	"sort"
	"sync"

	"scalepair/data"
	"scalepair/data/csvtable"
	"scalepair/data/unit"
)

// edgeM is how far a diameter may stand past the ends of the strength table
// and still count as inside: a nanometre, far below what a caliper shows and
// far above the rounding of a conversion from inches.
const edgeM = 1e-9

// MinStrength is the least tensile strength of music wire by diameter in Pa,
// from the minima of ASTM A228 (data.WireStrength), linear in diameter between
// rows.
//
// Thinner than the first row (0.102 mm) it is that row's; thicker than the
// last (0.762 mm) the slope of the last two rows goes on, down to 0 at
// 6.35 mm; outside is then true, and the value a guess. A diameter that is not above 0,
// or so thick that nothing is left, gives 0: not known.
func MinStrength(diaM float64) (pa float64, outside bool) {
	table := strengthTable()
	first, last := table[0], table[len(table)-1]
	outside = !(diaM >= first.diaM-edgeM && diaM <= last.diaM+edgeM)
	switch {
	case !(diaM > 0):
		return 0, true
	case diaM <= first.diaM:
		return first.pa, outside
	}
	above := sort.Search(len(table)-1, func(i int) bool { return table[i].diaM >= diaM })
	lo, hi := table[above-1], table[above]
	slope := (hi.pa - lo.pa) / (hi.diaM - lo.diaM)
	return max(0, hi.pa+float64(slope*(diaM-hi.diaM))), outside
}

// strengthRow is the least strength at one diameter.
type strengthRow struct{ diaM, pa float64 }

// strengthTable reads the embedded table once. It is rising in diameter; that
// and its numbers are checked by a test, so a fault here is a bug.
var strengthTable = sync.OnceValue(func() []strengthRow {
	table, faults := csvtable.Scan(bytes.NewReader(data.WireStrength()), "a228.csv", []csvtable.Column{{Name: "diameter_in"}, {Name: "min_ksi"}, {Name: "max_ksi"}})
	rows := make([]strengthRow, len(table))
	for i, row := range table {
		inches, _ := row.Number("diameter_in", &faults)
		ksi, _ := row.Number("min_ksi", &faults)
		rows[i] = strengthRow{diaM: inches * unit.Inch, pa: ksi * unit.KilopoundPerSquareInch}
	}
	if err := faults.Err(); err != nil {
		panic(err)
	}
	return rows
})

// BreakingShare is the stress in the core over its least strength: 1 breaks.
//
//	share = (T/A)/S
//
// T: tension, N; A: area of the core, m2; S: strength, Pa, all for the wire
// before it stretched, as wire tables give it. Where A or S is not known (0)
// the share is 0, which means 'not known', never 'safe'.
func BreakingShare(tensionN, areaM2, strengthPa float64) float64 {
	if areaM2 == 0 || strengthPa == 0 {
		return 0
	}
	return tensionN / areaM2 / strengthPa
}

// HighestFreq is the pitch in Hz at which plain wire of a length breaks,
// whatever its gauge but for S.
//
//	f = sqrt(S (1 + S/E)/rho)/(2 L)
//
// S: strength, Pa; E: stretch modulus, Pa, 0 where not known, for a wire that
// does not stretch; rho: density, kg/m3; L: length, m; rho and L above 0. It is
// [FreqAt] at T = S A with w = rho A, from which the area falls out: the plus
// sign stands because the stretched wire is lighter and so sounds higher.
// Without the stretch: f = sqrt(S/rho)/(2 L).
func HighestFreq(strengthPa, youngsPa, rho, lengthM float64) float64 {
	strain := 0.0
	if youngsPa != 0 {
		strain = strengthPa / youngsPa
	}
	return math.Sqrt(strengthPa*(1+strain)/rho) / (2 * lengthM)
}
