package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/data/unit"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// A piece as long as ShortestPiece says has the wanted uncertainty when it is
// weighed.
func TestShortestPieceReachesTheUncertainty(t *testing.T) {
	for _, tools := range []gauges.Instruments{gauges.DefaultInstruments(), caseTools()} {
		for _, w := range []float64{0.25e-3, 0.4e-3, 2e-3, 12e-3} {
			for _, rel := range []float64{0.002, 0.01, 0.05} {
				l := fit.ShortestPiece(unit.LinearDensity(w), unit.Ratio(rel), tools)
				_, inputs := tools.Value(reading.Reading{Length: l, Mass: unit.Mass(w * l.M())}, 0, 0)
				sum := 0.0
				for _, in := range inputs {
					sum += in.RelU * in.RelU
				}
				near(t, rel, math.Sqrt(sum), 1e-9)
			}
		}
	}
}

// What WhatToWeigh promises comes true when the piece is weighed and the stock
// made anew.
func TestWhatToWeighComesTrue(t *testing.T) {
	const text = plainHead + "a,plain,0.010,300,0.12\nb,plain,0.017,300,0.34\nc,plain,0.013,200,0.13\n"
	s := combine(t, text)
	influence := []float64{72, 80, -10} // newtons per relative change
	list := s.WhatToWeigh(influence, 0.6)
	require.Len(t, list, 3)
	assert.Equal(t, "a", list[0].Gauge, "the least certain of the two that count")
	spread := func(s fit.Stock) float64 {
		sum := 0.0
		for i, g := range s.Gauges {
			sum += math.Pow(influence[i]*float64(g.RelU()), 2)
		}
		return math.Sqrt(sum)
	}
	near(t, spread(s), list[0].Before, 1e-9)
	l := list[0].Length
	g := gauge(t, s, "a")
	mass := fixed(g.LinearDensity.GramsPerMetre()*l.M(), 2)
	again := combine(t, text+"a,,,"+fixed(l.MM(), 0)+","+mass+"\n")
	near(t, list[0].After, spread(again), 0.05)
	for i := 1; i < len(list); i++ {
		assert.GreaterOrEqual(t, list[i].After, list[i-1].After)
	}
	for _, x := range list {
		assert.Less(t, x.After, x.Before)
		within(t, math.Round(float64(x.Length)*100), float64(x.Length)*100, 1e-9, "whole centimetres")
	}
}

// An estimated gauge gains most, a gauge without influence is left out, and a
// piece of nine tenths' worth is shorter than the longest.
func TestWhatToWeighFirstTakesTheEstimate(t *testing.T) {
	s := combine(t, ideal(0.009, 0.010, 0.012, 0.013)+"011,plain,0.011,,,listed\n")
	list := s.WhatToWeigh([]float64{0, 50, 50, 50, 50}, 0.9)
	require.Len(t, list, 4)
	assert.Equal(t, "011", list[0].Gauge)
	assert.Less(t, list[0].Length, 0.9)
	assert.Less(t, list[0].After, 0.6*list[0].Before)
}

// Errors that a result takes from two gauges with opposite signs cancel where
// they are shared: a heavy balance moves both tensions alike.
func TestSharedErrorsCancelInADifference(t *testing.T) {
	tools := gauges.DefaultInstruments()
	tools.BalanceAccuracy = 0.05e-3
	s := stockOf(t, gauges.Input{Readings: read(t, plainHead+"a,plain,0.017,500,0.57\nb,plain,0.017,500,0.57\n"), Instruments: tools})
	sum := s.WhatToWeigh([]float64{1, 1}, 0.5)
	difference := s.WhatToWeigh([]float64{1, -1}, 0.5)
	assert.Less(t, difference[0].Before, 0.5*sum[0].Before)
}
