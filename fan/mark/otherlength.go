package mark

import (
	"fmt"
	"math"
	"strings"

	"scalepair/data/unit"
)

// unexplained is the greatest part of the squared errors of a line that another
// length may leave over, to be taken for the cause (judgement: the scatter of any
// drawing leaves less, where a single slip leaves most).
const unexplained = 0.05

// otherLength reports marks that were set out for another scale length: all
// distances along a line are too long or too short in one ratio,
//
//	k = sum(read nominal) / sum(nominal^2)
//
// by least squares. The last mark must lie farther off than any drawing, fitsMM.
func (in *inspector) otherLength(readings []Reading) {
	for _, line := range []Line{Bass, Treble} {
		var first *Reading
		n, product, square := 0, 0.0, 0.0
		along := func(use func(read, nominal float64)) {
			for i, r := range readings {
				if r.Line == line && (r.Kind == FromNut || r.Kind == Step) {
					if first == nil {
						first = &readings[i]
					}
					use(r.Measured.MM(), in.plan.nominal(r))
				}
			}
		}
		along(func(read, nominal float64) { n, product, square = n+1, product+read*nominal, square+nominal*nominal })
		if n < leastOther {
			continue
		}
		k, all, rest := product/square, 0.0, 0.0
		along(func(read, nominal float64) {
			all, rest = all+math.Pow(read-nominal, 2), rest+math.Pow(read-k*nominal, 2)
		})
		p := in.plan.lines[line]
		if math.Abs(k-1)*p.marks[p.last()] <= fitsMM || rest > unexplained*all {
			continue
		}
		length := func(mm float64) string {
			if strings.HasSuffix(first.Written, "in") {
				return fmt.Sprintf("%.2f in", unit.MM(mm).Inches())
			}
			return fmt.Sprintf("%.1f mm", mm)
		}
		in.faults.Add(first.place(), fmt.Sprintf("these marks fit a %v line of %s, and the layout has one of %s (%d readings)", line, length(k*p.lengthMM), length(p.lengthMM), n), "",
			"name the pair that was set out with --bass and --treble, or set the marks out anew")
	}
}
