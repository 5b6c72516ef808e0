package draw_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
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

// attribute is one of a row of the trace, which has an element a row.
var attribute = regexp.MustCompile(`(\w+)="([^"]*)"`)

// readPDF traces a PDF with mutool. It skips, or under CI=true fails, where
// that program is not installed.
func readPDF(t testing.TB, file []byte) (pages []tracedPage) {
	t.Helper()
	mutool := testutil.NeedTool(t, "mutool")
	name := filepath.Join(t.TempDir(), "traced.pdf")
	require.NoError(t, os.WriteFile(name, file, 0o600))
	out, err := exec.Command(mutool, "trace", name).Output()
	require.NoError(t, err, "mutool trace")
	numbers := func(s string) (out []float64) {
		for _, f := range strings.Fields(s) {
			x, err := strconv.ParseFloat(f, 64)
			require.NoError(t, err, "a number of the trace")
			out = append(out, x)
		}
		return out
	}
	var path tracedPath
	var m []float64
	layer, curved := "", false
	for _, row := range strings.Split(string(out), "\n") {
		is := map[string]string{}
		for _, a := range attribute.FindAllStringSubmatch(row, -1) {
			is[a[1]] = a[2]
		}
		kind, _, _ := strings.Cut(strings.Trim(row, " <>/"), " ")
		switch closes := strings.Contains(row, "</"); {
		case kind == "page" && !closes:
			box := numbers(is["mediabox"])
			pages = append(pages, tracedPage{Width: box[2] * pointMM, Height: box[3] * pointMM, Groups: []tracedGroup{{Clip: draw.NoRect()}}})
		case kind == "layer":
			layer = is["name"]
		case kind == "end_layer":
			layer = ""
		case (kind == "stroke_path" || kind == "clip_path") && !closes:
			path, curved, m = tracedPath{Layer: layer, Dashed: is["dash"] != ""}, false, numbers(is["transform"])
		case kind == "moveto", kind == "lineto":
			at := numbers(is["x"] + " " + is["y"])
			path.Points = append(path.Points, draw.Point{
				X: (m[0]*at[0] + m[2]*at[1] + m[4]) * pointMM,
				Y: pages[len(pages)-1].Height - (m[1]*at[0]+m[3]*at[1]+m[5])*pointMM,
			})
		case kind == "curveto":
			curved = true
		case kind == "stroke_path" && !curved:
			groups := pages[len(pages)-1].Groups
			groups[len(groups)-1].Paths = append(groups[len(groups)-1].Paths, path)
		case kind == "clip_path", kind == "pop_clip":
			group := tracedGroup{Clip: draw.NoRect()}
			if kind == "clip_path" {
				group.Clip = group.Clip.Include(path.Points...)
			}
			pages[len(pages)-1].Groups = append(pages[len(pages)-1].Groups, group)
		}
	}
	return pages
}
