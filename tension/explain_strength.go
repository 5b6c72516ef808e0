package tension

import "sort"

// ExplainStrength shows the work for [MinStrength]: the rows of the table on
// both sides of a diameter and the line between them. It gives nothing where
// the strength is not known. The symbols d and S are those of [Explain].
func ExplainStrength(diaM float64) []Step {
	pa, outside := MinStrength(diaM)
	if pa == 0 {
		return nil
	}
	table := strengthTable()
	k := &work{digits: usualDigits}
	name := "least strength of music wire of that diameter"
	if outside {
		name += " (outside the table, a guess)"
	}
	if diaM <= table[0].diaM {
		k.given("S", name, pa, "Pa", strengthSource+", its first row")
		return k.steps
	}
	above := sort.Search(len(table)-1, func(i int) bool { return table[i].diaM >= diaM })
	lo, hi := table[above-1], table[above]
	k.given("dlo", "the row below", lo.diaM, "m", strengthSource)
	k.given("Slo", "its least strength", lo.pa, "Pa", strengthSource)
	k.given("dhi", "the row above", hi.diaM, "m", strengthSource)
	k.given("Shi", "its least strength", hi.pa, "Pa", strengthSource)
	k.step("S", name, "Slo + (Shi - Slo) (d - dlo)/(dhi - dlo)", pa, "Pa", "straight line between rows; beyond them, on")
	return k.steps
}

const strengthSource = "ASTM A228, table of tensile strength, as reproduced in a wire distributor's data page"
