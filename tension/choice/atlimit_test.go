package choice_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// A limit that is met exactly holds; a hair further it is broken, by the one
// string, or by the pair, that is farthest. The values are reckoned here.
func TestALimitHoldsUpToItself(t *testing.T) {
	req, set := sevenStrings()
	neck := req.Neck
	neck.Bass, neck.Treble = unit.MM(700), unit.MM(650)
	own := byHand(t, neck, req.Stock, set, req.Cases[0].FreqsHz, req.Tails, 70)
	each := func(strings []int, value func(i int) float64) []float64 {
		var out []float64
		for _, i := range strings {
			out = append(out, value(i))
		}
		return out
	}
	all, bent := []int{0, 1, 2, 3, 4, 5, 6}, []int{0, 3, 5}
	share := func(i int, newtons float64) float64 {
		core := req.Stock[set[i]].Core
		strength, _ := tension.MinStrength(float64(core))
		return newtons / (math.Pi / 4 * float64(core) * float64(core)) / strength
	}
	open := each(all, own.tension)
	shares := each(all, func(i int) float64 { return share(i, own.tension(i)) })
	strained := each(bent, func(i int) float64 {
		return share(i, math.Max(own.bend(t, i, 5).TensionN, own.bend(t, i, 12).TensionN))
	})
	pushes := each(bent, func(i int) float64 {
		return math.Max(own.bend(t, i, 5).BendingForceN, own.bend(t, i, 12).BendingForceN)
	})
	// A saddle needs its greatest compensation and a millimetre at both ends.
	travels := each(all, func(i int) float64 {
		_, hi, err := tension.Compensation(own.wires[i], own.lengthM(i), own.freq[i], req.ActionM[i], req.Tails[i])
		require.NoError(t, err)
		return hi + 2e-3
	})
	blank := own.neck.LeastBlank()
	length, width := blank.Length, blank.Width
	for _, row := range []struct {
		name   string
		reason choice.Reason
		at     float64 // the value that may just be
		out    float64 // +1 where more breaks the limit, -1 where less does
		string int     // the string that is farthest; 0 for the pair
		set    func(l *choice.Limits, x float64)
	}{
		{"greatest tension", choice.MostTension, slices.Max(open), 1, farthest(all, open, 1), func(l *choice.Limits, x float64) { l.MostTensionN = x }},
		{"least tension", choice.LeastTension, slices.Min(open), -1, farthest(all, open, -1), func(l *choice.Limits, x float64) { l.LeastTensionN = x }},
		{"breaking, open", choice.BreakingOpen, slices.Max(shares), 1, farthest(all, shares, 1), func(l *choice.Limits, x float64) { l.BreakingOpen = x }},
		{"breaking, bent", choice.BreakingBent, slices.Max(strained), 1, farthest(bent, strained, 1), func(l *choice.Limits, x float64) { l.BreakingBent = x }},
		{"bending force", choice.MostBendingForce, slices.Max(pushes), 1, farthest(bent, pushes, 1), func(l *choice.Limits, x float64) { l.MostBendingForceN = x }},
		{"saddle travel", choice.SaddleTravel, slices.Max(travels), 1, farthest(all, travels, 1), func(l *choice.Limits, x float64) { l.SaddleTravelM = x }},
		{"inharmonicity", choice.Inharmonicity, own.rise(), 1, 7, func(l *choice.Limits, x float64) { l.InharmonicityCents = x }},
		{"difference", choice.Difference, 50, 1, 0, func(l *choice.Limits, x float64) { l.DifferenceMM = x }},
		{"first step", choice.NutToFret1, 700 * (1 - math.Pow(2, -1.0/12)), 1, 0, func(l *choice.Limits, x float64) { l.NutToFret1MM = x }},
		{"saddle slant", choice.SaddleSlant, math.Atan(own.neck.SaddleTan()), 1, 0, func(l *choice.Limits, x float64) { l.SaddleSlantRad = x }},
		{"nut and fret slant", choice.FretSlant, math.Max(math.Atan(-own.neck.NutTan()), math.Atan(own.neck.TanSlant(24))), 1, 0,
			func(l *choice.Limits, x float64) { l.FretSlantRad = x }},
		{"blank's length", choice.BlankSize, length.MM(), 1, 0, func(l *choice.Limits, x float64) {
			l.Blanks = []fan.Blank{{Length: unit.MM(x), Width: width}, {Length: unit.MM(1), Width: unit.MM(1000)}}
		}},
		{"blank's width", choice.BlankSize, width.MM(), 1, 0, func(l *choice.Limits, x float64) {
			l.Blanks = []fan.Blank{{Length: length, Width: unit.MM(x)}, {Length: unit.MM(1), Width: unit.MM(1000)}}
		}},
	} {
		t.Run(row.name, func(t *testing.T) {
			broken := func(limit float64) []choice.Miss {
				req.Limits = choice.Limits{}
				row.set(&req.Limits, limit)
				plan, err := choice.Prepare(req)
				require.NoError(t, err)
				d, err := plan.Detail(700, 650, set)
				require.NoError(t, err)
				only := req
				only.BassMM, only.TrebleMM, only.Given = []float64{700}, []float64{650}, set
				plan, err = choice.Prepare(only)
				require.NoError(t, err)
				_, _, ok := plan.SearchBest()
				assert.Equal(t, len(d.Broken) == 0, ok, "a search keeps to the same limit")
				return d.Broken
			}
			assert.Empty(t, broken(row.at*(1+row.out*1e-12)), "kept")
			got := broken(row.at * (1 - row.out*1e-7))
			require.Len(t, got, 1, "broken")
			assert.Equal(t, row.reason, got[0].Reason)
			assert.Equal(t, row.string, got[0].String)
			if row.reason != choice.BlankSize {
				assert.InEpsilon(t, row.at, got[0].Value, 1e-10)
				assert.Empty(t, broken(got[0].Value), "met to the bit")
			}
		})
	}
}

// farthest gives the number of the string, of those with these indexes, whose
// value is greatest, or least with sign -1.
func farthest(strings []int, values []float64, sign float64) int {
	best := 0
	for k, v := range values {
		if sign*v > sign*values[best] {
			best = k
		}
	}
	return strings[best] + 1
}

// The nut's slant counts as much as the last fret's: with the last fret square
// the nut is the steepest.
func TestTheNutsSlantIsLimitedToo(t *testing.T) {
	req, set := sevenStrings()
	req.Neck.Neutral.Fret = 24
	req.Limits.FretSlantRad = 0.05
	plan, err := choice.Prepare(req)
	require.NoError(t, err)
	d, err := plan.Detail(700, 650, set)
	require.NoError(t, err)
	require.Len(t, d.Broken, 1)
	assert.Equal(t, choice.FretSlant, d.Broken[0].Reason)
	assert.InEpsilon(t, -d.NutSlantRad, d.Broken[0].Value, 1e-12)
	assert.Zero(t, d.LastSlantRad)
}
