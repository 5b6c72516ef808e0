package data

import (
	"fmt"
	"io"
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

var materialColumns = []csvtable.Column{
	{Name: "name", Required: true},
	{Name: "also"},
	{Name: "density_kg_m3", Required: true},
	{Name: "density_u_kg_m3", Required: true},
	{Name: "youngs_gpa"},
	{Name: "strength_mpa"},
	{Name: "source", Required: true},
	{Name: "confidence", Required: true},
	{Name: "stiffness_source"},
	{Name: "stiffness_confidence"},
}

// ParseMaterials reads a table of materials. The error is a fault.List of every
// fault; the materials are then nil.
func ParseMaterials(in io.Reader, file string) ([]Material, error) {
	rows, faults := csvtable.Scan(in, file, materialColumns)
	out := make([]Material, 0, len(rows))
	for i := range rows {
		out = append(out, material(&rows[i], &faults))
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return out, nil
}

func material(r *csvtable.Row, faults *fault.List) Material {
	m := Material{
		Name: strings.ToLower(r.Get("name")), Also: names(r.Get("also")),
		DensityKgM3: within(r, "density_kg_m3", 100, 25000, faults),
		DensityU:    within(r, "density_u_kg_m3", 0, 2000, faults),
		YoungsPa:    1e9 * within(r, "youngs_gpa", 0.01, 1000, faults),
		StrengthPa:  1e6 * within(r, "strength_mpa", 1, 10000, faults),
		Source:      r.Get("source"), Confidence: confidence(r, "confidence", faults),
		StiffnessSource: r.Get("stiffness_source"), StiffnessConfidence: confidence(r, "stiffness_confidence", faults),
	}
	if (m.YoungsPa > 0 || m.StrengthPa > 0) && (m.StiffnessSource == "" || m.StiffnessConfidence == "") {
		faults.Add(r.Place("name"), "a stiffness or strength without source or confidence", m.Name, "")
	}
	return m
}

func names(cell string) []string {
	var out []string
	for n := range strings.SplitSeq(cell, ";") {
		if n = strings.TrimSpace(n); n != "" {
			out = append(out, n)
		}
	}
	return out
}

// within reads a number of a sensible size; 0 for an empty cell.
func within(r *csvtable.Row, name string, low, high float64, faults *fault.List) float64 {
	x, ok := r.Number(name, faults)
	if ok && (x < low || x > high) {
		faults.Add(r.Place(name), fmt.Sprintf("%s lies outside %v to %v", name, low, high), r.Get(name), "")
	}
	return x
}

func confidence(r *csvtable.Row, name string, faults *fault.List) string {
	c := r.Get(name)
	if c != "" && !slices.Contains(Confidences, c) {
		faults.Add(r.Place(name), "no confidence", c, "write "+strings.Join(Confidences, ", "))
	}
	return c
}

// embedded holds the rows of the embedded table. A row is read when it is first
// asked for, since most runs need one. A fault in it is a bug and panics.
var embedded = sync.OnceValue(func() (rows []embeddedRow) {
	heading := ""
	for line := range strings.Lines(materials) {
		switch {
		case line[0] == '#':
		case heading == "":
			heading = line
		default:
			rows = append(rows, embeddedRow{line, sync.OnceValue(func() Material { return readRow(heading + line) })})
		}
	}
	return rows
})

type embeddedRow struct {
	line string
	read func() Material
}

func readRow(table string) Material {
	list, err := ParseMaterials(strings.NewReader(table), "materials.csv")
	if err != nil {
		panic(err)
	}
	return list[0]
}

// is tells whether a row's name, or a further one, is the given name. Neither
// cell is quoted in the embedded table.
func (r embeddedRow) is(name string) bool {
	first, rest, _ := strings.Cut(r.line, ",")
	also, _, _ := strings.Cut(rest, ",")
	if sameName(first, name) {
		return true
	}
	for n := range strings.SplitSeq(also, ";") {
		if n != "" && sameName(n, name) {
			return true
		}
	}
	return false
}

// AllMaterials gives the embedded materials in the order of the table.
func AllMaterials() []Material {
	out := make([]Material, 0, len(embedded()))
	for _, r := range embedded() {
		out = append(out, r.read())
	}
	return out
}

// LookupMaterial finds an embedded material by its name or a further name, the
// first of the table where two share one; case, blanks and hyphens do not count.
// The error suggests a near name.
func LookupMaterial(name string) (Material, error) {
	for _, r := range embedded() {
		if r.is(name) {
			return r.read(), nil
		}
	}
	var known []string
	for _, m := range AllMaterials() {
		known = append(append(known, m.Name), m.Also...)
	}
	return Material{}, fault.Fault{What: "no material of that name", Given: name, Remedy: suggestion(name, known)}
}

func suggestion(name string, known []string) string {
	if best := suggest.Nearest(name, known); best != "" {
		return fmt.Sprintf("did you mean %q?", best)
	}
	var words []string
	for _, m := range AllMaterials() {
		words = append(words, m.Name)
	}
	return "the materials are " + strings.Join(words, ", ")
}

// sameName tells whether two names differ in case, blanks and hyphens only.
func sameName(a, b string) bool {
	a, b = strings.ToLower(a), strings.ToLower(b)
	for {
		a, b = strings.TrimLeft(a, " -_"), strings.TrimLeft(b, " -_")
		if a == "" || b == "" || a[0] != b[0] {
			return a == b
		}
		a, b = a[1:], b[1:]
	}
}
