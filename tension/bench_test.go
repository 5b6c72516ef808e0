package tension_test

import (
	"testing"

	"scalepair/tension"
)

var sink float64

func perString(b *testing.B, strings int) {
	b.ReportMetric(float64(strings)*float64(b.N)/b.Elapsed().Seconds(), "strings/s")
}

// BenchmarkOpen computes sixty gauges at a hundred lengths a turn.
func BenchmarkOpen(b *testing.B) {
	wires := make([]wire, 60)
	for i := range wires {
		wires[i] = steel(0.2e-3 + float64(i)*0.01e-3)
	}
	b.ReportAllocs()
	for b.Loop() {
		for l := range 100 {
			for i := range wires {
				sink += openAt(wires[i], 0.6+float64(l)*1e-3, 196)
			}
		}
	}
	perString(b, 6000)
}

// BenchmarkStretched is the same with weight and compliance side by side, as
// a search over gauges holds them.
func BenchmarkStretched(b *testing.B) {
	weights, compliances := make([]float64, 60), make([]float64, 60)
	for i := range weights {
		w := steel(0.2e-3 + float64(i)*0.01e-3)
		weights[i], compliances[i] = w.LinearDensity, w.Compliance()
	}
	b.ReportAllocs()
	for b.Loop() {
		sum := 0.0
		for l := range 100 {
			perWeight := textbook(1, 0.6+float64(l)*1e-3, 196)
			for i, w := range weights {
				sum += tension.Stretched(w*perWeight, compliances[i])
			}
		}
		sink += sum
	}
	perString(b, 6000)
}

func BenchmarkBendString(b *testing.B) {
	w, at := steel(0.254e-3), wholeTone()
	b.ReportAllocs()
	for b.Loop() {
		bend, _ := bendString(w, at)
		sink += bend.Force
	}
	perString(b, 1)
}

// BenchmarkContact sets a known spot out on another length.
func BenchmarkContact(b *testing.B) {
	at := wholeTone()
	spot, _ := newSpot(at.Fret, at.Rise)
	b.ReportAllocs()
	for b.Loop() {
		contact, _ := spot.Contact(at.real())
		sink += contact.Strain(26e6)
	}
	perString(b, 1)
}

func BenchmarkShape(b *testing.B) {
	w, at := steel(0.254e-3), wholeTone()
	spot, _ := newSpot(at.Fret, at.Rise)
	contact, _ := spot.Contact(at.real())
	b.ReportAllocs()
	for b.Loop() {
		shape, _ := contact.Shape(w.StretchSpeed2())
		sink += shape.Lever
	}
	perString(b, 1)
}

func BenchmarkCompensation(b *testing.B) {
	w, at := steel(0.254e-3), wholeTone()
	b.ReportAllocs()
	for b.Loop() {
		lo, _, _ := compensation(w, at.Length, at.Pitch, 1.6e-3, at.Tails)
		sink += lo
	}
	perString(b, 1)
}
