package trial

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
)

// gauge is a string of an invented stock.
type gauge struct {
	label         string
	family        string // "plain", or the name of a wound kind
	outer, core   Size   // core 0: none, or not known
	linearDensity float64
	material      string
	hex, unknown  bool // unknown: the core is not told
}

// wireKind is what the strings of an instrument are made of.
type wireKind struct {
	material    string  // of plain strings and cores
	density     float64 // kg/m3
	thickest    float64 // plain, mm
	thinnest    float64 // plain, mm
	coreStress  float64 // Pa, what a core is made to stand
	woundFamily string
	coreKnown   bool    // of wound strings
	strengthMPa float64 // as stated; 0 where the table of music wire has it
}

var (
	steelWire = wireKind{"", 7850, 0.56, 0.19, 1.35e9, "nickel wound", true, 0}
	nylonWire = wireKind{"nylon", 1080, 1.1, 0.5, 3e8, "silvered nylon", true, 350}
)

// gaugeOf makes the string whose linear density is wanted: plain where it is thin
// enough, else wound over a core that stands the tension.
func (k wireKind) gaugeOf(r *rand.Rand, linearDensity, tensionN float64) gauge {
	d := 1e3 * math.Sqrt(4*linearDensity/(math.Pi*k.density))
	if d < k.thickest {
		outer := mm(max(d, k.thinnest))
		return gauge{label: thou("p", outer), family: "plain", outer: outer, material: k.material,
			linearDensity: k.density * math.Pi / 4 * square(outer.MM()/1e3)}
	}
	d = 1e3 * math.Sqrt(4*linearDensity/(math.Pi*6300))
	core := max((0.22+0.22*d)*(0.9+0.2*r.Float64()), 1e3*math.Sqrt(4*tensionN/(math.Pi*k.coreStress)))
	core = min(core, 0.8*d)
	g := gauge{label: thou("w", mm(d)), family: k.woundFamily, outer: mm(d), core: mm(core), material: k.material,
		hex: r.IntN(2) == 0, unknown: !k.coreKnown || r.IntN(40) == 0}
	g.linearDensity = k.density*math.Pi/4*square(g.core.MM()/1e3) + 6200*math.Pi/4*(square(g.outer.MM()/1e3)-square(g.core.MM()/1e3))
	return g
}

// thou names a gauge by its outer diameter in half thousandths of an inch.
func thou(kind string, outer Size) string { return fmt.Sprintf("%s%d", kind, int(outer)) }

func square(x float64) float64 { return x * x }

// lightestFirst sorts a stock and leaves out what stands in it twice.
func lightestFirst(stock []gauge) []gauge {
	slices.SortFunc(stock, func(a, b gauge) int {
		if a.family != b.family && (a.family == "plain" || b.family == "plain") {
			return map[bool]int{true: -1, false: 1}[a.family == "plain"]
		}
		return int(a.outer - b.outer)
	})
	return slices.CompactFunc(stock, func(a, b gauge) bool { return a.label == b.label })
}

// nearest gives the place in the stock of the string that is nearest in weight,
// not before the given place.
func nearest(stock []gauge, linearDensity float64, from int) int {
	best := from
	for i := from; i < len(stock); i++ {
		if math.Abs(math.Log(stock[i].linearDensity/linearDensity)) < math.Abs(math.Log(stock[best].linearDensity/linearDensity)) {
			best = i
		}
	}
	return best
}

// reading is one row of a readings file, its lengths to be Value in either
// unit.
type reading struct {
	gauge         gauge
	kind          string // weighed, hung or listed
	pieces        int
	length        Size
	massG         float64
	hungKg, hertz float64
	winding       Size
}

// weigh makes the readings of a stock: one weighing or two of each, some hung,
// a few listed without any, and now and then a slip.
func weigh(r *rand.Rand, stock []gauge) []reading {
	var out []reading
	for _, g := range stock {
		for range 1 + r.IntN(2) {
			out = append(out, weighOne(r, g))
		}
		if r.IntN(25) == 0 {
			last := &out[len(out)-1]
			last.massG = math.Round(last.massG*200*(0.9+0.2*r.Float64())) / 200
		}
	}
	// One that is only listed is estimated from its neighbours.
	if at := 1 + r.IntN(len(stock)-2); r.IntN(3) == 0 && stock[at-1].family == stock[at].family && stock[at+1].family == stock[at].family {
		out = slices.DeleteFunc(out, func(x reading) bool { return x.gauge.label == stock[at].label })
		out = append(out, reading{gauge: stock[at], kind: "listed"})
	}
	return out
}

func weighOne(r *rand.Rand, g gauge) reading {
	w := g.linearDensity * (1 + 0.003*r.NormFloat64())
	row := reading{gauge: g, kind: "weighed", pieces: 1, length: mm(300 + 600*r.Float64()).round()}
	if g.family != "plain" && r.IntN(5) == 0 {
		row.winding = mm(1400).round()
	}
	if r.IntN(12) == 0 && !g.unknown {
		row.kind, row.pieces = "hung", 0
		row.hungKg = math.Round(10*w*square(2*row.length.MM()/1e3*80)/9.80665) / 10
		if row.hungKg >= 0.5 && row.hungKg <= 12 {
			row.hertz = math.Round(100*math.Sqrt(9.80665*row.hungKg/w)/(2*row.length.MM()/1e3)) / 100
			return row
		}
		row.kind, row.pieces, row.hungKg = "weighed", 1, 0
	}
	for w*row.length.MM()*float64(row.pieces) < 0.35 {
		row.pieces++
	}
	row.massG = math.Round(100*w*row.length.MM()*float64(row.pieces)) / 100
	return row
}

// Readings writes the readings file.
func (b *Build) Readings(inches bool) string {
	var out strings.Builder
	u := lengthUnit(inches)
	fmt.Fprintf(&out, "gauge,construction,outer_%s,core_%s,core_shape,diameters,material,kind,pieces,length_%s,mass_g,hung_mass_kg,speaking_length_%s,pitch_hz,winding_%s,strength_mpa\n", u, u, u, u, u)
	cell := func(s Size) string {
		if s == 0 {
			return ""
		}
		return s.number(inches)
	}
	figure := func(x float64) string {
		if x == 0 {
			return ""
		}
		return Number(x)(inches)
	}
	for _, row := range b.readings {
		g := row.gauge
		core, shape, known := g.core, "round", "nominal"
		if g.hex {
			shape = "hex"
		}
		if g.unknown || g.core == 0 {
			core, shape = 0, ""
		} else {
			known = "core measured"
		}
		weighed, hung := row.length, Size(0)
		if row.kind == "hung" {
			weighed, hung = 0, row.length
		}
		cells := []string{g.label, g.family, cell(g.outer), cell(core), shape, known, g.material, row.kind, figure(float64(row.pieces)),
			cell(weighed), figure(row.massG), figure(row.hungKg), cell(hung), figure(row.hertz), cell(row.winding), figure(b.sort.wire.strengthMPa)}
		fmt.Fprintln(&out, strings.Join(cells, ","))
	}
	return out.String()
}
