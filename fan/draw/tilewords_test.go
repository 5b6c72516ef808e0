package draw_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
)

func TestWordsOfASheet(t *testing.T) {
	p := laid(t, drawingOf(t, "six"), options(paper("A4"), false))
	for i, s := range p.Sheets {
		assert.Equal(t, fmt.Sprintf("Sheet %d of %d · Trial of 6 strings", i+1, len(p.Sheets)), s.Name)
		r := &recorder{}
		s.On(r)
		words := r.Texts(draw.LayerFrame)
		assert.Equal(t, s.Name, words[0])
		text := strings.Join(words, " ")
		assert.Contains(t, text, "Before you glue or saw, both bars must measure 100 mm")
		assert.Contains(t, text, "the crosses meet")
		for n := range p.Pieces {
			assert.Contains(t, words, fmt.Sprint(n+1), "the key map names piece %d", n+1)
		}
		assert.Equal(t, []string{fmt.Sprint(i + 1)}, framed(r), "the key map frames this sheet's piece")
	}
}

// framed gives the numbers inside the key map's heavy frames.
func framed(r *recorder) []string {
	var out []string
	for _, m := range r.Marks {
		frame, ok := m.What.(draw.Polyline)
		if !ok || frame.Stroke != draw.HereStroke {
			continue
		}
		box, middle := frame.Bounds(), 0.0
		for _, corner := range frame.Points {
			middle += corner.X / 4
		}
		for _, n := range r.Marks {
			words, ok := n.What.(draw.Text)
			if ok && n.Layer == draw.LayerFrame && math.Abs(words.At.X-middle) < 1 && words.At.Y > box.Min.Y {
				out = append(out, words.Body)
			}
		}
	}
	return out
}

// Key and title go when they would cost a sheet, the key first; what the title
// says is then at the foot of every sheet, whole.
func TestTitleGoesBeforeASheetIsSpent(t *testing.T) {
	for name, want := range map[string]struct{ title, key bool }{"six": {true, true}, "eight": {true, false}} {
		d := drawingOf(t, name)
		p := laid(t, d, options(paper("A4"), false))
		bare := laid(t, d.Without(draw.LayerTitle, draw.LayerKey), options(paper("A4"), false))
		assert.Len(t, p.Sheets, len(bare.Sheets), name)
		first := p.Sheets[0].Parts[0].Drawing
		assert.Equal(t, want.title, len(first.Layer(draw.LayerTitle).Elements) > 0, name)
		assert.Equal(t, want.key, len(first.Layer(draw.LayerKey).Elements) > 0, name)
		assert.Equal(t, want.key, !p.NoKey, name)
	}
}

// Date and remark are on every plan, whatever the paper, once a sheet at most.
func TestNotesNeverVanish(t *testing.T) {
	for _, name := range instruments() {
		l := layoutOf(t, name)
		o := optionsOf(l)
		o.Date, o.Remarks = "3 May", "for Joe\nash from the shed"
		o.Title = "Trial of a name that is too long for the heading of one sheet"
		d := draw.Fan(l, o)
		for _, on := range append(tile.Papers(), paper("roll 420 mm")) {
			for _, strips := range []bool{false, true} {
				p := laid(t, d, options(on, strips))
				for _, part := range []string{"3 May", "for Joe", "ash from the shed", "face of the board", "heading of one sheet"} {
					assert.Positive(t, sheetsWith(p, part), "%s, %s, %v: %s", name, on.Name, strips, part)
				}
				if strips {
					assert.Equal(t, len(p.Sheets), sheetsWith(p, "for Joe"), "%s, %s", name, on.Name)
				}
			}
		}
	}
}

// sheetsWith counts the sheets on which some words stand.
func sheetsWith(p tile.Plan, part string) int {
	n := 0
	for _, s := range p.Sheets {
		r := &recorder{}
		s.On(r)
		words := strings.Join(append(r.Texts(draw.LayerTitle), r.Texts(draw.LayerFrame)...), "\n")
		if strings.Contains(words, part) {
			n++
		}
	}
	return n
}

// No piece shows a part of a word that another shows whole.
func TestWordsAreWhole(t *testing.T) {
	for _, s := range laid(t, drawingOf(t, "six"), options(paper("A4"), false)).Sheets {
		for _, part := range s.Parts {
			if len(part.Window) == 0 {
				continue
			}
			w := draw.Rect{Min: part.Window[0], Max: part.Window[0]}.Include(part.Window...)
			for _, l := range part.Drawing.Layers {
				for _, e := range l.Elements {
					if words, ok := e.(draw.Text); ok && l.Name != draw.LayerJoins {
						b := words.Bounds()
						assert.True(t, b.Min.X > w.Min.X-1e-6 && b.Max.X < w.Max.X+1e-6, "%s: %q", s.Name, words.Body)
					}
				}
			}
		}
	}
}
