package tile_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"scalepair/fan/draw"
	"scalepair/fan/draw/internal/trial"
	"scalepair/fan/draw/recorder"
	"scalepair/fan/draw/tile"
)

func TestWordsOfASheet(t *testing.T) {
	p := laid(t, trial.Drawing(t, "six"), options(tile.A4(), tile.OneEach))
	for i, s := range p.Sheets {
		assert.Equal(t, fmt.Sprintf("Sheet %d of %d · Trial of 6 strings", i+1, len(p.Sheets)), s.Name)
		r := &recorder.Recorder{}
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
func framed(r *recorder.Recorder) []string {
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

// Title and key go when they would cost a sheet, and stay when they do not.
func TestTitleGoesBeforeASheetIsSpent(t *testing.T) {
	for name, stays := range map[string]bool{"six": true, "eight": false} {
		d := trial.Drawing(t, name)
		p := laid(t, d, options(tile.A4(), tile.OneEach))
		bare := laid(t, d.Without(draw.LayerTitle, draw.LayerKey), options(tile.A4(), tile.OneEach))
		assert.Len(t, p.Sheets, len(bare.Sheets), name)
		title := p.Sheets[0].Parts[0].Drawing.Layer(draw.LayerTitle).Elements
		assert.Equal(t, stays, len(title) > 0, name)
	}
}
