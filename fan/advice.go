package fan

import (
	"fmt"
	"math"

	"scalepair/data/unit"
)

// NeutralRow is the fan's slants, in radians, with one choice of neutral fret.
type NeutralRow struct {
	Neutral         Neutral
	Nut, Fret1      unit.Angle
	Fret12          unit.Angle // fret 12, or where it would be on a board of fewer frets
	Last, Saddle    unit.Angle
	Worst           unit.Angle // greatest size among nut and frets; all lie between nut and last
	WorstWithSaddle unit.Angle // the saddle line counted too
	Played          unit.Angle // root mean square of slant less hold over the played frets
}

// Playing says where and how the player plays, for AdviseNeutral.
type Playing struct {
	// FromFret and ToFret are the frets played most; 0, 0 for all of them.
	FromFret, ToFret int
	// HandAngle is the slant that lies best under the hand there, positive where
	// the bass end is nearer the bridge; 0 for a hand that likes frets square.
	// A neck held steeply, or low, turns the wrist: lay a straight edge under
	// the fingers as they fall and measure its angle from square. That one
	// angle stands for the whole range is judgement.
	HandAngle unit.Angle
}

// HandAngle turns how far the neck points up from level, in radians, into
// a Playing.HandAngle where the player has measured none: a forearm that keeps
// its direction lies ever more towards the head on a neck that is raised, and
// wrist and elbow make up for most of it. The share of a fifth that is left
// is judgement, without source:
//
//	hold = -angle/5
func HandAngle(neck unit.Angle) unit.Angle { return plain(-neck / 5) }

// NeutralAdvice is the table over neutral frets and the rows that stand out, as
// indexes into Rows: the least worst slant of nut and frets, the same with the
// saddle line, and the least Played. Where rows are equal it is the neutral
// fret nearest the nut; with Parallel they all are.
type NeutralAdvice struct {
	Rows                                          []NeutralRow
	LeastWorst, LeastWorstWithSaddle, LeastPlayed int
	Parallel                                      bool // equal lengths: the neutral fret has no effect
}

// AdviseNeutral moves the neutral fret from 0 to the last in the given step
// (0.5 or 1; 0.1 to 12 is taken), then to the bridge, and gives the slants of
// each; choices that make no instrument are left out. spec.Neutral is not
// read. There is no hard rule: the table shows the trade, the rows named are
// its ends. The error is a fault.List.
func AdviseNeutral(spec Spec, step float64, p Playing) (NeutralAdvice, error) {
	spec.Neutral = Neutral{}
	f := checkPair(spec)
	f.list = append(f.list, checkNeck(spec)...)
	f.checkPlaying(spec, step, p)
	if err := f.list.Err(); err != nil {
		return NeutralAdvice{}, err
	}
	if p.FromFret == 0 && p.ToFret == 0 {
		p.FromFret, p.ToFret = 1, spec.Frets
	}
	advice := NeutralAdvice{Parallel: spec.Bass == spec.Treble}
	var err error
	for _, n := range neutrals(spec.Frets, step) {
		spec.Neutral = n
		frame, wrong := NewFrame(spec)
		if wrong != nil {
			err = wrong
			continue
		}
		advice.Rows = append(advice.Rows, neutralRow(frame, p))
	}
	if len(advice.Rows) == 0 {
		return NeutralAdvice{}, err
	}
	advice.name()
	return advice, nil
}

func abs[Q ~float64](x Q) Q { return Q(math.Abs(float64(x))) }

func neutrals(frets int, step float64) []Neutral {
	var list []Neutral
	for i := 0; float64(i)*step <= float64(frets); i++ {
		list = append(list, Neutral{Fret: float64(i) * step})
	}
	return append(list, Neutral{Bridge: true})
}

func neutralRow(f Frame, p Playing) NeutralRow {
	spec := f.base.spec
	slant := func(fret int) unit.Angle { return unit.Angle(math.Atan(f.TanSlant(float64(fret)))) }
	r := NeutralRow{
		Neutral: spec.Neutral, Nut: slant(0), Fret1: slant(1), Fret12: slant(12),
		Last: slant(spec.Frets), Saddle: unit.Angle(math.Atan(f.SaddleTan())),
	}
	r.Worst = max(abs(r.Nut), abs(r.Last))
	r.WorstWithSaddle = max(r.Worst, abs(r.Saddle))
	sum := 0.0
	for n := p.FromFret; n <= p.ToFret; n++ {
		off := (slant(n) - p.HandAngle).Rad()
		sum += float64(off * off)
	}
	r.Played = unit.Angle(math.Sqrt(sum / float64(p.ToFret-p.FromFret+1)))
	return r
}

// name finds the rows that stand out.
func (a *NeutralAdvice) name() {
	for i, r := range a.Rows {
		if r.Worst < a.Rows[a.LeastWorst].Worst {
			a.LeastWorst = i
		}
		if r.WorstWithSaddle < a.Rows[a.LeastWorstWithSaddle].WorstWithSaddle {
			a.LeastWorstWithSaddle = i
		}
		if r.Played < a.Rows[a.LeastPlayed].Played {
			a.LeastPlayed = i
		}
	}
}

func (f *faults) checkPlaying(s Spec, step float64, p Playing) {
	if f.finite("step", "the step of the neutral fret", step) && (step < 0.1 || step > 12) {
		f.add("step", "the step of the neutral fret is out of range", number(step), "from 0.1 to 12 will do, such as 0.5 or 1")
	}
	if f.finite("hold", "the hold angle", p.HandAngle.Rad()) && abs(p.HandAngle) > math.Pi/3 {
		f.add("hold", "the hold angle is out of range", number(p.HandAngle.Degrees())+" degrees", "within 60 degrees of square")
	}
	if p.FromFret == 0 && p.ToFret == 0 {
		return
	}
	if p.FromFret < 0 || p.FromFret > p.ToFret || p.ToFret > s.Frets {
		f.add("played", "the played frets are not a range on the board", fmt.Sprintf("%d to %d", p.FromFret, p.ToFret),
			fmt.Sprintf("lower fret first, up to %d", s.Frets))
	}
}
