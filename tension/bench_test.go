package tension_test

import "testing"

var sink float64

func BenchmarkBendString(b *testing.B) {
	w, at := steel(0.254e-3), wholeTone()
	b.ReportAllocs()
	for b.Loop() {
		bend, _ := bendString(w, at)
		sink += bend.Force
	}
}

// BenchmarkContactBend is a bend of one more gauge where the place is set out already.
func BenchmarkContactBend(b *testing.B) {
	w, contact := steel(0.254e-3), contactOf(b, wholeTone())
	b.ReportAllocs()
	for b.Loop() {
		bend, _ := contact.Bend(w.real())
		sink += bend.Distance.M()
	}
}

func BenchmarkCompensation(b *testing.B) {
	w, at := steel(0.254e-3), wholeTone()
	b.ReportAllocs()
	for b.Loop() {
		lo, _, _ := compensation(w, at.Length, at.Pitch, 1.6e-3, at.Tails)
		sink += lo
	}
}
