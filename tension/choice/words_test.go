package choice

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
)

func TestTargetsInWords(t *testing.T) {
	for text, want := range map[string]Target{
		"none":                         {},
		"like the reference":           {Kind: LikeReference},
		"No harder than the reference": {Kind: LikeReference, NoHarder: true},
		"even":                         {Kind: Even},
		"72 N":                         {Kind: Stated, Forces: []unit.Force{72}},
		"no harder than 12 N":          {Kind: Stated, NoHarder: true, Forces: []unit.Force{12}},
	} {
		var got, again Target
		require.NoError(t, got.UnmarshalText([]byte(text)), text)
		assert.Equal(t, want, got, text)
		require.NoError(t, again.UnmarshalText([]byte(got.String())))
		assert.Equal(t, want, again)
	}
	var bad Target
	assert.ErrorContains(t, bad.UnmarshalText([]byte("soft")), "no such word")
	assert.ErrorContains(t, bad.UnmarshalText([]byte("no harder than 12")), "unit")
	both, err := Together([]Target{{Kind: Stated, Forces: []unit.Force{70}}, {Kind: Stated, Forces: []unit.Force{80}}})
	require.NoError(t, err)
	assert.Equal(t, []unit.Force{70, 80}, both.Forces)
	_, err = Together([]Target{{Kind: Stated, Forces: []unit.Force{70}}, {Kind: Even}})
	assert.ErrorContains(t, err, "forces only")
}

func TestWords(t *testing.T) {
	var d Direction
	require.NoError(t, d.UnmarshalText([]byte("bass")))
	assert.Equal(t, TowardsBass, d)
	assert.Error(t, d.UnmarshalText([]byte("up")))
	keys, words := map[string]bool{}, map[string]bool{}
	for l := range limits {
		key, err := l.MarshalText()
		require.NoError(t, err)
		assert.NotEmpty(t, key)
		assert.NotEmpty(t, l.String())
		assert.False(t, keys[string(key)] || words[l.String()], "%s", key)
		keys[string(key)], words[l.String()] = true, true
	}
	assert.Equal(t, unit.Force(3), MostTension.Quantity(3))
	assert.Equal(t, unit.MM(3), SaddleTravel.Quantity(0.003))
	assert.Nil(t, OrderingRule.Quantity(1))
}

func TestLengths(t *testing.T) {
	assert.Equal(t, []unit.Length{0.61, 0.615, 0.618}, Lengths(0.61, 0.618, 0.005))
	assert.Equal(t, []unit.Length{0.648}, Lengths(0.648, 0.648, 0.005))
	bass, treble := DefaultRange(unit.MM(648), unit.MM(648), 330, false)
	assert.InDelta(t, 618, treble[0].MM(), 1e-9)
	assert.InDelta(t, 648, treble[len(treble)-1].MM(), 1e-9)
	assert.InDelta(t, 618, bass[0].MM(), 1e-9)
	assert.InDelta(t, 728, bass[len(bass)-1].MM(), 1e-9)
	assert.Equal(t, []unit.Length{0.6}, beyond([]unit.Length{0.6}))
	out := beyond([]unit.Length{0.600, 0.605, 0.608})
	assert.InDelta(t, 0.595, out[0].M(), 1e-12)
	assert.InDelta(t, 0.613, out[4].M(), 1e-12)
}

func TestWhatIsWrongWithARequest(t *testing.T) {
	for _, c := range []struct {
		key    string
		change func(r *Request)
	}{
		{"strings.stock", func(r *Request) { r.Usable = []int{} }},
		{"feel.tension", func(r *Request) { r.Feel.Tension.NoHarder = true }},
		{"feel.tension", func(r *Request) {
			r.Feel.Tension = Target{Kind: Even}
			r.Reference, r.Feel.BendingForce = nil, Target{}
		}},
		{"feel.bending_force", func(r *Request) { r.Feel.BendingForce = Target{Kind: Even} }},
		{"feel.bend_strings", func(r *Request) { r.Feel.BendStrings = []int{7} }},
		{"feel.reference_strings", func(r *Request) { r.Feel.ReferenceStrings = []int{1, 2, 3, 4, 5, 7} }},
		{"scales.bass", func(r *Request) { r.Bass = nil }},
		{"scales.treble", func(r *Request) { r.Treble = nil }},
	} {
		req := baritone()
		c.change(&req)
		_, err := Prepare(req)
		assert.ErrorContains(t, err, c.key+": ", c.key)
	}
}

// Of uncut wound strings no core is known, so that no limit on their breaking
// strength can be looked at. They are taken where no other string is near.
func TestUnknownCores(t *testing.T) {
	req := baritone()
	for i := range req.Stock {
		if g := &req.Stock[i]; g.Family != "plain" {
			g.Core, g.AreaM2, g.EA, g.EI = 0, 0, 0, 0
		}
	}
	p, r := search(t, req)
	require.NotEmpty(t, r.Picks)
	assert.False(t, r.NoneNear)
	d := p.drawn(r.Picks[0].Bass, r.Picks[0].Treble, r.Picks[0].Gauges)
	assert.Empty(t, d.Broken)
	for i, g := range d.Gauges {
		assert.Equal(t, i > 2, p.strengthUnknown(g))
	}
	assert.Zero(t, d.Inharmonicity)
	assert.False(t, d.ErrorUnknown)

	// A gauge of the same weight whose core is known comes first.
	known := stock()
	for i := range known {
		known[i].Label += "k"
	}
	req.Stock = append(req.Stock, known...)
	p, r = search(t, req)
	for i, g := range r.Picks[0].Gauges {
		assert.False(t, p.strengthUnknown(g), "string %d", i+1)
	}
}
