package fan_test

import (
	"testing"

	"scalepair/data/unit"
	"scalepair/fan"
)

// eightStrings is the neck the benchmarks use.
func eightStrings() fan.Spec {
	s := fan.DefaultSpec()
	s.Strings, s.Neutral = 8, fan.Neutral{Fret: 8}
	s.Bass, s.Treble = unit.MM(700), unit.MM(650)
	s.NutSpread, s.SaddleSpread = unit.MM(52), unit.MM(76)
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
			if _, reason := base.Frame(unit.MM(660+float64(i%80)), unit.MM(640)); reason != fan.Fits {
				b.Fatal(reason)
			}
		}
	})
	frame, _ := base.Frame(unit.MM(700), unit.MM(650))
	sum := 0.0
	b.Run("lengths of 8", func(b *testing.B) {
		b.ReportAllocs()
		for range b.N {
			for i := range 8 {
				sum += frame.Length(i).MM()
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
			sum += frame.Reach(i%8, 12, i%2 == 0).MM()
		}
	})
	b.Run("blank", func(b *testing.B) {
		b.ReportAllocs()
		for range b.N {
			blank := frame.LeastBlank()
			sum += (blank.Length + blank.Width).MM()
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
