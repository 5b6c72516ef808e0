package report_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"scalepair/cmd/scalepair/job"
	"scalepair/cmd/scalepair/report"
	"scalepair/gauges"
	"scalepair/gauges/fit"
	"scalepair/gauges/reading"
)

// A pound per inch is 0.45359237 kg
// over 0.0254 m.
const poundPerInch = 0.45359237 / 0.0254

func TestStockPrintsWhatItsHeadsName(t *testing.T) {
	for name, system := range systems {
		t.Run(name, func(t *testing.T) {
			j, err := job.Load(demoFile, nil)
			require.NoError(t, err)
			plan, err := j.Plan()
			require.NoError(t, err)
			p := printed{system, report.Gauges(&report.Input{Job: j, Plan: plan, Units: system.Units}, "")}
			stock := j.Stock.Gauges
			of := func(value func(g gauges.Gauge) float64) func(i int) float64 {
				return func(i int) float64 { return value(stock[i]) }
			}
			weightUnit, perWeight := "g/m", 1000.0
			if system.perMM != 1 {
				weightUnit, perWeight = "lb/in", 1/poundPerInch
			}
			circle := func(d float64) float64 { return math.Pi / 4 * d * d }
			// A hexagon of width d across its flats is six triangles of height
			// d/2 on sides of d/sqrt 3, and its corners lie on a circle of
			// twice that side.
			core := func(g gauges.Gauge) (area, filled float64) {
				if g.Shape == reading.Hex {
					side := float64(g.Core) / math.Sqrt(3)
					return 6 * side * float64(g.Core) / 4, circle(2 * side)
				}
				return circle(float64(g.Core)), circle(float64(g.Core))
			}
			// Plain wire fills its circle; what the wrap of a wound string
			// fills is the ring about the core, what it weighs all but the core.
			density := func(g gauges.Gauge) float64 {
				if g.Family == gauges.Plain || g.Core == 0 {
					return float64(g.LinearDensity) / circle(float64(g.Outer))
				}
				area, filled := core(g)
				return (float64(g.LinearDensity) - 7850*area) / (circle(float64(g.Outer)) - filled)
			}
			p.holds(t, "gauges", len(stock),
				p.mm("outer", of(func(g gauges.Gauge) float64 { return float64(1000 * g.Outer) })),
				p.mm("core", of(func(g gauges.Gauge) float64 {
					if g.Family == gauges.Plain || g.Core == 0 {
						return absent
					}
					return float64(1000 * g.Core)
				})),
				column{"linear density " + weightUnit, perWeight, of(func(g gauges.Gauge) float64 { return float64(g.LinearDensity) })},
				p.percent("95 % ± %", of(func(g gauges.Gauge) float64 { return float64(g.Within95() / g.LinearDensity) })),
				p.percent("off the fit %", of(func(g gauges.Gauge) float64 {
					if g.Judged == nil {
						return absent
					}
					return float64(g.LinearDensity/g.Judged.Fit) - 1
				})),
				p.plain("density g/cm3", of(func(g gauges.Gauge) float64 { return density(g) / 1000 })),
				p.newtons("stiffness EA", of(func(g gauges.Gauge) float64 {
					if g.Core == 0 {
						return absent
					}
					area, _ := core(g)
					return g.YoungsPa * area
				})),
				p.mm("length for 1 %", of(func(g gauges.Gauge) float64 {
					return fit.ShortestPiece(g.LinearDensity, 0.01, j.Tools()).MM()
				})))
			table := p.table(t, "gauges")
			for i, row := range table.Rows {
				_, u, found := strings.Cut(row[5], " ± ")
				require.True(t, found, row[5])
				p.same(t, u, float64(stock[i].U)*perWeight, "uncertainty of %s", stock[i].Label)
			}
			assert.Greater(t, len(stock), 20)
		})
	}
}
