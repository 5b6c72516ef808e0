package gauges_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/gauges"
)

// woundFile is six gauges of one kind, with more rows behind them.
func woundFile(rows string) string {
	text := "gauge,construction,outer_in,kind,length_in,mass_g\n"
	for _, d := range []float64{0.026, 0.032, 0.036, 0.042, 0.046, 0.052} {
		text += fmt.Sprintf("w%.0f,nickel wound,%.3f,,30,%s\n", d*1000, d, fixed(4000*d*d*0.466, 2))
	}
	return text + rows
}

func TestKindsOfAlmostTheSameName(t *testing.T) {
	const note = "two kinds with almost the same name"
	for _, c := range []struct {
		name string
		told bool
	}{
		{"nickle wound", true}, {"nickel wund", true}, {"nickelwound", true}, {"nikcel wond", true},
		{"Nickel  Wound", false}, {"bronze wound", false}, {"nickel wound 2", false}, {"plain", false},
	} {
		s := combine(t, woundFile("w40,"+c.name+",0.040,,30,2.98\n"))
		notes := strings.Join(gauge(t, s, "w40").Notes, "\n")
		if c.told {
			assert.Contains(t, notes, fmt.Sprintf(`%s, %q in 1 row and "nickel wound" in 6 rows: they are fitted apart; write one name if they are one kind`, note, c.name))
		} else {
			assert.NotContains(t, notes, note, c.name)
		}
		assert.NotContains(t, strings.Join(gauge(t, s, "w46").Notes, "\n"), note, c.name)
	}
}

// Two kinds of nearly as many rows are two kinds, and numbered ones too.
func TestKindsThatAreMeantToDiffer(t *testing.T) {
	for _, pair := range [][2]string{{"nickel wound", "nickel bound"}, {"set 1", "set 2"}, {"roll A", "roll B"}} {
		text := strings.ReplaceAll(woundFile(""), "nickel wound", pair[0])
		rows := strings.SplitAfterN(strings.ReplaceAll(strings.ReplaceAll(text, pair[0], pair[1]), "\nw", "\nv"), "\n", 2)[1]
		if pair[0] != "nickel wound" {
			rows = strings.SplitAfter(rows, "\n")[0]
		}
		for _, g := range combine(t, text+rows).Gauges {
			assert.NotContains(t, strings.Join(g.Notes, "\n"), "two kinds", pair)
		}
	}
}

// An estimate that lacks a fit for a misspelt kind is answered with the kind.
func TestEstimateOfAMisspeltKind(t *testing.T) {
	_, err := gauges.Combine(read(t, woundFile("w40,nickle wound,0.040,listed,,\n")), nil, gauges.DefaultInstruments(), gauges.Options{})
	assert.ErrorContains(t, err, `gauge "w40" has no reading, and no gauge of the kind nickle wound has one; did you mean the kind "nickel wound"? else weigh a piece of it`)
}
