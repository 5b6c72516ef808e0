package choice_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/gauges"
	"scalepair/tension"
	"scalepair/tension/choice"
)

// played is an instrument strung and tuned, as a builder without this package
// would reckon it: geometry from package fan, one string after another from
// package tension.
type played struct {
	neck  fan.Frame
	wires []tension.Wire
	freq  []float64
	tails []tension.Tails
	cents float64
}

func byHand(t *testing.T, neck fan.Spec, stock []gauges.Gauge, set []int, freq []float64, tails []tension.Tails, cents float64) played {
	neck.Strings = len(freq)
	p := played{freq: freq, tails: tails, cents: cents}
	for _, g := range set {
		p.wires = append(p.wires, choice.WireOf(stock[g]))
		neck.Diameters = append(neck.Diameters, stock[g].Outer)
	}
	var err error
	p.neck, err = fan.NewFrame(neck)
	require.NoError(t, err)
	return p
}

func (p played) lengthM(i int) float64 { return p.neck.Length(i).M() }

func (p played) tension(i int) float64 { return tension.Open(p.wires[i], p.lengthM(i), p.freq[i]) }

// bend is the bend of string i at a fret: towards the bass side, where the
// slant counts as it is, for the treble half with a middle string, else towards
// the treble side, where it counts the other way.
func (p played) bend(t *testing.T, i int, fret float64) tension.Bend {
	middle := float64(len(p.freq)-1) / 2
	toBass := float64(i) <= middle
	slant := p.neck.TanSlant(fret)
	if !toBass {
		slant = -slant
	}
	b, err := tension.BendingForce(p.wires[i], tension.BendAt{
		LengthM: p.lengthM(i), FreqHz: p.freq[i], Fret: fret, Cents: p.cents, TanSlant: slant,
		Tails: p.tails[i], ReachM: p.neck.Reach(i, fret, toBass).M(),
	})
	require.NoError(t, err, "string %d at fret %v", i+1, fret)
	return b
}

// rise is the inharmonicity of the last string.
func (p played) rise() float64 {
	last := len(p.freq) - 1
	return tension.InharmonicityCents(tension.Inharmonicity(p.wires[last], p.tension(last), p.lengthM(last)))
}

// squareMean is the mean of the squared ln(value/target).
func squareMean(values, targets []float64) float64 {
	sum := 0.0
	for i, v := range values {
		sum += math.Pow(math.Log(v/targets[i]), 2) / float64(len(values))
	}
	return sum
}

// sevenStrings asks for a seven-string on 700/650 that feels like a fanned
// six-string in E, bent on strings 1, 4 and 6: to either side, and the middle
// one.
func sevenStrings() (choice.Request, []int) {
	req := baritone()
	req.Cases[0].FreqsHz = hz(64, 59, 55, 50, 45, 40, 35)
	req.Neck.NutSpacing.Rule, req.Neck.SaddleSpacing.Rule = fan.EqualGaps, fan.EqualGaps
	req.Tails, req.ActionM = sameTails(7), heights(7)
	for i := range req.Tails {
		req.Tails[i].NutM += 0.01 * float64(i)
		req.ActionM[i] += 1e-4 * float64(i)
	}
	req.BassMM, req.TrebleMM, req.Limits = []float64{700}, []float64{650}, choice.Limits{}
	req.Reference.Neck.Bass, req.Reference.Neck.Treble = unit.MM(660), unit.MM(635)
	req.Reference.Tails[2].NutM = 0.1
	req.Reference.FreqsHz = slices.Clone(standardE)
	req.Feel.BendStrings, req.Feel.BendCents = []int{1, 4, 6}, 70
	req.Feel.Weights = choice.Weights{Tension: 2, BendingForce: 0.7, Overtone: 0.3}
	return req, indexes(req.Stock, "p9", "p12", "p15", "w24", "w32", "w42", "w56")
}

