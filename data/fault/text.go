package fault

import (
	"fmt"
	"regexp"
	"strings"
)

// mostLines is how many messages are printed at once: more are not read, and
// as a rule they follow from the first.
const mostLines = 20

// alikeFrom is from how many faults on that say the same of one input one
// message stands for all of them.
const alikeFrom = 4

// Error returns one message a line. Where one thing is wrong in many places, one
// message names the first and counts the others; of many unlike faults the
// first are printed and the rest counted.
func (l List) Error() string {
	grouped := l.grouped()
	lines := make([]string, 0, mostLines+1)
	for i, f := range grouped {
		if i == mostLines && len(grouped) > mostLines+1 {
			lines = append(lines, rest(grouped[i:]).Error())
			break
		}
		lines = append(lines, f.Error())
	}
	return strings.Join(lines, "\n")
}

// saying is what faults have in common that are one for the reader: remedies
// that differ in their numbers only say the same.
type saying struct{ input, what, remedy string }

func (f Fault) saying() saying {
	return saying{f.Place.Input, f.What, numbers.ReplaceAllString(f.Remedy, "0")}
}

var numbers = regexp.MustCompile(`\d+(\.\d+)?`)

// grouped returns the list with one fault for many that say the same.
func (l List) grouped() List {
	count, last := map[saying]int{}, map[saying]int{}
	for _, f := range l {
		count[f.saying()]++
		last[f.saying()] = f.Place.Line
	}
	var out List
	for _, f := range l {
		key := f.saying()
		switch n := count[key]; {
		case n == 0: // it stands in an earlier one
			continue
		case n >= alikeFrom && last[key] > f.Place.Line:
			f.What += fmt.Sprintf(", here and in %d more places down to line %d", n-1, last[key])
			count[key] = 0
		}
		out = append(out, f)
	}
	return out
}

// rest stands for faults that are not printed.
func rest(l List) Fault {
	what := fmt.Sprintf("%d more faults", len(l))
	if last := l[len(l)-1].Place; last.Line > 0 {
		what += fmt.Sprintf(", down to line %d", last.Line)
	}
	return Fault{Place: Place{Input: l[0].Place.Input}, What: what, Remedy: "put those above right first, and run again"}
}
