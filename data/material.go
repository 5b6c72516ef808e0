package data

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"sync"

	"scalepair/data/csvtable"
	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// MusicWire is the name of the material of plain strings and steel cores, the
// only one whose strength depends on the diameter (see WireStrength).
const MusicWire = "music wire"

// Material is what a string, a core or a wrap is made of.
type Material struct {
	Name string
	Also []string // further names

	DensityKgM3 float64
	DensityU    float64 // standard uncertainty, kg/m3
	YoungsPa    float64 // Young's modulus; 0 not known
	StrengthPa  float64 // least tensile strength; 0 not known here

	// Source and Confidence hold for the density, the other two for modulus
	// and strength. Confidence is one of Confidences.
	Source, Confidence                   string
	StiffnessSource, StiffnessConfidence string
}

// Confidences lists what the table of materials may say of a figure.
var Confidences = []string{"read", "as quoted", "from memory", "no source", "estimated"}

// materials reads the embedded table once. A fault in it is a bug and panics.
var materials = sync.OnceValue(func() []Material {
	var columns []csvtable.Column
	for _, name := range []string{"name", "also", "density_kg_m3", "density_u_kg_m3", "youngs_gpa", "strength_mpa",
		"source", "confidence", "stiffness_source", "stiffness_confidence"} {
		columns = append(columns, csvtable.Column{Name: name})
	}
	rows, faults := csvtable.Read(bytes.NewReader(Materials()), "materials.csv", columns)
	out := make([]Material, len(rows))
	for i := range rows {
		r := &rows[i]
		number := func(name string) float64 {
			x, _ := r.Number(name, &faults)
			return x
		}
		out[i] = Material{
			Name: strings.ToLower(r.Get("name")), DensityKgM3: number("density_kg_m3"), DensityU: number("density_u_kg_m3"),
			YoungsPa: 1e9 * number("youngs_gpa"), StrengthPa: 1e6 * number("strength_mpa"), Source: r.Get("source"), Confidence: r.Get("confidence"),
			StiffnessSource: r.Get("stiffness_source"), StiffnessConfidence: r.Get("stiffness_confidence"),
		}
		for n := range strings.SplitSeq(r.Get("also"), ";") {
			if n = strings.TrimSpace(n); n != "" {
				out[i].Also = append(out[i].Also, n)
			}
		}
	}
	if err := faults.Err(); err != nil {
		panic(err)
	}
	return out
})

// MaterialNames are the names of the embedded materials.
func MaterialNames() (names []string) {
	for _, m := range materials() {
		names = append(names, m.Name)
	}
	return names
}

// LookupMaterial finds an embedded material by its name or a further name, the
// first of the table where two share one; case, blanks and hyphens do not count.
// The error suggests a near name.
func LookupMaterial(name string) (Material, error) {
	var known []string
	for _, m := range materials() {
		names := append([]string{m.Name}, m.Also...)
		if slices.ContainsFunc(names, func(n string) bool { return fold(n) == fold(name) }) {
			return m, nil
		}
		known = append(known, names...)
	}
	remedy := "the materials are " + strings.Join(MaterialNames(), ", ")
	if best := suggest.Nearest(name, known); best != "" {
		remedy = fmt.Sprintf("did you mean %q?", best)
	}
	return Material{}, fault.Fault{What: "no material of that name", Given: name, Remedy: remedy}
}

var blanks = strings.NewReplacer(" ", "", "-", "", "_", "")

func fold(name string) string { return blanks.Replace(strings.ToLower(name)) }
