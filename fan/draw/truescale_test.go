package draw_test

import (
	"cmp"
	"encoding/json"
	"encoding/xml"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/testutil"
	"scalepair/data/unit"
	"scalepair/fan/draw"
	"scalepair/fan/draw/tile"
)

// trueMM is how near a third party must find a line to where the layout has it.
const trueMM = 0.02

// save puts a file where a third party can read it.
func save(t *testing.T, name string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, content, 0o600))
	return path
}

// slotsOn checks that every slot, carried by to, is among the lines found.
func slotsOn(t *testing.T, name string, to draw.Map, found []draw.Line, within float64) {
	t.Helper()
	for i, s := range slotsOf(layoutOf(t, name)) {
		want := s.Through(to).(draw.Line)
		assert.Less(t, nearest(want, found), within, "slot %d", i+1)
	}
}

func onePlan(t testing.TB, name string) tile.Plan {
	o := tile.DefaultOptions()
	o.Unit = optionsOf(layoutOf(t, name)).Unit
	p, err := tile.One(drawingOf(t, name), o)
	require.NoError(t, err)
	return p
}

func allLines(p tracedPage) []draw.Line {
	var out []draw.Line
	for _, g := range p.Groups {
		out = append(out, g.Lines("")...)
	}
	return out
}

func TestSVGIsTrueToScale(t *testing.T) {
	rsvg := testutil.NeedTool(t, "rsvg-convert")
	for _, name := range instruments() {
		t.Run(name, func(t *testing.T) {
			out, err := exec.Command(rsvg, "-f", "pdf", save(t, "fan.svg", files(t, name)[name+".svg"])).Output()
			require.NoError(t, err)
			pages := readPDF(t, out)
			require.Len(t, pages, 1)
			p := onePlan(t, name)
			assert.InDelta(t, p.Sheets[0].Width, pages[0].Width, trueMM)
			assert.InDelta(t, p.Sheets[0].Height, pages[0].Height, trueMM)
			slotsOn(t, name, p.Pieces[0].Place, allLines(pages[0]), trueMM)
			hasBars(t, allLines(pages[0]), p.Across, p.Up)
		})
	}
}

func TestPDFIsTrueToScale(t *testing.T) {
	for _, name := range instruments() {
		t.Run(name, func(t *testing.T) {
			pages := readPDF(t, files(t, name)[name+"_one.pdf"])
			require.Len(t, pages, 1)
			p := onePlan(t, name)
			assert.InDelta(t, p.Sheets[0].Width, pages[0].Width, trueMM)
			slotsOn(t, name, p.Pieces[0].Place, pages[0].Groups[1].Lines("slots"), trueMM)
			hasBars(t, allLines(pages[0]), p.Across, p.Up)
		})
	}
}

// hasBars checks that just one level and one upright line measure what a bar must.
func hasBars(t *testing.T, lines []draw.Line, across, up unit.Length) {
	t.Helper()
	level, upright := 0, 0
	for _, l := range lines {
		if math.Abs(l.A.Y-l.B.Y) < 0.001 && math.Abs(l.Length()-across.MM()) < 0.005 {
			level++
		}
		if math.Abs(l.A.X-l.B.X) < 0.001 && math.Abs(l.Length()-up.MM()) < 0.005 {
			upright++
		}
	}
	assert.Equal(t, 1, level, "level bars of %v", across)
	assert.Equal(t, 1, upright, "upright bars of %v", up)
}

