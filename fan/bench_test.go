package fan_test

import (
	"testing"

	"scalepair/fan"
)

// eightStrings is the neck the benchmarks use.
func eightStrings() fan.Spec {
	s := fan.DefaultSpec()
	s.Strings, s.Neutral = 8, fan.Neutral{Fret: 8}
	s.BassMM, s.TrebleMM = 700, 650
	s.NutSpreadMM, s.SaddleSpreadMM = 52, 76
	return s
}

func BenchmarkFrame(b *testing.B) {
	base, err := fan.NewBase(eightStrings())
	if err != nil {
		b.Fatal(err)
	}
	b.Run("settle", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			if _, reason := base.Frame(660+float64(i%80), 640); reason != fan.Fits {
				b.Fatal(reason)
			}
		}
	})
	frame, _ := base.Frame(700, 650)
	sum := 0.0
	b.Run("lengths of 8", func(b *testing.B) {
		b.ReportAllocs()
		for range b.N {
			for i := range 8 {
				sum += frame.LengthMM(i)
			}
		}
	})
	b.Run("slant", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			sum += frame.TanSlant(float64(i % 25))
		}
	})
	b.Run("reach", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			sum += frame.ReachMM(i%8, 12, i%2 == 0)
		}
	})
	b.Run("blank", func(b *testing.B) {
		b.ReportAllocs()
		for range b.N {
			l, w := frame.BlankMM()
			sum += l + w
		}
	})
	if sum < 0 {
		b.Fatal("lengths below zero")
	}
}

func BenchmarkLayout(b *testing.B) {
	spec := eightStrings()
	b.ReportAllocs()
	for range b.N {
		if _, err := fan.New(spec); err != nil {
			b.Fatal(err)
		}
	}
}
