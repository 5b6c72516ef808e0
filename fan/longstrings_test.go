package fan_test

import (
	"github.com/stretchr/testify/require"

	"scalepair/fan"
)

// longEnds are the two ends of every string, string 1 first.
func (f *longFan) longEnds() (nut, saddle []longPoint) {
	s, n, m := f.spec, f.line(longOf(0)), f.line(longOf(1))
	atNut := longFractions(s, s.NutSpacing, n.bass.y.minus(n.treble.y))
	atSaddle := longFractions(s, s.SaddleSpacing, m.bass.y.minus(m.treble.y))
	if s.SaddleSpacing.Rule == fan.LikeNut {
		atSaddle = atNut
	}
	for i := range atNut {
		nut, saddle = append(nut, n.at(atNut[i])), append(saddle, m.at(atSaddle[i]))
	}
	return nut, saddle
}

// longMeets is the part of the way from a to b at which the line is met, by
// the areas on either side of it.
func longMeets(a, b longPoint, l longLine) long {
	d := l.bass.minus(l.treble)
	area := func(p longPoint) long {
		v := p.minus(l.treble)
		return v.x.times(d.y).minus(v.y.times(d.x))
	}
	return area(a).over(area(a).minus(area(b)))
}

// strings compares ends and lengths of the strings and, fret by fret, how far
// each is out of tune and how far it can be pushed. Cents are measured by a
// semitone, so that the bound on them is 1e-10 cents, below which the layout
// calls them none; an error of 1e-16 of the length is 2e-15 of a semitone at
// fret 24.
func (w farthest) strings(f *longFan, l *fan.Layout) {
	nut, saddle := f.longEnds()
	semitone := longOf(100)
	for i, s := range l.Strings {
		w.point("string end", s.Nut, nut[i], f.bass)
		w.point("string end", s.Saddle, saddle[i], f.bass)
		w.relative("own length", s.LengthMM, saddle[i].minus(nut[i]).length())
	}
	for n, fret := range l.Frets {
		line, k := f.fret(n), longK(float64(n))
		edges := f.onEdges(line)
		for i := range l.Strings {
			u := longMeets(nut[i], saddle[i], line)
			at := nut[i].plus(saddle[i].minus(nut[i]).part(u))
			if like := u.minus(k).size(); like.less(longOf(1e-100)) {
				w.see("cents where there are none", fret.CentsSharp[i], longOf(0), semitone)
			} else {
				sharp := longLog2(longOf(1).minus(k).over(longOf(1).minus(u))).by(1200)
				w.see("cents", fret.CentsSharp[i], sharp, semitone)
			}
			w.see("reach", l.Frame.ReachMM(i, float64(n), true), edges.bass.y.minus(at.y), f.half)
			w.see("reach", l.Frame.ReachMM(i, float64(n), false), at.y.minus(edges.treble.y), f.half)
		}
	}
	w.seats(l.NutPositions, nut, f.onEdges(f.line(longOf(0))), f.half)
	w.seats(l.SaddlePositions, saddle, f.onEdges(f.line(longOf(1))), f.half)
}

// seats compares the strings along a line whose ends are on the board's edges.
func (w farthest) seats(got []fan.Position, want []longPoint, edges longLine, half long) {
	last := len(want) - 1
	for i, seat := range got {
		w.see("seat, along from the bass string", seat.AlongFromBassMM, want[last].minus(want[i]).length(), half)
		w.see("seat, along from the edge", seat.AlongFromEdgeMM, edges.bass.minus(want[i]).length(), half)
		w.see("seat, square from the bass string", seat.SquareFromBassMM, want[last].y.minus(want[i].y), half)
		if i < last {
			w.see("spacing along", seat.SpacingAlongMM, want[i+1].minus(want[i]).length(), half)
			w.see("spacing square", seat.SpacingSquareMM, want[i+1].y.minus(want[i].y), half)
		}
	}
}

// depths compares slot depths under a single crown, a compound one each way,
// and a flat board: tang, clearance and R - sqrt(R^2 - y^2) as it stands, R
// straight between the nut line's crossing and the last fret's and on.
func (w farthest) depths(t require.TestingT, f *longFan, l *fan.Layout) {
	end := f.fret(l.Spec.Frets).crossing()
	for _, crown := range [][2]float64{{254, 254}, {184, 406.4}, {406.4, 184}, {0, 0}} {
		s := fan.Sawing{RadiusNutMM: crown[0], RadiusLastMM: crown[1], TangMM: 1.6, ClearanceMM: 0.4, ThicknessMM: 50}
		got, err := l.Depths(s)
		require.NoError(t, err, "crown %v", crown)
		drop := func(p longPoint) long {
			if crown[0] == 0 {
				return longOf(0)
			}
			r := longOf(crown[0]).plus(longOf(crown[1]).minus(longOf(crown[0])).times(p.x.over(end)))
			return r.minus(r.times(r).minus(p.y.times(p.y)).root())
		}
		for _, d := range got {
			slot := f.onEdges(f.fret(d.Fret))
			bass, treble := drop(slot.bass), drop(slot.treble)
			if crown[0] == 0 {
				require.Zero(t, d.BassDropMM, "a flat board does not fall")
				require.Zero(t, d.TrebleDropMM, "a flat board does not fall")
			} else {
				w.relative("drop", d.BassDropMM, bass)
				w.relative("drop", d.TrebleDropMM, treble)
			}
			depth := longOf(1.6).plus(longOf(0.4))
			deeper := bass
			if deeper.less(treble) {
				deeper = treble
			}
			w.relative("slot depth", d.BassMM, depth.plus(bass))
			w.relative("slot depth", d.TrebleMM, depth.plus(treble))
			w.relative("saw depth", d.SawMM, depth.plus(deeper))
			w.relative("left under", d.LeftUnderMM, longOf(50).minus(depth).minus(deeper))
		}
	}
}
