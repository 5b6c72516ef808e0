package unit_test

import (
	"testing"

	"scalepair/data/testutil"
	"scalepair/data/unit"
)

func TestPublishedConversions(t *testing.T) {
	for _, row := range testutil.LoadPublished(t, "conversions.csv") {
		t.Run(row.ID, func(t *testing.T) { row.Check(t, convert(t, row)) })
	}
}

// convert does a row's conversion through the package's own text reading.
func convert(t *testing.T, row testutil.Published) float64 {
	text := row.Text("given") + " " + row.Text("unit")
	var x float64
	var err error
	switch row.Quantity {
	case "length_mm":
		var l unit.Length
		l, err = unit.ParseLength(text)
		x = l.MM()
	case "mass_kg":
		var m unit.Mass
		m, err = unit.ParseMass(text)
		x = m.Kg()
	case "force_n":
		var f unit.Force
		f, err = unit.ParseForce(text)
		x = f.N()
	case "gravity_m_s2":
		x = unit.StandardGravity
	case "stress_mpa":
		x = row.Input(t, "given") * unit.KilopoundPerSquareInch / 1e6
	case "stress_gpa":
		x = row.Input(t, "given") * unit.KilopoundPerSquareInch / 1e9
	default:
		t.Fatalf("no conversion for %s", row.Quantity)
	}
	if err != nil {
		t.Fatal(err)
	}
	return x
}
