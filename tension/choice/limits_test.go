package choice_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/tension/choice"
)

// Every limit alone is set so that it must drop pairs, and loose so that it
// must drop none.
func TestEachLimitDropsUnderItsOwnName(t *testing.T) {
	for _, c := range []struct {
		reason       choice.Reason
		tight, loose func(l *choice.Limits)
	}{
		{choice.Difference, func(l *choice.Limits) { l.DifferenceMM = 35 }, func(l *choice.Limits) { l.DifferenceMM = 111 }},
		{choice.FretSlant, func(l *choice.Limits) { l.FretSlantRad = 0.03 }, func(l *choice.Limits) { l.FretSlantRad = 1 }},
		{choice.SaddleSlant, func(l *choice.Limits) { l.SaddleSlantRad = 0.1 }, func(l *choice.Limits) { l.SaddleSlantRad = 1.5 }},
		{choice.NutToFret1, func(l *choice.Limits) { l.NutToFret1MM = 39 }, func(l *choice.Limits) { l.NutToFret1MM = 50 }},
		{choice.BlankSize, func(l *choice.Limits) { l.Blanks = []fan.Blank{{Length: unit.MM(540), Width: unit.MM(70)}} },
			func(l *choice.Limits) {
				l.Blanks = []fan.Blank{{Length: unit.MM(100), Width: unit.MM(70)}, {Length: unit.MM(800), Width: unit.MM(90)}}
			}},
		{choice.LeastTension, func(l *choice.Limits) { l.LeastTensionN = 400 }, func(l *choice.Limits) { l.LeastTensionN = 1 }},
		{choice.MostTension, func(l *choice.Limits) { l.MostTensionN = 15 }, func(l *choice.Limits) { l.MostTensionN = 1e4 }},
		{choice.BreakingOpen, func(l *choice.Limits) { l.BreakingOpen = 0.30 }, func(l *choice.Limits) { l.BreakingOpen = 0.85 }},
		{choice.BreakingBent, func(l *choice.Limits) { l.BreakingBent = 0.30 }, func(l *choice.Limits) { l.BreakingBent = 0.95 }},
		{choice.MostBendingForce, func(l *choice.Limits) { l.MostBendingForceN = 0.5 }, func(l *choice.Limits) { l.MostBendingForceN = 1e4 }},
		{choice.Inharmonicity, func(l *choice.Limits) { l.InharmonicityCents = 0.01 }, func(l *choice.Limits) { l.InharmonicityCents = 1e3 }},
		{choice.SaddleTravel, func(l *choice.Limits) { l.SaddleTravelM = 0.0022 }, func(l *choice.Limits) { l.SaddleTravelM = 0.1 }},
	} {
		t.Run(reasonName(c.reason), func(t *testing.T) {
			req := baritone()
			req.Limits = choice.Limits{}
			c.loose(&req.Limits)
			_, r := search(t, req)
			assert.Empty(t, r.Dropped, "loose")

			req.Limits = choice.Limits{}
			c.tight(&req.Limits)
			_, r = search(t, req)
			dropped := 0
			var found *choice.Dropped
			for i, d := range r.Dropped {
				dropped += d.Pairs
				if d.Reason == c.reason {
					found = &r.Dropped[i]
				}
			}
			assert.Equal(t, r.Tried, r.Kept+dropped, "every pair is kept or counted once")
			require.NotNil(t, found, "tight: %+v", r.Dropped)
			assert.NotZero(t, found.Nearest.BassMM)
			if c.reason.OnGauge() {
				assert.Positive(t, found.Nearest.String)
				assert.GreaterOrEqual(t, found.Nearest.Gauge, 0)
			}
		})
	}
}

func reasonName(r choice.Reason) string {
	return [...]string{"kept", "reverse", "unbuildable", "difference", "fret slant", "saddle slant", "first step", "blank",
		"winding", "least tension", "most tension", "strength unknown", "breaking open", "stiffness unknown", "unreachable",
		"breaking bent", "most bending force", "inharmonicity", "saddle travel", "ordering"}[r]
}

func TestNearestMissIsTheNearest(t *testing.T) {
	req := baritone()
	req.BassMM, req.TrebleMM = []float64{700, 690, 710}[:1], []float64{640, 650, 655}
	req.Limits.DifferenceMM = 30
	_, r := search(t, req)
	require.Len(t, r.Dropped, 1)
	d := r.Dropped[0]
	assert.Equal(t, 3, d.Pairs)
	assert.Equal(t, 655.0, d.Nearest.TrebleMM)
	assert.InDelta(t, 45, d.Nearest.Value, 1e-9)
	assert.Equal(t, 30.0, d.Nearest.Limit)
	assert.Zero(t, r.Kept)
	assert.Empty(t, r.Best)
}

func TestAWindingTooShortIsNotChosen(t *testing.T) {
	req := baritone()
	_, free := search(t, req)
	low := free.Best[0].Gauges[5]
	req.Stock[low].Winding = 0.5
	_, r := search(t, req)
	require.NotEmpty(t, r.Best)
	for _, c := range r.Best {
		assert.NotEqual(t, low, c.Gauges[5])
	}
	req.Stock[low].Winding = 0.72/1 + 0.025 + 0.0101
	_, r = search(t, req)
	assert.Equal(t, low, r.Best[0].Gauges[5], "saddle tail, own length and 10 mm are enough")
}

func TestAnUnknownCore(t *testing.T) {
	req := baritone()
	for i := range req.Stock {
		if req.Stock[i].Family != "plain" {
			g := &req.Stock[i]
			g.Core, g.AreaM2, g.EA, g.EI = 0, 0, 0, 0
		}
	}
	_, r := search(t, req)
	for _, c := range r.Best {
		for _, g := range c.Gauges {
			assert.Equal(t, "plain", req.Stock[g].Family, "no breaking limit can pass a core that is not known")
		}
	}
	wound := req
	wound.Given = indexes(req.Stock, "p13", "p17", "w26", "w36", "w46", "w62")
	_, r = search(t, wound)
	require.Empty(t, r.Best)
	assert.Equal(t, choice.StrengthUnknown, r.Dropped[0].Reason)
	assert.Equal(t, 3, r.Dropped[0].Nearest.String)

	req.Limits.BreakingOpen, req.Limits.BreakingBent = 0, 0
	p, r := search(t, req)
	require.NotEmpty(t, r.Best)
	for _, i := range p.BendStrings() {
		for _, c := range r.Best {
			assert.Equal(t, "plain", req.Stock[c.Gauges[i-1]].Family, "not admissible on a bend string")
		}
	}
	d, err := p.Detail(r.Best[0].BassMM, r.Best[0].TrebleMM, r.Best[0].Gauges)
	require.NoError(t, err)
	bass := d.Strings[5]
	assert.Zero(t, bass.Cases[0].ShareOpen)
	assert.Zero(t, bass.Cases[0].InharmonicityCents)
	assert.Error(t, bass.CompensationErr)
	w, l, f := float64(req.Stock[bass.Gauge].LinearDensity), bass.LengthM, baritoneB[5]
	assert.InEpsilon(t, w*math.Pow(2*l*f, 2), bass.Cases[0].TensionN, 1e-14, "T = q")
}

func TestLimitsAreBounded(t *testing.T) {
	req := baritone()
	req.Limits.BreakingOpen, req.Limits.BreakingBent = 0.86, 0.96
	_, err := choice.Prepare(req)
	require.ErrorContains(t, err, "limits.breaking_open_percent")
	require.ErrorContains(t, err, "limits.breaking_bent_percent")
}
