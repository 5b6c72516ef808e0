package mark

import (
	"fmt"
	"math"
	"strings"

	"scalepair/data/fault"
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
func otherLength(p plan, readings []Reading) (faults fault.List) {
	for _, line := range p.lines {
		along := only(readings, func(r Reading) bool { return r.Line == line.line && r.along() })
		sum := func(of func(read, nominal float64) float64) (sum float64) {
			for _, r := range along {
				sum += of(r.Measured.MM(), p.nominal(r))
			}
			return sum
		}
		k := sum(func(read, nominal float64) float64 { return read * nominal }) / sum(func(_, nominal float64) float64 { return nominal * nominal })
		all := sum(func(read, nominal float64) float64 { return math.Pow(read-nominal, 2) })
		rest := sum(func(read, nominal float64) float64 { return math.Pow(read-k*nominal, 2) })
		if len(along) < leastOther || math.Abs(k-1)*line.marks[line.last()] <= fitsMM || rest > unexplained*all {
			continue
		}
		length := func(mm float64) string {
			if strings.HasSuffix(along[0].Written, "in") {
				return fmt.Sprintf("%.2f in", unit.MM(mm).Inches())
			}
			return fmt.Sprintf("%.1f mm", mm)
		}
		faults.Add(along[0].Place, fmt.Sprintf("these marks fit a %v line of %s, and the layout has one of %s (%d readings)",
			line.line, length(k*line.outer.Length.MM()), length(line.outer.Length.MM()), len(along)), "", "name the pair that was set out with --bass and --treble, or set the marks out anew")
	}
	return faults
}
