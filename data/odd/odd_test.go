package odd_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/fault"
	"scalepair/data/odd"
)

var (
	tension = odd.Usual{Quantity: "tension", Measure: odd.Newtons, Low: 20, High: 150}
	room    = odd.Usual{Quantity: "room", Measure: odd.Millimetres, Low: 4.5, High: odd.Open}
)

func at(line, column int) fault.Place {
	return fault.Place{Input: "build.toml", Line: line, Column: column}
}

func TestHolds(t *testing.T) {
	for _, c := range []struct {
		name string
		u    *odd.Usual
		x    float64
		want bool
	}{
		{"inside", &tension, 70, true},
		{"both bounds are usual", &tension, 20, true},
		{"both bounds are usual", &tension, 150, true},
		{"below", &tension, math.Nextafter(20, 0), false},
		{"above", &tension, math.Nextafter(150, 200), false},
		{"no number", &tension, math.NaN(), false},
		{"an open end", &room, 1e300, true},
		{"an open end has no end", &room, math.Inf(1), true},
	} {
		assert.Equal(t, c.want, c.u.Holds(c.x), "%s: %v", c.name, c.x)
	}
}

func TestLookKeepsWhatIsOddAsItStands(t *testing.T) {
	var l odd.List
	l.Look(&tension, at(1, 1), "of string 1", 70)
	l.Look(&tension, at(2, 1), "of string 2", 300)
	assert.Equal(t, odd.List{{Place: at(2, 1), About: "of string 2", X: 300, Usual: tension}}, l)
}

func TestIncludeFillsPlaces(t *testing.T) {
	var l, others odd.List
	others.Look(&tension, fault.Place{}, "", 1)
	others.Look(&tension, at(9, 9), "", 2)
	l.Include(at(3, 4), others)
	require.Len(t, l, 2)
	assert.Equal(t, at(3, 4), l[0].Place)
	assert.Equal(t, at(9, 9), l[1].Place)
	assert.Equal(t, fault.Place{}, others[0].Place, "the other list stays")
}

func TestSortedByPlaceWithoutRepeats(t *testing.T) {
	var l odd.List
	l.Look(&room, at(7, 2), "", 1)
	l.Look(&tension, at(7, 1), "", 300)
	l.Look(&tension, at(2, 5), "", 10)
	l.Look(&tension, at(7, 1), "", 300)
	l.Look(&tension, fault.Place{Input: "--bass"}, "", 5)
	var got []float64
	for _, v := range l.Sorted() {
		got = append(got, v.X)
	}
	assert.Equal(t, []float64{5, 10, 300, 1}, got)
	assert.Len(t, l, 5, "the list itself stays")
}

// One quantity of one input makes one group, told by the value that is farthest
// outside: twice the upper bound is as far as half the lower.
func TestGroups(t *testing.T) {
	var l odd.List
	l.Look(&tension, at(1, 1), "a", 200)                      // 1.33 times
	l.Look(&tension, at(2, 1), "b", 5)                        // 4 times below
	l.Look(&tension, at(3, 1), "c", 450)                      // 3 times
	l.Look(&room, at(4, 1), "d", 1)                           // another quantity
	l.Look(&tension, fault.Place{Input: "--gauges"}, "e", 10) // another input
	groups := l.Groups()
	require.Len(t, groups, 3)
	assert.Equal(t, "e", groups[0].Worst.About)
	assert.Equal(t, "b", groups[1].Worst.About)
	var others []string
	for _, v := range groups[1].Others {
		others = append(others, v.About)
	}
	assert.Equal(t, []string{"a", "c"}, others)
	assert.Equal(t, "d", groups[2].Worst.About)
}

// Bounds on both sides of 0 have no quotient: widths of the range count.
func TestGroupsAcrossZero(t *testing.T) {
	slant := odd.Usual{Quantity: "slant", Low: -30, High: 30}
	var l odd.List
	l.Look(&slant, at(1, 1), "near", 33)
	l.Look(&slant, at(1, 1), "far", -40)
	assert.Equal(t, "far", l.Groups()[0].Worst.About)
}

func TestGroupsOfNothing(t *testing.T) {
	assert.Empty(t, odd.List(nil).Groups())
	assert.Empty(t, odd.List(nil).Sorted())
}
