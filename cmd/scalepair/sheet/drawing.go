package sheet

import (
	"bytes"
	"fmt"
	"html/template"
	"math"

	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/svg"
)

// Drawing is a long drawing shown in strips below one another, large enough to
// read: a few on paper and on a common screen, more on a narrow one. It is
// drawn once; a strip is a window on it. The zero value shows nothing.
type Drawing struct {
	SVG     template.HTML // one svg element in true size
	Caption string
	Strips  []Strip
	Narrow  []Strip
}

// Strip is one window: its number, how many there are, and the part of the
// drawing that it shows.
type Strip struct {
	Number, Of      int
	FromMM, WidthMM float64
	heightMM        float64
}

const (
	// stripMM is the longest strip on paper: at the text width of a common
	// sheet it comes out about two thirds of full size (judgement).
	stripMM = 285
	// narrowMM is the longest strip on a narrow screen.
	narrowMM = 115
	edgeMM   = 2
	spareMM  = 4 // of the overlap, beyond what a slot takes along the board
)

// NewDrawing takes a fan's drawing apart into strips. Neighbours overlap so
// that every slot is whole on one of them.
func NewDrawing(d draw.Drawing, caption string) (*Drawing, error) {
	whole := draw.Whole(d, edgeMM)
	var b bytes.Buffer
	if err := svg.Write(&b, whole, svg.Options{Inline: true, Prefix: "fan-"}); err != nil {
		return nil, fmt.Errorf("sheet: %w", err)
	}
	overlap := spareMM + longestAcross(d)
	// The writer escapes every text.
	return &Drawing{
		SVG: template.HTML(b.String()), Caption: caption,
		Strips: strips(whole, overlap, stripMM), Narrow: strips(whole, overlap, narrowMM),
	}, nil
}

// longestAcross is how far along the board the most slanted slot reaches, with
// what carries it on to its number.
func longestAcross(d draw.Drawing) float64 {
	most := 0.0
	for _, name := range []draw.LayerName{draw.LayerSlots, draw.LayerNut} {
		for _, e := range d.Layer(name).Elements {
			most = math.Max(most, e.Bounds().Width())
		}
	}
	return most
}

// strips divides a sheet into the fewest strips of equal length of which none
// is longer than most.
func strips(s draw.Sheet, overlap, most float64) []Strip {
	if most < 2*overlap {
		most = 2 * overlap
	}
	n := max(1, int(math.Ceil((s.WidthMM-overlap)/(most-overlap))))
	width := (s.WidthMM + float64(n-1)*overlap) / float64(n)
	var out []Strip
	for i := range n {
		out = append(out, Strip{i + 1, n, float64(i) * (width - overlap), width, s.HeightMM})
	}
	return out
}

// pxPerMM: a CSS inch has 96 px and 25.4 mm, exactly (CSS Values and Units 3).
const pxPerMM = 96 / 25.4

// ViewBox is the strip's window in px, the unit of the picture it looks at.
func (s Strip) ViewBox() string {
	px := func(mm float64) string { return unit.Fixed(mm*pxPerMM, 2) }
	return px(s.FromMM) + " 0 " + px(s.WidthMM) + " " + px(s.heightMM)
}

// Label says which strip it is.
func (s Strip) Label() string {
	if s.Of == 1 {
		return "the whole drawing"
	}
	return fmt.Sprintf("strip %d of %d", s.Number, s.Of)
}
