package dxf

import "scalepair/fan/draw"

// textStyle is the one text style; its font is the one that every reader has.
const textStyle = "STANDARD"

// textWidth narrows the letters: that font runs about a quarter wider than the
// face for which the drawing measured its words.
const textWidth = 0.8

// plainLine is the unbroken line type, whose name the format fixes.
const plainLine = "CONTINUOUS"

// The two colours, by the format's numbers: the one that stands off from the
// reader's ground, and grey. Hues say nothing here.
const (
	blackOrWhite = 7
	middleGrey   = 8
)

// broken are the line types of the strokes that are not unbroken. The names are
// those that DXF readers have always brought along, since some know a line type
// by its name only and pass over its pattern.
var broken = []struct {
	stroke draw.Stroke
	name   string
}{
	{draw.BlankStroke, "DASHED"},
	{draw.LeaderStroke, "DASHED2"},
	{draw.CentreStroke, "CENTER"},
	{draw.SquareStroke, "DIVIDE"},
	{draw.JoinStroke, "DOT"},
}

// lineType names a stroke's line type.
func lineType(s draw.Stroke) string {
	for _, b := range broken {
		if b.stroke == s {
			return b.name
		}
	}
	return plainLine
}

// header writes version, code page, unit and extents.
func (c *canvas) header(d draw.Drawing) {
	room := d.Bounds()
	if room.Empty() {
		room = draw.Rect{}
	}
	c.text(0, "SECTION")
	c.text(2, "HEADER")
	c.text(9, "$ACADVER")
	c.text(1, "AC1009")
	c.text(9, "$DWGCODEPAGE")
	c.text(3, "ANSI_1252")
	c.text(9, "$INSUNITS")
	c.whole(70, 4) // millimetres
	c.text(9, "$MEASUREMENT")
	c.whole(70, 1) // metric
	c.text(9, "$LTSCALE")
	c.real(40, 1)
	for _, corner := range []struct {
		name string
		at   draw.Point
	}{{"$EXTMIN", room.Min}, {"$EXTMAX", room.Max}} {
		c.text(9, corner.name)
		c.point(10, corner.at)
	}
	c.text(0, "ENDSEC")
}

// tables writes the line types, layers and the text style.
func (c *canvas) tables(d draw.Drawing) {
	c.text(0, "SECTION")
	c.text(2, "TABLES")
	c.lineTypes()
	c.layers(d)
	c.table("STYLE", 1)
	c.text(0, "STYLE")
	c.text(2, textStyle)
	c.whole(70, 0)
	c.real(40, 0) // height not fixed
	c.real(41, textWidth)
	c.real(50, 0) // upright
	c.whole(71, 0)
	c.real(42, 2.5) // height last used
	c.text(3, "txt")
	c.text(4, "")
	c.text(0, "ENDTAB")
	c.text(0, "ENDSEC")
}

func (c *canvas) table(name string, entries int) {
	c.text(0, "TABLE")
	c.text(2, name)
	c.whole(70, entries)
}

func (c *canvas) lineTypes() {
	c.table("LTYPE", len(broken)+1)
	c.lineTypeEntry(plainLine, "unbroken", nil)
	for _, b := range broken {
		c.lineTypeEntry(b.name, b.stroke.String(), b.stroke.DashMM())
	}
	c.text(0, "ENDTAB")
}

// lineTypeEntry writes one pattern: dashes are positive, gaps negative.
func (c *canvas) lineTypeEntry(name, words string, dashMM []float64) {
	c.text(0, "LTYPE")
	c.text(2, name)
	c.whole(70, 0)
	c.text(3, encode(words))
	c.whole(72, 65) // the code of 'A', the only alignment there is
	c.whole(73, len(dashMM))
	total := 0.0
	for _, d := range dashMM {
		total += d
	}
	c.real(40, total)
	for i, d := range dashMM {
		if i%2 == 1 {
			d = -d
		}
		c.real(49, d)
	}
}

// layers writes layer 0, which every drawing must have, and the drawing's own.
func (c *canvas) layers(d draw.Drawing) {
	c.table("LAYER", len(d.Layers)+1)
	c.layerEntry("0")
	for _, l := range d.Layers {
		c.layerEntry(layerName(l.Name))
	}
	c.text(0, "ENDTAB")
}

func (c *canvas) layerEntry(name string) {
	c.text(0, "LAYER")
	c.text(2, name)
	c.whole(70, 0)
	c.whole(62, blackOrWhite)
	c.text(6, plainLine)
}
