package choice

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

func TestPairing(t *testing.T) {
	for _, c := range []struct {
		name   string
		tuning []unit.Frequency
		list   []int
		want   []int
	}{
		{"as many", standardE, nil, []int{1, 2, 3, 4, 5, 6}},
		{"a baritone", baritoneB, nil, []int{1, 2, 3, 4, 5, 6}},
		{"a low string more", sevenB, nil, []int{1, 2, 3, 4, 5, 6, 6}},
		{"two low strings more", eightF, nil, []int{1, 2, 3, 4, 5, 6, 6, 6}},
		{"a high string more", hz(69, 64, 59, 55, 50, 45, 40), nil, []int{1, 1, 2, 3, 4, 5, 6}},
		{"one more at each end", hz(69, 64, 59, 55, 50, 45, 40, 35), nil, []int{1, 1, 2, 3, 4, 5, 6, 6}},
		{"four of six, the low ones", hz(55, 50, 45, 40), nil, []int{3, 4, 5, 6}},
		{"four of six, the high ones", hz(64, 59, 55, 50), nil, []int{1, 2, 3, 4}},
		{"a tie goes to the treble", hz(62, 57, 52, 47, 43), nil, []int{1, 2, 3, 4, 5}},
		{"as listed", sevenB, []int{1, 2, 3, 4, 4, 5, 6}, []int{1, 2, 3, 4, 4, 5, 6}},
	} {
		t.Run(c.name, func(t *testing.T) {
			req := baritone()
			req.Cases[0].Pitches, req.Feel.ReferenceStrings = c.tuning, c.list
			req.Tails, req.Action = sameTails(len(c.tuning)), heights(len(c.tuning))
			p := must(t, req)
			assert.Equal(t, c.want, p.ReferenceStrings())
			for i, s := range c.want {
				assert.Equal(t, s <= 3, p.isBend[i], "bent are those compared with plain strings")
				assert.Equal(t, p.ref.tensions(p.wires)[s-1], p.targets.tension[i])
			}
		})
	}
}

func TestBendStringsByDefault(t *testing.T) {
	req := baritone()
	req.Reference, req.Feel = nil, DefaultFeel(false, true)
	req.Given = indexesOf(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
	assert.Equal(t, []int{1, 2}, must(t, req).BendStrings(), "the plain ones of the gauges given")
	req.Given, req.Feel = nil, DefaultFeel(false, false)
	assert.Equal(t, []int{1, 2, 3}, must(t, req).BendStrings())
	req.Cases[0].Pitches = hz(43, 38, 33, 28, 23, 18)
	assert.Empty(t, must(t, req).BendStrings(), "none on a bass")
	req.Feel.BendStrings = []int{2}
	assert.Equal(t, []int{2}, must(t, req).BendStrings())
}

func TestEvenTension(t *testing.T) {
	req := baritone()
	req.Feel.Tension = Target{Kind: Even}
	p := must(t, req)
	product := 1.0
	for _, x := range p.ref.tensions(p.wires) {
		product *= x
	}
	for _, want := range p.targets.tension {
		assert.InEpsilon(t, math.Pow(product, 1.0/6), want, 1e-12)
	}
	_, r := search(t, req)
	assert.NotEmpty(t, r.Picks)
}

// U is what no set can remove: with a gauge of every weight the least error is U.
func TestWhatNoSetCanRemove(t *testing.T) {
	for _, by := range []Combining{Mean, Worst} {
		req := baritone()
		req.Feel.BendingForce, req.Feel.Construction, req.By = Target{}, FreeConstruction, by
		req.Cases[0].Weight = 3
		req.Cases = append(req.Cases, Case{Weight: 1, Pitches: hz(57, 52, 48, 43, 38, 33)})
		for d := 8.0; d < 60; d += 0.02 {
			req.Stock = append(req.Stock, plainGauge(d))
		}
		req.Ordering, req.Limits = false, Limits{}
		req.Bass, req.Treble = span(680, 680, 1), span(650, 650, 1)
		_, r := search(t, req)
		assert.InEpsilon(t, float64(r.NotRemovable), float64(r.Best), 0.02)
		if by == Mean {
			// 2 ln f is 2 ln 2/6 lower in one quarter of the weight, on every string.
			assert.InEpsilon(t, math.Ln2/3*math.Sqrt(3.0/16), float64(r.NotRemovable), 1e-9)
		} else {
			assert.InEpsilon(t, math.Ln2/6, float64(r.NotRemovable), 1e-9)
		}
	}
}

// Where the reference cannot make a bend the term is left out for that string,
// and that is said.
func TestLostBends(t *testing.T) {
	req := baritone()
	stiff := req.Stock[req.Reference.Gauges[1]]
	stiff.EA, stiff.EI, stiff.AreaM2, stiff.Core = 0, 0, 0, 0
	req.Stock = append(req.Stock, stiff)
	req.Reference.Gauges[1] = len(req.Stock) - 1
	p := must(t, req)
	require.Len(t, p.LeftOut(), 1)
	assert.Equal(t, []int{2}, p.LeftOut()[0].Strings)
	assert.Nil(t, p.targets.force[1])
	assert.NotNil(t, p.targets.force[0])
	_, r := search(t, req)
	assert.NotEmpty(t, r.Picks)
}

// The construction of the reference is kept where a gauge of it is near.
func TestConstructionIsKept(t *testing.T) {
	req := baritone()
	req.Feel.Tension, req.Feel.BendingForce = Target{Kind: LikeReference}, Target{}
	p := must(t, req)
	set, _ := p.Suggest(unit.MM(690), unit.MM(650))
	for i, g := range set {
		assert.Equal(t, i < 3, p.wires[g].Plain, "string %d", i+1)
	}
	// Without plain gauges above p17 nothing plain is near for string 3.
	req.Usable = nil
	for i, g := range req.Stock {
		if !p.wires[i].Plain || g.Outer < unit.Inches(0.0175) {
			req.Usable = append(req.Usable, i)
		}
	}
	set, _ = must(t, req).Suggest(unit.MM(690), unit.MM(650))
	assert.False(t, p.wires[set[2]].Plain)
	assert.True(t, p.wires[set[1]].Plain)
}
