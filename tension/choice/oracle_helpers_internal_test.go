package choice

import (
	"math"
	"math/rand/v2"

	"scalepair/gauges"
	"scalepair/tension"
)

// anyWire is steel of any size, plain or wound, pulled or slack.
func anyWire(rng *rand.Rand) tension.Wire {
	core := (0.2 + 0.6*rng.Float64()) * 1e-3
	area := math.Pi / 4 * core * core
	w := tension.Wire{CoreDiaM: core, CoreAreaM2: area, EA: 200e9 * area, EI: 200e9 * math.Pi / 64 * math.Pow(core, 4)}
	w.LinearDensity = 7850 * area
	if rng.IntN(2) == 0 {
		w.LinearDensity *= 1 + 8*rng.Float64()
	}
	return w
}

func anyTails(rng *rand.Rand) []tension.Tails {
	return []tension.Tails{{NutM: 0.2 * rng.Float64(), SaddleM: 0.1 * rng.Float64()}}
}

// CountPlainly is Confidence's counting without giving any pair up early.
func (p *Plan) CountPlainly(r *Result, stock *gauges.Drawer, draws int, seed uint64) (wins, beats []int) {
	pairs := make([]setOut, len(r.Compared))
	for j, candidate := range r.Compared {
		pairs[j] = p.setOut(candidate)
	}
	wins, beats = make([]int, len(pairs)), make([]int, len(pairs))
	d := p.newDrawn(len(pairs))
	for n := range draws {
		stock.Draw(rand.New(rand.NewPCG(seed, uint64(n))), d.stock)
		d.scoreAll(p, pairs[:1])
		for j := range pairs {
			d.score[j] = d.scoreOf(&pairs[j], math.Inf(1))
		}
		d.count(wins, beats)
	}
	return wins, beats
}

// leastEach puts the rung of least contribution of every string into set, the
// lighter one of equals, and says whether every string has one.
func leastEach(costs seatCosts, set []int) bool {
	for i, row := range costs {
		best := -1
		least := math.Inf(1)
		for k, c := range row {
			if c < least {
				best, least = k, c
			}
		}
		if best < 0 {
			return false
		}
		set[i] = best
	}
	return true
}
