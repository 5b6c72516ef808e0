package choice

// Point is one kept pair of a grid, as a picture of the trade-off shows it:
// what it misses by and what it costs, without its set.
type Point struct {
	BassMM, TrebleMM float64
	// TensionMisfit and BendingForceMisfit are those of Candidate.
	TensionMisfit, BendingForceMisfit, Score float64
}

// DifferenceMM is bass length minus treble length.
func (p Point) DifferenceMM() float64 { return p.BassMM - p.TrebleMM }

// Points gives the pairs of the grid that no limit drops, each with its
// score-best set, by bass and then by treble length. A grid of more pairs than
// most is thinned evenly: every second, third and so on length of either side,
// counted from the shortest. thinned says so. It panics on most below 1.
func (p *Plan) Points(most int) (points []Point, thinned bool) {
	if most < 1 {
		panic("choice: points of no pairs")
	}
	bass, treble := p.req.BassMM, p.req.TrebleMM
	stride := 1
	for every(len(bass), stride)*every(len(treble), stride) > most {
		stride++
	}
	w := newSearcher(p)
	for b := 0; b < len(bass); b += stride {
		for t := 0; t < len(treble); t += stride {
			_, total, miss := w.try(bass[b], treble[t])
			if miss.Reason != Kept {
				continue
			}
			var c Candidate
			c.setScore(total, p.req.Feel.Weights)
			points = append(points, Point{bass[b], treble[t], c.TensionMisfit, c.BendingForceMisfit, c.Score})
		}
	}
	return points, stride > 1
}

// every is how many of n values are left when every stride-th is taken.
func every(n, stride int) int { return (n + stride - 1) / stride }
