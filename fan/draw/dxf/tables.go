package dxf

import (
	"cmp"
	"maps"
	"slices"

	"scalepair/fan/draw"
)

const (
	// textStyle is the one text style; its font is the one that every reader has.
	textStyle = "STANDARD"
	// textWidth narrows the letters: that font runs about a quarter wider than
	// the face for which the drawing measured its words.
	textWidth = 0.8
	// plainLine is the unbroken line type, whose name the format fixes.
	plainLine = "CONTINUOUS"
	// textLayer has all words, in the colour that contrasts with the reader's ground.
	textLayer, textColour = "TEXT", 7
)

// broken are the line types of the strokes that are not unbroken. The names are
// those that DXF readers have always brought along, since some know a line type
// by its name only and pass over its pattern.
var broken = map[draw.Stroke]string{
	draw.BlankStroke: "DASHED", draw.BaseStroke: "DASHDOT", draw.LeaderStroke: "DASHED2", draw.CentreStroke: "CENTER",
	draw.SquareStroke: "DIVIDE", draw.JoinStroke: "DOT",
}

// lineType names a stroke's line type.
func lineType(s draw.Stroke) string { return cmp.Or(broken[s], plainLine) }

// header writes version, code page, unit and extents.
func (c *canvas) header(d draw.Drawing) {
	room := d.Bounds()
	if room.Empty() {
		room = draw.Rect{}
	}
	c.put(0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009", 9, "$DWGCODEPAGE", 3, "ANSI_1252")
	c.put(9, "$INSUNITS", 70, 4, 9, "$MEASUREMENT", 70, 1) // millimetres, metric
	c.put(9, "$LTSCALE", 40, 1.0, 9, "$EXTMIN", 10, room.Min, 9, "$EXTMAX", 10, room.Max, 0, "ENDSEC")
}

// tables writes the line types, the layers and the text style.
func (c *canvas) tables(d draw.Drawing) {
	c.put(0, "SECTION", 2, "TABLES")
	c.table("LTYPE", len(broken)+1)
	c.lineType(plainLine, "unbroken", nil)
	for _, s := range slices.Sorted(maps.Keys(broken)) {
		c.lineType(broken[s], s.String(), s.Dash())
	}
	c.put(0, "ENDTAB")
	c.table("LAYER", len(d.Layers)+2)
	c.layerEntry("0", textColour) // which every drawing must have
	for _, l := range d.Layers {
		c.layerEntry(layerName(l.Name), l.Name.Colour().Number)
	}
	c.layerEntry(textLayer, textColour)
	c.put(0, "ENDTAB")
	c.table("STYLE", 1)
	// Height not fixed, width, upright, no flags, height last used, the font.
	c.put(0, "STYLE", 2, textStyle, 70, 0, 40, 0.0, 41, textWidth, 50, 0.0, 71, 0, 42, 2.5, 3, "txt", 4, "")
	c.put(0, "ENDTAB", 0, "ENDSEC")
}

func (c *canvas) table(name string, entries int) { c.put(0, "TABLE", 2, name, 70, entries) }

// lineType writes one pattern: dashes are positive, gaps negative. 65 is the
// code of 'A', the only alignment there is.
func (c *canvas) lineType(name, words string, dash []float64) {
	total := 0.0
	for _, d := range dash {
		total += d
	}
	c.put(0, "LTYPE", 2, name, 70, 0, 3, encode(words), 72, 65, 73, len(dash), 40, total)
	for i, d := range dash {
		if i%2 == 1 {
			d = -d
		}
		c.put(49, d)
	}
}

func (c *canvas) layerEntry(name string, colour int) {
	c.put(0, "LAYER", 2, name, 70, 0, 62, colour, 6, plainLine)
}
