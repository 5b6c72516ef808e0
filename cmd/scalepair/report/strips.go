package report

import (
	"bytes"
	"fmt"
	"math"

	"scalepair/cmd/scalepair/document"
	"scalepair/fan/draw"
	"scalepair/fan/draw/svg"
)

// stripMM is the longest strip: what the narrower of the common papers leaves
// between the margins of a printed page.
const stripMM = 182

// strips gives a fan's drawing in true size, cut into strips that a page of
// paper takes. Neighbours overlap so that every slot is whole on one of them;
// words stand only where they are whole.
func strips(d draw.Drawing) ([]document.Figure, error) {
	const edgeMM, spareMM = 2, 4 // spareMM: of the overlap, beyond what a slot takes along the board
	var out []document.Figure
	windows := windows(d.Bounds().Grow(edgeMM), spareMM+longestAcross(d), stripMM)
	for i, w := range windows {
		sheet := window(d, w)
		sheet.Name = fmt.Sprintf("%s, strip %d of %d", d.Title, i+1, len(windows))
		var b bytes.Buffer
		if err := svg.Write(&b, sheet, svg.Options{Inline: true, Prefix: fmt.Sprintf("fan-%d-", i+1)}); err != nil {
			return nil, err
		}
		out = append(out, document.Figure{Caption: fmt.Sprintf("Strip %d of %d, from the nut on.", i+1, len(windows)), Alt: sheet.Name, SVG: b.String()})
	}
	return out, nil
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

// windows divides a room into the fewest windows of equal length of which none
// is longer than most, or than two overlaps.
func windows(room draw.Rect, overlap, most float64) []draw.Rect {
	most = math.Max(most, 2*overlap)
	n := max(1, int(math.Ceil((room.Width()-overlap)/(most-overlap))))
	width := (room.Width() + float64(n-1)*overlap) / float64(n)
	var out []draw.Rect
	for i := range n {
		w := room
		w.Min.X += float64(i) * (width - overlap)
		w.Max.X = w.Min.X + width
		out = append(out, w)
	}
	return out
}

// window is what one window shows of a drawing: what reaches into it, but of
// the words only those that are whole there.
func window(d draw.Drawing, w draw.Rect) draw.Sheet {
	shown := draw.Drawing{Title: d.Title}
	for _, l := range d.Layers {
		kept := draw.Layer{Name: l.Name}
		for _, e := range l.Elements {
			box := e.Bounds()
			if _, words := e.(draw.Text); words && w.Union(box) != w || !box.Touches(w) {
				continue
			}
			kept.Elements = append(kept.Elements, e)
		}
		shown.Layers = append(shown.Layers, kept)
	}
	return draw.Sheet{Width: w.Width(), Height: w.Height(), Parts: []draw.Part{{Drawing: shown.Through(draw.Move(-w.Min.X, -w.Min.Y))}}}
}
