package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/gauges/reading"
)

const commaHead = "gauge,construction,outer_in,length_in,mass_g,winding_in,date,remark\n"

// A number that a decimal comma has cut in two is refused where its second half
// is none of what its column holds.
func TestDecimalCommaIsNoticed(t *testing.T) {
	for _, c := range []struct{ name, row, want string }{
		{"a winding of 72 in", "p10,plain,0.010,21 1/4,3,72,,",
			`r.csv:2:24: mass and winding look like one number with a decimal comma ("3,72"); write "3.72"`},
		{"a cell too many", "p10,plain,0.010,21 1/4,3,72,,,", `r.csv:2: more cells than the heading has ("9 for 8"); a decimal comma? write "3.72"`},
		{"a diameter under a length", "p10,plain,0,010,21,0.45,,", `outer`},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := reading.Read(strings.NewReader(commaHead+c.row+"\n"), "r.csv", nil)
			require.ErrorContains(t, err, c.want)
			assert.Nil(t, got)
		})
	}
	for _, c := range []struct{ head, row, want string }{
		{"gauge,outer_mm,length_mm,mass_g,date", "p10,0.25,300,3,72", `mass and date look like one number with a decimal comma ("3,72")`},
		{"gauge,outer_mm,mass_g,length_mm,remark", "p10,0.25,3.1,300,5", `length and remark look like one number`},
	} {
		_, err := reading.Read(strings.NewReader(c.head+"\n"+c.row+"\n"), "r.csv", nil)
		require.ErrorContains(t, err, c.want)
	}
}

// Whole numbers side by side that can be meant so are taken.
func TestWholeNumbersAreNoDecimalComma(t *testing.T) {
	for _, text := range []string{
		"gauge,outer_mm,length_mm,mass_g,winding_mm\np10,0.25,300,3,950\n",
		"gauge,outer_mm,length_mm,mass_g,date\np10,0.25,300,3,2025\n",
		"gauge,outer_mm,length_mm,mass_g,winding_mm\np10,0.25,300,3.0,950\np11,0.28,300,0.53,\n",
	} {
		_, err := reading.Read(strings.NewReader(text), "r.csv", nil)
		require.NoError(t, err, text)
	}
}