// A pair with a set, reckoned from the definitions of DESIGN.md: targets string
// by string, misfits, score, slants, totals.
func TestADetailByHand(t *testing.T) {
	for name, row := range map[string]struct {
		how choice.Mapping
		// like gives what string i of seven is like, of six values.
		like func(i int, values []float64) float64
		// rise is the stated inharmonicity, 0 for the reference's.
		rise float64
	}{
		"from the treble": {choice.FromTreble, func(i int, v []float64) float64 { return v[min(i, 5)] }, 0},
		// String i of seven stands 5 i/6 of the way along six: strings 1 and 7
		// like 1 and 6, string 4 half way between 3 and 4.
		"across": {choice.Across, func(i int, v []float64) float64 {
			at := 5 * float64(i) / 6
			lo := min(int(at), 4)
			return math.Pow(v[lo], 1-(at-float64(lo))) * math.Pow(v[lo+1], at-float64(lo))
		}, 0},
		"a rise that is not reached": {choice.FromTreble, func(i int, v []float64) float64 { return v[min(i, 5)] }, 900},
		"a rise that is passed":      {choice.FromTreble, func(i int, v []float64) float64 { return v[min(i, 5)] }, 3},
	} {
		t.Run(name, func(t *testing.T) {
			req, set := sevenStrings()
			req.Feel.MoreStrings = row.how
			if row.rise > 0 {
				req.Feel.Overtone = choice.Target{Source: choice.Stated, Values: []float64{row.rise}}
			}
			plan, err := choice.Prepare(req)
			require.NoError(t, err)
			d, err := plan.Detail(700, 650, set)
			require.NoError(t, err)

			neck := req.Neck
			neck.Bass, neck.Treble = unit.MM(700), unit.MM(650)
			own := byHand(t, neck, req.Stock, set, req.Cases[0].FreqsHz, req.Tails, 70)
			r := req.Reference
			ref := byHand(t, r.Neck, req.Stock, r.Gauges, r.FreqsHz, r.Tails, 70)

			var refTension, wanted, tensions, wantedBendingForce, pushes []float64
			for i := range r.FreqsHz {
				refTension = append(refTension, ref.tension(i))
			}
			for i := range own.freq {
				wanted, tensions = append(wanted, row.like(i, refTension)), append(tensions, own.tension(i))
			}
			for _, i := range []int{0, 3, 5} {
				for k, fret := range []float64{5, 12} {
					var refBendingForce []float64
					for j := range r.FreqsHz {
						refBendingForce = append(refBendingForce, ref.bend(t, j, fret).BendingForceN)
					}
					bendingForce, target := own.bend(t, i, fret).BendingForceN, row.like(i, refBendingForce)
					pushes, wantedBendingForce = append(pushes, bendingForce), append(wantedBendingForce, target)
					got := d.Strings[i].Cases[0].Bends[k]
					assert.InEpsilon(t, target, got.TargetN, 1e-12, "wanted bending force of string %d at fret %v", i+1, fret)
					assert.InEpsilon(t, bendingForce, got.Bend.BendingForceN, 1e-12, "bending force of string %d at fret %v", i+1, fret)
				}
			}
			rise, target := own.rise(), ref.rise()
			if row.rise > 0 {
				target = row.rise
			}
			above := math.Max(0, math.Log(rise/target))
			p2, q2 := squareMean(tensions, wanted), squareMean(pushes, wantedBendingForce)
			assert.InEpsilon(t, 100*math.Sqrt(p2), d.TensionMisfit, 1e-10)
			assert.InEpsilon(t, 100*math.Sqrt(q2), d.BendingForceMisfit, 1e-10)
			assert.InDelta(t, 100*above, d.OvertoneMisfit, 1e-9)
			assert.InEpsilon(t, 2*p2+0.7*q2+0.3*above*above, d.Score, 1e-10)
			stringsByHand(t, req, set, own, d, wanted)
		})
	}
}