func TestPDFIsSoundAndPrintedTrue(t *testing.T) {
	qpdf, mutool := testutil.NeedTool(t, "qpdf"), testutil.NeedTool(t, "mutool")
	for _, name := range instruments() {
		for _, file := range []string{"_one.pdf", "_tiles.pdf", "_strips.pdf"} {
			path := save(t, "fan.pdf", files(t, name)[name+file])
			out, err := exec.Command(qpdf, "--check", path).CombinedOutput()
			require.NoError(t, err, string(out))
			assert.NotContains(t, strings.ToLower(string(out)), "warning")
			for key, want := range map[string]string{"PrintScaling": "/None", "Duplex": "/Simplex"} {
				asked, err := exec.Command(mutool, "show", path, "trailer/Root/ViewerPreferences/"+key).Output()
				require.NoError(t, err)
				assert.Equal(t, want, strings.TrimSpace(string(asked)), name+file)
			}
		}
	}
}

// layer is a group of an SVG file, by the attributes that drawing programs read.
type layer struct {
	Mode  string `xml:"http://www.inkscape.org/namespaces/inkscape groupmode,attr"`
	Label string `xml:"http://www.inkscape.org/namespaces/inkscape label,attr"`
	Shape []struct {
		Stroke string `xml:"stroke,attr"`
	} `xml:",any"`
}

// Every layer of an SVG has one colour, and every operation its own.
func TestSVGHasALayerAndAColourAnOperation(t *testing.T) {
	var file struct {
		Windows []struct {
			Layers []layer `xml:"g"`
		} `xml:"g"`
	}
	require.NoError(t, xml.Unmarshal(files(t, "six")["six.svg"], &file))
	colours := map[string]string{}
	for _, l := range file.Windows[0].Layers {
		assert.Equal(t, "layer", l.Mode)
		for _, shape := range l.Shape {
			if shape.Stroke != "" {
				assert.Equal(t, cmp.Or(colours[l.Label], shape.Stroke), shape.Stroke, l.Label)
				colours[l.Label] = shape.Stroke
			}
		}
	}
	seen := map[string]bool{}
	for _, operation := range []string{"board", "blank", "slots", "slot-outlines", "nut", "strings", "dots", "key"} {
		assert.NotEmpty(t, colours[operation], operation)
		assert.False(t, seen[colours[operation]], operation)
		seen[colours[operation]] = true
	}
}

// readDXF is what the ezdxf library is asked to tell.
const readDXF = `
import sys, json, ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
m = doc.modelspace()
json.dump({
    "faults": [str(e.message) for e in audit.errors + audit.fixes],
    "units": doc.header.get("$INSUNITS", 0),
    "colours": {l.dxf.name: l.dxf.color for l in doc.layers},
    "on": sorted({e.dxf.layer for e in m.query('TEXT')}),
    "outlines": [[list(p.vec2) for p in e.points()] for e in m.query('POLYLINE[layer=="SLOT-OUTLINES"]') if e.is_closed],
    "slots": [[*e.dxf.start.vec2, *e.dxf.end.vec2] for e in m.query('LINE[layer=="SLOTS"]')],
    "bars": [[*e.dxf.start.vec2, *e.dxf.end.vec2] for e in m.query('LINE[layer=="CHECK-BARS"]')],
    "words": [decode_dxf_unicode(e.plain_text()) for e in m.query('TEXT')],
}, sys.stdout)
`

type dxfFound struct {
	Faults, Words, On []string
	Colours           map[string]int
	Units             int
	Slots, Bars       [][4]float64
	Outlines          [][][2]float64
}

func ezdxf(t *testing.T, content []byte) dxfFound {
	t.Helper()
	const python = "/usr/bin/python3" // Debian's own, which has Debian's library
	testutil.NeedRun(t, "Debian's python3-ezdxf", python, "-c", "import ezdxf")
	out, err := exec.Command(python, "-c", readDXF, save(t, "fan.dxf", content)).Output()
	require.NoError(t, err)
	var found dxfFound
	require.NoError(t, json.Unmarshal(out, &found))
	assert.Empty(t, found.Faults, "audit")
	return found
}

func lines(from [][4]float64) []draw.Line {
	var out []draw.Line
	for _, f := range from {
		out = append(out, draw.Line{A: draw.Point{X: f[0], Y: f[1]}, B: draw.Point{X: f[2], Y: f[3]}})
	}
	return out
}

