package tension

import (
	"math"

	"scalepair/data/unit"
)

// mostStrain is a string at twice its slack length, where no law here holds.
const mostStrain = 1.0

// Contact is a bend with all but the wire worked out, so that a search over
// gauges does that part once. Make it with [NewContact].
type Contact struct {
	x, s    float64 // nut to contact and contact to saddle at rest, m
	t       float64 // tangent of the slant
	perRest float64 // 1/R(0), R(0) the whole wire at rest, 1/m
	curve   float64 // half the second derivative of R by y at rest, over R(0), 1/m2
	speed2  float64 // (2 L f)^2, m2/s2
	gain    float64 // (f/f0)^2 - 1 of the wanted rise
	end     float64 // how far the finger can go, m
}

// NewContact sets a string out for a bend.
//
//	s = L 2^(-n/12), x = L - s
//
// The bend distance ends at the far edge of the board, or where the
// contact would run off the end of the string if that comes first.
// Source: equal temperament and f proportional to 1/L (OpenStax University
// Physics 1, section 16.6).
func NewContact(at BendAt) Contact {
	octaves := at.Fret / 12
	sounding, silent := math.Exp2(-octaves), -math.Expm1(-octaves*math.Ln2)
	l := at.Length.M()
	c := Contact{x: l * silent, s: l * sounding, t: at.TanSlant, gain: math.Expm1(at.Rise.Value() / 600 * math.Ln2), end: at.Reach.M()}
	switch run := c.end * c.t; {
	case run > c.s:
		c.end = c.s / c.t
	case -run > c.x:
		c.end = c.x / -c.t
	}
	v := 2 * l * at.Pitch.Hz()
	c.speed2 = v * v
	rest := l + at.Tails.Nut.M() + at.Tails.Saddle.M()
	per := 1 / (l * rest)
	c.perRest = l * per
	c.curve = 1 / (2 * silent * sounding) * per
	return c
}

// Strain is the strain e of the open string at pitch.
//
//	e (1 + e) = (2 L f)^2 w/EA
//
// It is [Open] over EA, and all that the bend distance asks of the wire: EA/w is
// E/rho for plain wire, whatever its gauge.
func (c Contact) Strain(w *Wire) float64 {
	return Stretched(c.speed2/(w.EA.N()/w.LinearDensity.KgPerM()), 1)
}

// bent is the string held at y: how its length grew and how fast it grows.
type bent struct {
	growth float64 // (R(y) - R(0))/R(0)
	slope  float64 // dR/dy
}

// at gives the run over a contact y from rest.
//
//	a = x + y t, b = s - y t
//	R(y) = hypot(a, y) + hypot(b, y) + tails
//	dR/dy = (y + t a)/hypot(a, y) + (y - t b)/hypot(b, y)
//
// With A = hypot(a, y) + a and B = hypot(b, y) + b the same, in a form that
// loses no digits however small y is (a + b = x + s):
//
//	R(y) - R(0) = y^2/A + y^2/B
//	dR/dy = y (1/hypot(a, y) + 1/hypot(b, y)) + t y^2 (1/(B hypot(b, y)) - 1/(A hypot(a, y)))
//
// brought onto one denominator. The sides are far inside what float64 squares
// without overflow. Products are rounded on their own, so that every
// processor gives the same bytes.
func (c *Contact) at(y float64) bent {
	ty := float64(y * c.t)
	a, b := c.x+ty, c.s-ty
	yy := float64(y * y)
	ha, hb := math.Sqrt(float64(a*a)+yy), math.Sqrt(float64(b*b)+yy)
	sa, sb := ha+a, hb+b
	ss, hh := sa*sb, ha*hb
	per := 1 / (ss * hh)
	skew := float64(sa*ha) - float64(sb*hb)
	return bent{
		growth: yy * (sa + sb) * hh * per * c.perRest,
		slope:  y * per * (float64((ha+hb)*ss) + float64(ty*skew)),
	}
}

// excess is by how much the string at y stands above the wanted rise, with a
// slope; its root is the bend distance.
//
//	(f/f0)^2 = (T/T0) (R/R0) s^2/hypot(b, y)^2, T/T0 = 1 + k d, R/R0 = 1 + d
//	d = (R(y) - R(0))/R(0), k = (1 + e)/e
//	excess = s^2 ((1 + k d)(1 + d) - 1 - gain) - (1 + gain) (hypot(b, y)^2 - s^2)
//
// It follows from T = EA (R/R0 - 1) and w = w_slack R0/R with the natural
// length R0 = R(0)/(1 + e). y is above 0. The slope is that by y less
// excess/(2 y), which is Halley's slope for an equation in y^2, as this one
// nearly is: it saves a turn of the search.
func (c *Contact) excess(y, k float64) (value, slope float64) {
	r := c.at(y)
	d := r.growth
	ss := c.s * c.s
	wide := float64(y*(1+float64(c.t*c.t))) - c.s*c.t
	raise := float64(d * (1 + float64(k*(1+d))))
	stretch := 1 + float64(k*(1+float64(2*d)))
	value = float64(ss*(raise-c.gain)) - float64((1+c.gain)*y*(wide-float64(c.s*c.t)))
	slope = float64(ss*stretch*r.slope*c.perRest) - float64(2*(1+c.gain)*wide)
	return value, slope - value/(2*y)
}

// Rise is the rise in cents over the pitch at the fret of a string held
// y metres from rest, 0 or more, at an open strain above 0.
//
//	600 log2((1 + k d)(1 + d) s^2/hypot(b, y)^2)
//
// Symbols as in excess; hypot(b, y)^2 - s^2 = y (y (1 + t^2) - 2 s t) keeps the
// digits of a small y.
func (c Contact) Rise(strain, y float64) float64 {
	d := c.at(y).growth
	k := (1 + strain) / strain
	longer := y * (float64(y*(1+float64(c.t*c.t))) - float64(2*c.s*c.t)) / (c.s * c.s)
	return 600 * (math.Log1p(k*d) + math.Log1p(d) - math.Log1p(longer)) / math.Ln2
}

// Bend finds the bend distance that gives the wanted rise; false where the way
// ends before it, or where the wire's stiffness is not known or too little.
//
//	T = EA x strain, bending force = T dR/dy
//
// Where the bend carries the contact away from the saddle the pitch first
// falls a little, then rises; the root is the one after the fall.
func (c Contact) Bend(w *Wire) (Bend, bool) {
	strain := c.Strain(w)
	if !(strain <= mostStrain) {
		return Bend{}, false
	}
	switch {
	case c.gain == 0:
		return Bend{Tension: w.EA * unit.Force(strain)}, true
	case c.end == 0:
		return Bend{}, false
	}
	k := (1 + strain) / strain
	y, ok := risingRoot(func(y float64) (float64, float64) { return c.excess(y, k) }, 0, c.end, c.guess(k))
	if !ok {
		return Bend{}, false
	}
	r := c.at(y)
	t := w.EA.N() * (strain + float64((1+strain)*r.growth))
	return Bend{Force: unit.Force(t * r.slope), Distance: unit.Length(y), Tension: unit.Force(t)}, true
}

// guess is the root with R(y) taken to second order in y and d to first.
func (c *Contact) guess(k float64) float64 {
	square := float64((k+1)*c.curve) - (1+c.gain)*(1+float64(c.t*c.t))/(c.s*c.s)
	half := (1 + c.gain) * c.t / c.s
	under := float64(half*half) + float64(square*c.gain)
	if !(square > 0 && under > 0) {
		return c.end
	}
	return min(c.gain/(half+math.Sqrt(under)), c.end)
}
