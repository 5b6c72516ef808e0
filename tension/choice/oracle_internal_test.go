package choice

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/tension"
)

// SearchPlainly is the straightforward search: every pair, every string, every
// gauge of the stock in full, one processor. It is the oracle that Search is
// held against, to the bit.
func (p *Plan) SearchPlainly() *Result {
	var found gathered
	found.front = front{}
	found.ranking.room = len(p.req.BassMM) * len(p.req.TrebleMM)
	w := newSearcher(p)
	for b := range p.req.BassMM {
		for t := range p.req.TrebleMM {
			frame, total, miss := w.tryPlainly(p.req.BassMM[b], p.req.TrebleMM[t])
			if miss.Reason != Kept {
				found.dropped.drop(miss)
				continue
			}
			g := &found
			g.kept++
			g.worst = max(g.worst, total.tension)
			difference := abs(frame)
			g.ranking.offer(ranked{total.score(p.req.Feel.Weights), difference, b, t})
			g.front.offer(point{total.tension, total.bendingForce, difference, b, t})
		}
	}
	return p.result(found)
}

func (w *searcher) tryPlainly(bassMM, trebleMM float64) (float64, squares, Miss) {
	frame, miss := w.p.frameWithin(bassMM, trebleMM)
	if miss.Reason != Kept {
		return 0, squares{}, miss
	}
	for i := range w.seats {
		w.p.seatOn(&frame, i, &w.seats[i])
	}
	total, miss := w.chooseSetPlainly()
	miss.BassMM, miss.TrebleMM = bassMM, trebleMM
	return frame.Difference().MM(), total, miss
}

func (w *searcher) chooseSetPlainly() (squares, Miss) {
	set := make([]int, w.p.strings)
	one := make([]int, 1)
	w.withAll()
	for i := range w.costs {
		w.fillCosts(i)
		if !leastEach(w.costs[i:i+1], one) {
			return squares{}, w.emptyChoice()
		}
	}
	leastEach(w.costs, set)
	if w.p.req.Ordering && !w.p.rungs.ordered(set) && !w.p.rungs.bestOrdered(w.costs, w.steps, set) {
		return squares{}, Miss{Reason: OrderingRule, Gauge: -1}
	}
	var total squares
	for i, k := range set {
		part, _ := w.contribution(i, k)
		total.add(part)
	}
	return total, Miss{Gauge: -1}
}

// RequireSameAsPlain searches both ways.
func RequireSameAsPlain(t require.TestingT, req Request) *Result {
	p, err := Prepare(req)
	require.NoError(t, err)
	plain, fast := p.SearchPlainly(), p.Search()
	require.Equal(t, plain, fast)
	for goroutines := 1; goroutines <= 3; goroutines++ {
		best, dropped, ok := p.bestBy(goroutines)
		require.Equal(t, len(plain.Best) > 0, ok)
		if ok {
			require.Equal(t, plain.Best[0], best)
		} else {
			require.Equal(t, plain.Dropped, dropped)
		}
	}
	return fast
}

// Every place of a grid is visited once.
func TestInwardVisitsEveryPlaceOnce(t *testing.T) {
	for _, size := range [][2]int{{1, 1}, {1, 7}, {2, 2}, {13, 15}, {16, 3}, {5, 17}} {
		seen := map[[2]int]int{}
		inward(size[0], size[1], func(r, c int) { seen[[2]int{r, c}]++ })
		assert.Len(t, seen, size[0]*size[1])
		for at, times := range seen {
			assert.Equal(t, 1, times)
			assert.True(t, at[0] < size[0] && at[1] < size[1])
		}
	}
}

// The compensation's need must fall with length, since travelMemo builds on it.
func TestSaddleNeedFallsWithLength(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	p := &Plan{req: Request{Cases: []Case{{}}}}
	checked := 0
	for range 3000 {
		w := anyWire(rng)
		freq := 30 + 400*rng.Float64()
		p.wires = append(p.wires[:0], w)
		p.req.Cases[0].FreqsHz = []float64{freq}
		p.req.Tails = anyTails(rng)
		p.req.ActionM = []float64{0.003 * rng.Float64()}
		length := 0.4 + 0.6*rng.Float64()
		short, err1 := p.saddleNeed(0, 0, 0, length)
		long, err2 := p.saddleNeed(0, 0, 0, length*(1+0.05*rng.Float64()+1e-4))
		if err1 != nil || err2 != nil || short > 0.05 {
			continue // a wire far too thick or too slack for that pitch
		}
		checked++
		assert.Greater(t, short, long, "length %v, %v Hz, %+v", length, freq, w)
	}
	assert.Greater(t, checked, 1500)
}

// The memory of what fits a saddle against asking Compensation every time, with
// lengths in any order.
func TestFitsSaddleRemembersRightly(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 2))
	seen := map[bool]int{}
	for range 200 {
		p := &Plan{strings: 1, wires: []tension.Wire{anyWire(rng)}}
		p.rungs = ladder{stock: []int{0}, w: []float64{p.wires[0].LinearDensity}}
		p.req = Request{Cases: []Case{{FreqsHz: []float64{60 + 200*rng.Float64()}}}, Tails: anyTails(rng), ActionM: []float64{0.002}}
		need, err := p.saddleNeed(0, 0, 0, 0.66)
		if err != nil {
			continue
		}
		p.req.Limits.SaddleTravelM = need
		w := &searcher{p: p, seats: make([]seat, 1), travel: newTravelMemo(1, 1)}
		for range 30 {
			w.seats[0].lengthM = 0.66 * (0.93 + 0.14*rng.Float64())
			want := w.saddleFitsAt(0, 0, w.seats[0].lengthM, need)
			require.Equal(t, want, w.fitsSaddle(0, 0), "length %v", w.seats[0].lengthM)
			seen[want]++
		}
	}
	assert.Greater(t, seen[true], 1000)
	assert.Greater(t, seen[false], 1000)
}

// What a newton of stiffness pushes must fall as the stretch speed rises, and
// less than with its fourth power, whatever the slant, since costsMore builds
// on both. Wires are tried far beyond breaking, and wishes from 1 to 1000 cents.
func TestPushPerStiffnessFallsWithStretchSpeed(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 4))
	checked := 0
	for range 60000 {
		spot, err := tension.NewSpot(1+23*rng.Float64(), math.Pow(10, 3*rng.Float64()))
		require.NoError(t, err)
		tails := anyTails(rng)[0]
		contact, err := spot.Contact(tension.BendAt{
			LengthM: 0.5 + 0.5*rng.Float64(), FreqHz: 30 + 350*rng.Float64(),
			TanSlant: 0.6 * (2*rng.Float64() - 1), Tails: tails, ReachM: 0.06,
		})
		require.NoError(t, err)
		slow := 2e6 * (1 + 12*rng.Float64()) // steel wire has 2.6e7, wound strings less
		a, okA := contact.Shape(slow)
		times := 1 + 1e-6 + 0.5*rng.Float64()
		b, okB := contact.Shape(slow * times)
		if !okA {
			continue
		}
		checked++
		require.True(t, okB, "a stiffer string reaches what a softer one does")
		require.Less(t, b.Bend(1).BendingForceN, a.Bend(1).BendingForceN)
		require.Greater(t, b.Bend(1).BendingForceN*math.Pow(times, 4), a.Bend(1).BendingForceN)
	}
	assert.Greater(t, checked, 5000)
}