func TestDXFIsTrueToScale(t *testing.T) {
	for _, name := range instruments()[:testutil.Times(3, 1)] {
		t.Run(name, func(t *testing.T) {
			found := ezdxf(t, files(t, name)[name+".dxf"])
			assert.Equal(t, 4, found.Units, "millimetres")
			slotsOn(t, name, draw.Move(0, 0), lines(found.Slots), trueMM)
			long := unit.MM(110)
			if name == "eight" {
				long = 4 * unit.Inch
			}
			hasBars(t, lines(found.Bars), long, long)
			assert.Contains(t, found.Words, drawingOf(t, name).Title)
			assert.Contains(t, strings.Join(found.Words, "\n"), "full size - date")
			assert.Equal(t, []string{"TEXT"}, found.On, "all words on one layer")
			seen := map[int]string{}
			for _, operation := range []string{"BOARD", "SLOTS", "SLOT-OUTLINES", "NUT", "STRINGS", "DOTS", "TEXT"} {
				colour := found.Colours[operation]
				assert.Empty(t, seen[colour], "%s has the colour of %s", operation, seen[colour])
				seen[colour] = operation
			}
			require.Len(t, found.Outlines, len(found.Slots))
			for i, o := range found.Outlines {
				require.Len(t, o, 4)
				assert.InDelta(t, 0.6, math.Hypot(o[1][0]-o[2][0], o[1][1]-o[2][1]), 2e-4, "as wide as the saw's cut")
				assert.InDelta(t, slotsOf(layoutOf(t, name))[i].Length(), math.Hypot(o[0][0]-o[1][0], o[0][1]-o[1][1]), 2e-4)
			}
		})
	}
}

func TestDXFInADrawingProgram(t *testing.T) {
	librecad := testutil.NeedTool(t, "librecad")
	for _, name := range instruments()[:testutil.Times(3, 1)] {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			require.NoError(t, os.WriteFile(filepath.Join(folder, "fan.dxf"), files(t, name)[name+".dxf"], 0o600))
			cmd := exec.Command(librecad, "dxf2pdf", "-c", "-s", "1", "fan.dxf")
			cmd.Dir = folder
			cmd.Env = append(os.Environ(), "QT_QPA_PLATFORM=offscreen", "HOME="+folder, "XDG_RUNTIME_DIR="+folder)
			out, err := cmd.CombinedOutput()
			require.NoError(t, err, string(out))
			printed, err := os.ReadFile(filepath.Join(folder, "fan.pdf"))
			require.NoError(t, err)
			page := readPDF(t, printed)[0]
			// The program takes its A4 page, which it writes in whole points, for 210 x
			// 297 mm, and scales by the mean of both directions: 0.017 % too small.
			own := 2 / (page.Width/210 + page.Height/297)
			assert.InDelta(t, 1, own, 2e-4)
			found := make([]draw.Line, 0, 1000)
			for _, l := range allLines(page) {
				found = append(found, l.Through(draw.Scale(own, own)).(draw.Line))
			}
			// It centres the drawing on its paper by an amount of its own, and prints
			// in steps of 1/1200 in.
			want := slotsOf(layoutOf(t, name))
			slotsOn(t, name, shift(t, want, found), found, 0.04)
		})
	}
}

// shift finds by how much the wanted lines are moved among those found, where every
// one of them is.
func shift(t *testing.T, want, found []draw.Line) draw.Map {
	t.Helper()
	for _, f := range found {
		for _, to := range []draw.Point{f.A, f.B} {
			move := draw.Move(to.X-want[0].A.X, to.Y-want[0].A.Y)
			if !slices.ContainsFunc(want, func(w draw.Line) bool { return nearest(w.Through(move).(draw.Line), found) > 0.04 }) {
				return move
			}
		}
	}
	t.Fatal("the slots were not found together")
	return draw.Move(0, 0)
}