// stringsByHand compares string by string what no target has a part in.
func stringsByHand(t *testing.T, req choice.Request, set []int, own played, d *choice.Detail, wanted []float64) {
	t.Helper()
	all, bassHalf := 0.0, 0.0
	for i, s := range d.Strings {
		c, w := s.Cases[0], own.wires[i]
		assert.InEpsilon(t, own.lengthM(i), s.LengthM, 1e-12, "own length of string %d", i+1)
		assert.InEpsilon(t, own.tension(i), c.TensionN, 1e-12, "tension of string %d", i+1)
		assert.InEpsilon(t, wanted[i], s.TargetN, 1e-12, "wanted tension of string %d", i+1)
		g := req.Stock[set[i]]
		area := math.Pi / 4 * float64(g.Core*g.Core)
		strength, _ := tension.MinStrength(float64(g.Core))
		assert.InEpsilon(t, own.tension(i)/area/strength, c.ShareOpen, 1e-12, "breaking share of string %d", i+1)
		for k, fret := range []float64{5, 12} {
			if c.Bends != nil {
				assert.InEpsilon(t, own.bend(t, i, fret).TensionN/area/strength, c.Bends[k].Share, 1e-12, "breaking share of string %d, bent", i+1)
			}
		}
		lo, hi, err := tension.Compensation(w, own.lengthM(i), own.freq[i], req.ActionM[i], req.Tails[i])
		require.NoError(t, err)
		assert.Equal(t, [2]float64{lo, hi}, s.CompensationM, "compensation of string %d", i+1)
		all += c.TensionN
		switch {
		case i == 3:
			bassHalf += c.TensionN / 2
		case i > 3:
			bassHalf += c.TensionN
		}
	}
	assert.InEpsilon(t, own.rise(), d.Strings[6].Cases[0].InharmonicityCents, 1e-12)
	assert.InEpsilon(t, all, d.Totals[0].TensionN, 1e-12)
	assert.InEpsilon(t, bassHalf, d.Totals[0].BassHalfN, 1e-12, "the middle string counts half")
	assert.InEpsilon(t, all-bassHalf, d.Totals[0].TrebleHalfN, 1e-12)

	assert.InEpsilon(t, math.Atan(own.neck.NutTan()), d.NutSlantRad, 1e-12)
	assert.InEpsilon(t, math.Atan(own.neck.TanSlant(24)), d.LastSlantRad, 1e-12)
	assert.InEpsilon(t, math.Atan(own.neck.SaddleTan()), d.SaddleSlantRad, 1e-12)
	assert.InEpsilon(t, 700*(1-math.Pow(2, -1.0/12)), d.NutToFret1MM, 1e-12, "nut to fret 1 on the bass string")
}

// A wound string's rise is only a lower bound, so that a wound reference says
// nothing about a plain string, nor a plain one about a wound; a stated rise
// holds for both.
func TestOvertonesOfLikeWithLike(t *testing.T) {
	for _, row := range []struct {
		name, reference, lowest string
		stated                  float64
		counts                  bool
	}{
		{"wound like wound", "w24", "w68", 0, true},
		{"plain like plain", "p8", "p22", 0, true},
		{"plain like wound", "w24", "p22", 0, false},
		{"wound like plain", "p8", "w68", 0, false},
		{"stated, plain", "w24", "p22", 0.01, true},
		{"stated, wound", "p8", "w68", 0.01, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			req, set := sevenStrings()
			set[6] = indexes(req.Stock, row.lowest)[0]
			req.Reference.Gauges[5] = indexes(req.Stock, row.reference)[0]
			req.Reference.FreqsHz[5] = 110 // so that a thin gauge is pulled tight enough to rise little
			target := 0.0
			if row.stated > 0 {
				target, req.Feel.Overtone = row.stated, choice.Target{Source: choice.Stated, Values: []float64{row.stated}}
			} else {
				r := req.Reference
				target = byHand(t, r.Neck, req.Stock, r.Gauges, r.FreqsHz, r.Tails, 70).rise()
			}
			plan, err := choice.Prepare(req)
			require.NoError(t, err)
			d, err := plan.Detail(700, 650, set)
			require.NoError(t, err)
			rise := d.Strings[6].Cases[0].InharmonicityCents
			require.Greater(t, rise, target, "the rise must stand above the wanted one for this to say anything")
			want := 0.0
			if row.counts {
				want = 100 * math.Log(rise/target)
			}
			assert.InDelta(t, want, d.OvertoneMisfit, 1e-9)
		})
	}
}

// Of six strings three are the bass half.
func TestHalvesOfSixStrings(t *testing.T) {
	req := baritone()
	p, err := choice.Prepare(req)
	require.NoError(t, err)
	d, err := p.Detail(700, 650, indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62"))
	require.NoError(t, err)
	sum := func(strings ...int) (newtons float64) {
		for _, i := range strings {
			newtons += d.Strings[i].Cases[0].TensionN
		}
		return newtons
	}
	assert.InEpsilon(t, sum(0, 1, 2), d.Totals[0].TrebleHalfN, 1e-12)
	assert.InEpsilon(t, sum(3, 4, 5), d.Totals[0].BassHalfN, 1e-12)
}
