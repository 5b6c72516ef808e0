package draw

// Canvas is what a drawing is put on: one of the writers, or a recorder. All
// coordinates are millimetres with y up; a writer whose format runs otherwise
// turns them itself. Calls come as
//
//	Sheet (Window (Layer element...)...)...
type Canvas interface {
	// Sheet begins a sheet of that size, its origin at the lower left corner.
	Sheet(name string, width, height float64)
	// Window says that what follows shows only inside the convex outline with
	// these corners; no corners take the window away.
	Window(corners []Point)
	// Layer says which layer the following elements belong to.
	Layer(name LayerName)
	Line(l Line)
	Polyline(p Polyline)
	Circle(ring Circle)
	Text(t Text)
}

// Sheet is one piece of paper, or one picture. Width and Height are its
// size; the origin is at its lower left corner.
type Sheet struct {
	Name          string
	Width, Height float64
	Parts         []Part
}

// Part is a drawing in sheet coordinates, seen through the convex outline
// Window; no corners show all of it.
type Part struct {
	Window  []Point
	Drawing Drawing
}

// On draws the sheet on c.
func (s Sheet) On(c Canvas) {
	c.Sheet(s.Name, s.Width, s.Height)
	for _, p := range s.Parts {
		c.Window(p.Window)
		p.Drawing.On(c)
	}
	c.Window(nil)
}

// On draws the layers in order on c, which already has its sheet.
func (d Drawing) On(c Canvas) {
	for _, l := range d.Layers {
		if len(l.Elements) == 0 {
			continue
		}
		c.Layer(l.Name)
		for _, e := range l.Elements {
			e.On(c)
		}
	}
}
