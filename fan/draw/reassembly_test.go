package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/fan/draw"
)

// piece is what a third party found of one piece: its slots, and the ends of
// its dotted joins, where the crosses stand, from left to right.
type piece struct {
	slots, joins []draw.Line
}

func pieces(pages []tracedPage) []piece {
	var out []piece
	for _, page := range pages {
		for _, g := range page.Groups {
			if g.Clip.Empty() {
				continue
			}
			p := piece{slots: g.Lines("slots")}
			for _, path := range g.Paths {
				if path.Layer == "joins" && path.Dashed {
					p.joins = append(p.joins, draw.Line{A: path.Points[0], B: path.Points[1]})
				}
			}
			out = append(out, p)
		}
	}
	return out
}

// laidOn moves p so that the crosses of its first join come to lie on those of
// the last join of before, as hands do it.
func (p piece) laidOn(t *testing.T, before piece) piece {
	t.Helper()
	require.NotEmpty(t, p.joins)
	require.NotEmpty(t, before.joins)
	here, there := p.joins[0], before.joins[len(before.joins)-1]
	move := draw.Move((there.A.X+there.B.X-here.A.X-here.B.X)/2, (there.A.Y+there.B.Y-here.A.Y-here.B.Y)/2)
	assert.Less(t, nearest(here.Through(move).(draw.Line), []draw.Line{there}), trueMM, "both crosses coincide")
	var out piece
	for _, s := range p.slots {
		out.slots = append(out.slots, s.Through(move).(draw.Line))
	}
	for _, j := range p.joins {
		out.joins = append(out.joins, j.Through(move).(draw.Line))
	}
	return out
}

func TestReassembledTilesCoincide(t *testing.T) {
	for _, name := range instruments() {
		for _, file := range []string{"_tiles.pdf", "_strips.pdf"} {
			t.Run(name+file, func(t *testing.T) {
				pages := readPDF(t, files(t, name)[name+file])
				// A4 on its side takes 270 and 180 mm, upright 190 and 270; Letter on its
				// side 10 and 7 inches.
				across, up := unit.MM(270), unit.MM(180)
				if name == "eight" {
					across, up = 10*unit.Inch, 7*unit.Inch
				} else if pages[0].Width < pages[0].Height {
					across, up = unit.MM(190), unit.MM(270)
				}
				for _, p := range pages {
					hasBars(t, barsOf(p), across, up)
				}
				all := pieces(pages)
				require.Greater(t, len(all), 1)
				shared := 0
				found := all[0].slots
				for i := 1; i < len(all); i++ {
					all[i] = all[i].laidOn(t, all[i-1])
					for _, s := range all[i].slots {
						// A slot that shows on both neighbours shows in one place.
						if d := nearest(s, all[i-1].slots); d < 1 {
							shared++
							assert.Less(t, d, trueMM)
						}
					}
					found = append(found, all[i].slots...)
				}
				assert.Positive(t, shared, "overlaps show slots twice")
				want := slotsOf(layoutOf(t, name))
				slotsOn(t, name, shift(t, want[:1], found[:1]), found, trueMM)
			})
		}
	}
}

// barsOf gives a page's lines on the layer of check bars.
func barsOf(p tracedPage) []draw.Line {
	var out []draw.Line
	for _, g := range p.Groups {
		out = append(out, g.Lines("check-bars")...)
	}
	return out
}

// The slots of a whole drawing lie where the layout has them only in true
// scale: a print shrunk to 99.9 % must be found out.
func TestTheYardstickFindsAShrunkPrint(t *testing.T) {
	want := slotsOf(layoutOf(t, "six"))
	worst := 0.0
	for _, w := range want {
		worst = math.Max(worst, nearest(w.Through(draw.Scale(0.999, 0.999)).(draw.Line), want))
	}
	assert.Greater(t, worst, trueMM)
}
