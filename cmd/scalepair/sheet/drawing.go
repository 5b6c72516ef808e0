package sheet

import (
	"bytes"
	"fmt"
	"html/template"
	"math"

	"scalepair/fan/draw"
	"scalepair/fan/draw/svg"
)

// Drawing is a long drawing shown in strips below one another, large enough to
// read: a few on paper and on a common screen, more on a narrow one.
type Drawing struct {
	Caption        string
	Strips, Narrow []template.HTML // each one svg element, left to right
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
// that every slot is whole on one of them; words stand only where they are
// whole.
func NewDrawing(d draw.Drawing, caption string) (*Drawing, error) {
	out := &Drawing{Caption: caption}
	room, overlap := d.Bounds().Grow(edgeMM), spareMM+longestAcross(d)
	for _, set := range []struct {
		most float64
		name string
		to   *[]template.HTML
	}{{stripMM, "page", &out.Strips}, {narrowMM, "narrow", &out.Narrow}} {
		windows := strips(room, overlap, set.most)
		for i, w := range windows {
			sheet := window(d, w)
			sheet.Name = fmt.Sprintf("%s, strip %d of %d", d.Title, i+1, len(windows))
			var b bytes.Buffer
			o := svg.Options{Inline: true, Fluid: true, Prefix: fmt.Sprintf("fan-%s-%d-", set.name, i+1)}
			if err := svg.Write(&b, sheet, o); err != nil {
				return nil, fmt.Errorf("sheet: %w", err)
			}
			*set.to = append(*set.to, template.HTML(b.String())) // the writer escapes every text
		}
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

// strips divides a room into the fewest windows of equal length of which none
// is longer than most, or than two overlaps.
func strips(room draw.Rect, overlap, most float64) []draw.Rect {
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
