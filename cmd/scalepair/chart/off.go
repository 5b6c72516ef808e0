package chart

import (
	"fmt"
	"math"

	"scalepair/data/unit"
)

// off is a point's distance from its curve and its standard uncertainty, both
// in percent of the curve.
type off struct {
	FitPoint
	percent, u float64
}

func (f Fit) offs() []off {
	var out []off
	f.eachPoint(func(q FitPoint) {
		for _, k := range f.Curves {
			if q.Curve != "" && q.Curve == k.Name {
				fit := k.at(q.X)
				out = append(out, off{q, 100 * (q.Y/fit - 1), 100 * q.U / fit})
				return
			}
		}
	})
	return out
}

// at reads the curve at x: ln y linear in ln x between its points, and on
// beyond its ends.
func (k Curve) at(x float64) float64 {
	i := 1
	for i < len(k.X)-1 && x > k.X[i] {
		i++
	}
	x1, x2, y1, y2 := math.Log(k.X[i-1]), math.Log(k.X[i]), math.Log(k.Y[i-1]), math.Log(k.Y[i])
	return math.Exp(y1 + (y2-y1)*(math.Log(x)-x1)/(x2-x1))
}

// drawOffs draws the lower panel. A suspect far outside what the others need
// is drawn at the edge, with its distance in its label.
func (f Fit) drawOffs(c *canvas, x scale, offs []off) {
	reach := offReach(offs)
	p := plot{c, x, scale{lo: -reach, hi: reach, from: 545, to: 437}}
	p.frame(f.XLabel, "off the fit %")
	c.line(pen{stroke: ink, width: 1}, x.from, p.y.at(0), x.to, p.y.at(0))
	names := labels{room: box{x.from + 2, p.y.to - 8, x.to - 2, p.y.from - 2}}
	for _, o := range offs {
		names.mark(x.at(o.X), p.y.clamped(o.percent), 5)
		if math.Abs(o.percent) <= reach {
			names.taken = append(names.taken, box{x.at(o.X) - 3, p.y.clamped(o.percent + 2*o.u), x.at(o.X) + 3, p.y.clamped(o.percent - 2*o.u)})
		}
	}
	for _, o := range offs {
		if math.Abs(o.percent) <= reach {
			p.whisker(pen{stroke: ink, width: 1}, o.X, o.percent-2*o.u, o.percent+2*o.u)
		}
		c.kind(o.Kind, x.at(o.X), p.y.clamped(o.percent))
	}
	for _, o := range offs {
		if o.Kind == Suspect {
			s := fmt.Sprintf("%s %s %%", shorten(o.Label, 40), signed(o.percent))
			p.label(&names, x.at(o.X), p.y.clamped(o.percent), 8, s, warn, true)
		}
	}
}

// offReach gives the half height of the lower panel in percent: what the
// sound points need, at least 1 %, and the suspects too unless that would
// press the others flat (more than three times as much; judgement).
func offReach(offs []off) float64 {
	sound, all := 1.0, 1.0
	for _, o := range offs {
		need := 1.1 * (math.Abs(o.percent) + 2*o.u)
		all = math.Max(all, need)
		if o.Kind != Suspect {
			sound = math.Max(sound, need)
		}
	}
	if all > 3*sound {
		return 1.9 * sound
	}
	return all
}

func signed(percent float64) string {
	s := unit.Fixed(percent, 1)
	if percent > 0 {
		return "+" + s
	}
	return s
}
