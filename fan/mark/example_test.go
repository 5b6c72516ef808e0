package mark_test

import (
	"fmt"
	"strings"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
)

// measuredBench is an invented measuring: the bass line of a 700/650 mm board
// with 24 frets, both passes, diagonals and nut offset. Mark 9 was drawn 0.6 mm
// too near the bridge, and the ruler misread by 2 mm at mark 4.
const measuredBench = `# 14 March 2026, bass line, 21 C
line,pass,fret,measured_mm,resolution_mm
bass,ruler,1,39.5,0.5
bass,ruler,2,76.5,0.5
bass,ruler,3,111.5,0.5
bass,ruler,4,146.5,0.5
bass,ruler,5,175.5,0.5
bass,ruler,6,205.0,0.5
bass,ruler,7,233.0,0.5
bass,ruler,8,259.0,0.5
bass,ruler,9,284.5,0.5
bass,ruler,10,307.0,0.5
bass,ruler,11,329.0,0.5
bass,ruler,12,350.0,0.5
bass,ruler,13,369.5,0.5
bass,ruler,14,388.0,0.5
bass,ruler,15,405.5,0.5
bass,ruler,16,422.0,0.5
bass,ruler,17,438.0,0.5
bass,ruler,18,452.5,0.5
bass,ruler,19,466.5,0.5
bass,ruler,20,479.5,0.5
bass,ruler,21,492.0,0.5
bass,ruler,22,503.5,0.5
bass,ruler,23,514.5,0.5
bass,ruler,24,525.0,0.5
bass,caliper,1,39.25,0.05
bass,caliper,2,37.05,0.05
bass,caliper,3,35.00,0.05
bass,caliper,4,33.05,0.05
bass,caliper,5,31.15,0.05
bass,caliper,6,29.40,0.05
bass,caliper,7,27.75,0.05
bass,caliper,8,26.20,0.05
bass,caliper,9,25.40,0.05
bass,caliper,10,22.70,0.05
bass,caliper,11,21.95,0.05
bass,caliper,12,20.95,0.05
bass,caliper,13,19.65,0.05
bass,caliper,14,18.50,0.05
bass,caliper,15,17.60,0.05
bass,caliper,16,16.50,0.05
bass,caliper,17,15.65,0.05
bass,caliper,18,14.60,0.05
bass,caliper,19,13.95,0.05
bass,caliper,20,13.10,0.05
bass,caliper,21,12.40,0.05
bass,caliper,22,11.70,0.05
bass,caliper,23,10.95,0.05
bass,caliper,24,10.50,0.05
diagonal from bass nut,,,506.5,0.5
diagonal from treble nut,,,511.0,0.5
nut offset,,,16.65,0.05
`

func exampleLayout() *fan.Layout {
	s := fan.Spec{Strings: 6, Neck: fan.DefaultNeck()}
	s.Bass, s.Treble, s.NutSpread, s.SaddleSpread = unit.MM(700), unit.MM(650), unit.MM(43), unit.MM(62)
	l, err := fan.New(s)
	if err != nil {
		panic(err)
	}
	return l
}

// The marks were measured twice; which of them must be redone before the saw
// touches wood?
func ExampleCheck() {
	readings, err := mark.ReadReadings(strings.NewReader(measuredBench), "bench.csv")
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := mark.Check(exampleLayout(), readings, mark.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range []int{4, 8, 9, 10, 24} {
		m := report.Lines[mark.Bass].Marks[n-1]
		fmt.Printf("mark %d: %.2f ± %.2f mm, error %+.2f mm, %+.1f cents: %v\n", n, m.Measured.MM(), m.U.MM(), plain(m.Error.MM()), plain(m.ErrorCents.Value()), m.Verdict)
	}
	for _, s := range report.Slips {
		fmt.Printf("%v at %v %d, %+.2f mm\n", s.Kind, s.Line, s.Fret, s.Size.MM())
	}
	fmt.Printf("nut offset: %.2f mm, nominal %.2f mm: %v\n", report.Across.Measured.MM(), report.Across.Nominal.MM(), report.Across.Verdict)
	fmt.Println("passed:", report.Pass)
	// Output:
	// mark 4: 144.44 ± 0.05 mm, error +0.03 mm, +0.1 cents: within
	// mark 8: 258.97 ± 0.05 mm, error -0.06 mm, -0.2 cents: within
	// mark 9: 284.37 ± 0.05 mm, error +0.59 mm, +2.5 cents: outside
	// mark 10: 307.05 ± 0.05 mm, error -0.08 mm, -0.4 cents: within
	// mark 24: 525.03 ± 0.07 mm, error +0.03 mm, +0.3 cents: within
	// ruler reading at bass 4, +2.09 mm
	// mark off at bass 9, +0.59 mm
	// nut offset: 16.60 mm, nominal 16.63 mm: within
	// passed: false
}

// plain keeps -0.00 out of print.
func plain(x float64) float64 {
	if x > -0.005 && x < 0 {
		return 0
	}
	return x
}
