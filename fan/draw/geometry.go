package draw

import "math"

// Point is a place on a drawing or sheet, in millimetres, y up.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle, Min at its lower left and Max at its upper
// right corner, in millimetres. The zero value of Rect is a point at the
// origin; NoRect is the rectangle that holds nothing.
type Rect struct{ Min, Max Point }

// NoRect gives the empty rectangle, from which Include grows.
func NoRect() Rect {
	inf := math.Inf(1)
	return Rect{Min: Point{inf, inf}, Max: Point{-inf, -inf}}
}

// Empty reports whether r holds no point at all.
func (r Rect) Empty() bool { return r.Min.X > r.Max.X || r.Min.Y > r.Max.Y }

// Width is r's extent in x, in mm; 0 for an empty rectangle.
func (r Rect) Width() float64 { return math.Max(0, r.Max.X-r.Min.X) }

// Height is r's extent in y, in mm; 0 for an empty rectangle.
func (r Rect) Height() float64 { return math.Max(0, r.Max.Y-r.Min.Y) }

// Include gives the smallest rectangle that holds r and the points.
func (r Rect) Include(points ...Point) Rect {
	for _, p := range points {
		r.Min.X, r.Min.Y = math.Min(r.Min.X, p.X), math.Min(r.Min.Y, p.Y)
		r.Max.X, r.Max.Y = math.Max(r.Max.X, p.X), math.Max(r.Max.Y, p.Y)
	}
	return r
}

// Union gives the smallest rectangle that holds both; an empty one adds nothing.
func (r Rect) Union(o Rect) Rect {
	if o.Empty() {
		return r
	}
	return r.Include(o.Min, o.Max)
}

// Grow moves every side outwards by mm (inwards when negative).
func (r Rect) Grow(mm float64) Rect {
	return Rect{Min: Point{r.Min.X - mm, r.Min.Y - mm}, Max: Point{r.Max.X + mm, r.Max.Y + mm}}
}

// Touches reports whether the two rectangles have a point in common.
func (r Rect) Touches(o Rect) bool {
	return r.Min.X <= o.Max.X && o.Min.X <= r.Max.X && r.Min.Y <= o.Max.Y && o.Min.Y <= r.Max.Y
}

// Corners gives the four corners, anticlockwise from the lower left.
func (r Rect) Corners() []Point {
	return []Point{r.Min, {r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}}
}

// Map carries points of a drawing to a sheet:
//
//	x' = XX x + XY y + X0,  y' = YX x + YY y + Y0
//
// The zero value sends all to the origin and is of no use.
type Map struct{ XX, XY, X0, YX, YY, Y0 float64 }

// Move shifts by dx, dy in mm.
func Move(dx, dy float64) Map { return Map{XX: 1, YY: 1, X0: dx, Y0: dy} }

// Turn rotates anticlockwise about the origin by rad. Quarter turns are exact.
func Turn(rad float64) Map {
	sin, cos := math.Sincos(rad)
	for _, v := range []*float64{&sin, &cos} {
		// A quarter turn's sine or cosine is off by at most a rounding of pi/2.
		if nearest := math.Round(*v); math.Abs(*v-nearest) < 1e-15 {
			*v = nearest
		}
	}
	return Map{XX: cos, XY: -sin, YX: sin, YY: cos}
}

// Scale stretches by the two factors about the origin. Factors must be
// positive: a mirrored template would ruin a board, and so there is no way to
// ask for one.
func Scale(x, y float64) Map {
	if !(x > 0 && y > 0) {
		panic("draw.Scale: factors must be positive")
	}
	return Map{XX: x, YY: y}
}

// Then gives the map that does m first and next after it.
func (m Map) Then(next Map) Map {
	return Map{
		XX: float64(next.XX*m.XX) + float64(next.XY*m.YX), XY: float64(next.XX*m.XY) + float64(next.XY*m.YY),
		YX: float64(next.YX*m.XX) + float64(next.YY*m.YX), YY: float64(next.YX*m.XY) + float64(next.YY*m.YY),
		X0: float64(next.XX*m.X0) + float64(next.XY*m.Y0) + next.X0,
		Y0: float64(next.YX*m.X0) + float64(next.YY*m.Y0) + next.Y0,
	}
}

// Point carries one point. The products are rounded before they are added, so
// that the bytes of a drawing are the same on every processor.
func (m Map) Point(p Point) Point {
	return Point{
		X: float64(m.XX*p.X) + float64(m.XY*p.Y) + m.X0,
		Y: float64(m.YX*p.X) + float64(m.YY*p.Y) + m.Y0,
	}
}

// Rect gives the smallest upright rectangle that holds the carried r.
func (m Map) Rect(r Rect) Rect {
	out := NoRect()
	for _, c := range r.Corners() {
		out = out.Include(m.Point(c))
	}
	return out
}

// Angle carries a direction given as an angle from the x axis, in radians.
func (m Map) Angle(rad float64) float64 {
	o, p := m.Point(Point{}), m.Point(Point{math.Cos(rad), math.Sin(rad)})
	return math.Atan2(p.Y-o.Y, p.X-o.X)
}
