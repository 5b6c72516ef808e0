package gauges_test

import (
	"fmt"
	"strings"

	"scalepair/gauges"
)

// Four plain ends, one of them written down wrong, and one gauge that was not
// weighed.
func Example() {
	const file = `gauge,construction,outer_in,diameters,kind,length_mm,mass_g
010,plain,0.010,measured,,640,0.26
012,plain,0.012,measured,,640,0.37
013,plain,0.013,measured,,640,0.34
014,plain,0.014,measured,,640,0.50
016,plain,0.016,measured,,640,0.65
017,plain,0.017,measured,,640,0.73
015,plain,0.015,measured,listed,,
`
	readings, err := gauges.ReadReadings(strings.NewReader(file), "readings.csv", nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	stock, err := gauges.Combine(readings, nil, gauges.DefaultInstruments(), gauges.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range stock.Gauges {
		fmt.Printf("%s %.3f g/m +- %.1f %% %q\n", g.Label, g.LinearDensity*1e3, 100*g.RelU(), g.Flags())
	}
	for _, s := range stock.Suspects() {
		fmt.Println(s)
	}
	// Output:
	// 010 0.406 g/m +- 1.1 % []
	// 012 0.578 g/m +- 0.8 % []
	// 013 0.531 g/m +- 0.9 % ["suspect"]
	// 014 0.781 g/m +- 0.6 % []
	// 016 1.016 g/m +- 0.4 % []
	// 017 1.141 g/m +- 0.4 % []
	// 015 0.896 g/m +- 1.8 % ["estimated"]
	// readings.csv:4:1: gauge 013 stands 21 % below the fit made without it; up to 5.5 % would pass; 0.43 g (not 0.34 g) or 505 mm (not 640 mm) would fit; 0.43 g would fit; 0.34 g was entered: digits swapped?
}

// How long a piece of a 0.010 in plain string must be for 1 %.
func ExampleShortestPiece() {
	l, err := gauges.ShortestPiece(0.398e-3, 0.01, gauges.DefaultInstruments())
	fmt.Printf("%.0f mm %v\n", l*1e3, err)
	// Output: 726 mm <nil>
}
