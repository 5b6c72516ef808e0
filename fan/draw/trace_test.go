package draw_test

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/fan/draw"
)

// pointMM is a PDF point, 1/72 in.
const pointMM = 25.4 / 72

// tracedPage is what a third party found on one page, in millimetres, y up from the
// lower left corner.
type tracedPage struct {
	Width, Height float64
	Groups        []tracedGroup
}

// tracedGroup is what stands under one clip, or under none.
type tracedGroup struct {
	Clip  draw.Rect // NoRect when there is none
	Paths []tracedPath
}

// tracedPath is a stroked path of straight pieces, on its layer.
type tracedPath struct {
	Layer  string
	Dashed bool
	Points []draw.Point
}

// Lines gives the group's paths of just two points, on one layer ("" for all).
func (g tracedGroup) Lines(layer string) []draw.Line {
	var out []draw.Line
	for _, p := range g.Paths {
		if len(p.Points) == 2 && (layer == "" || p.Layer == layer) {
			out = append(out, draw.Line{A: p.Points[0], B: p.Points[1]})
		}
	}
	return out
}

// readPDF traces a PDF with mutool. It skips, or under CI=true fails, where
// that program is not installed.
func readPDF(t testing.TB, file []byte) []tracedPage {
	t.Helper()
	mutool := testutil.NeedTool(t, "mutool")
	path := filepath.Join(t.TempDir(), "traced.pdf")
	require.NoError(t, os.WriteFile(path, file, 0o600))
	out, err := exec.Command(mutool, "trace", path).Output()
	require.NoError(t, err, "mutool trace")
	r := traceReader{t: t}
	r.read(out)
	return r.pages
}

// traceReader walks the trace, an XML document of drawing calls.
type traceReader struct {
	t      testing.TB
	pages  []tracedPage
	layer  string
	path   *tracedPath // being read
	clip   bool        // path is a clip
	curved bool        // path has curves, and is passed over
	matrix [6]float64
}

func (r *traceReader) read(trace []byte) {
	dec := xml.NewDecoder(bytes.NewReader(trace))
	dec.Strict = false
	for {
		token, err := dec.Token()
		if token == nil || err != nil {
			return
		}
		switch e := token.(type) {
		case xml.StartElement:
			r.start(e)
		case xml.EndElement:
			r.end(e)
		}
	}
}

func (r *traceReader) start(e xml.StartElement) {
	switch e.Name.Local {
	case "page":
		box := r.numbers(attr(e, "mediabox"))
		r.pages = append(r.pages, tracedPage{Width: box[2] * pointMM, Height: box[3] * pointMM})
		r.group(draw.NoRect())
	case "layer":
		r.layer = attr(e, "name")
	case "end_layer":
		r.layer = ""
	case "stroke_path", "clip_path":
		r.path = &tracedPath{Layer: r.layer, Dashed: attr(e, "dash") != ""}
		r.clip, r.curved = e.Name.Local == "clip_path", false
		copy(r.matrix[:], r.numbers(attr(e, "transform")))
	case "moveto", "lineto":
		r.point(e)
	case "curveto":
		r.curved = true
	case "pop_clip":
		r.group(draw.NoRect())
	}
}

func (r *traceReader) end(e xml.EndElement) {
	if r.path == nil || e.Name.Local != "stroke_path" && e.Name.Local != "clip_path" {
		return
	}
	if r.clip {
		r.group(draw.NoRect().Include(r.path.Points...))
	} else if !r.curved {
		page := &r.pages[len(r.pages)-1]
		g := &page.Groups[len(page.Groups)-1]
		g.Paths = append(g.Paths, *r.path)
	}
	r.path = nil
}

func (r *traceReader) group(clip draw.Rect) {
	page := &r.pages[len(r.pages)-1]
	page.Groups = append(page.Groups, tracedGroup{Clip: clip})
}

// point carries a corner of a path to millimetres, y up.
func (r *traceReader) point(e xml.StartElement) {
	if r.path == nil {
		return
	}
	x, y := r.numbers(attr(e, "x"))[0], r.numbers(attr(e, "y"))[0]
	m := r.matrix
	r.path.Points = append(r.path.Points, draw.Point{
		X: (m[0]*x + m[2]*y + m[4]) * pointMM,
		Y: r.pages[len(r.pages)-1].Height - (m[1]*x+m[3]*y+m[5])*pointMM,
	})
}

func (r *traceReader) numbers(s string) []float64 {
	var out []float64
	for _, f := range strings.Fields(s) {
		x, err := strconv.ParseFloat(f, 64)
		require.NoError(r.t, err, "a number of the trace")
		out = append(out, x)
	}
	return out
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}
