package fan

import (
	"fmt"
	"math"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// NeutralRow is the fan's slants with one choice of neutral fret.
type NeutralRow struct {
	Neutral
	Nut             unit.Angle `json:"nut_slant_deg"`
	Fret1           unit.Angle `json:"fret_1_slant_deg"`
	Fret12          unit.Angle `json:"fret_12_slant_deg"` // or where it would be on a board of fewer frets
	Last            unit.Angle `json:"last_fret_slant_deg"`
	Saddle          unit.Angle `json:"saddle_slant_deg"`
	Worst           unit.Angle `json:"worst_of_nut_and_frets_deg"` // greatest size; all lie between nut and last fret
	WorstWithSaddle unit.Angle `json:"worst_with_saddle_line_deg"`
	Played          unit.Angle `json:"off_the_hand_rms_deg"` // root mean square of slant less the hand's over the played frets
}

// Playing says where and how the neck is played, for the neutral fret.
type Playing struct {
	// FromFret and ToFret are the frets most played; the whole board where both
	// are 0.
	FromFret float64 `toml:"from_fret" range:"0, 36"`
	ToFret   float64 `toml:"to_fret" range:"0, 36"`
	// NeckAngle is how far the neck points up from level; nil where it is not
	// known.
	NeckAngle *unit.Angle `toml:"neck_angle_deg" range:"-30, 80"`
	// HandSlant is the slant that lies best under the hand, positive where the
	// bass end is nearer the bridge, as measured with a straight edge under the
	// fingers; nil where it is not known. That one angle stands for the whole
	// range is judgement.
	HandSlant *unit.Angle `toml:"-"`
}

// Frets gives the frets played most on a board.
func (p Playing) Frets(last int) (from, to int) {
	if p.FromFret == 0 && p.ToFret == 0 {
		return 1, last
	}
	return int(math.Floor(p.FromFret)), int(math.Ceil(p.ToFret))
}

// Hand is the slant that lies best under the hand. Where it was not measured it
// follows from how far the neck points up: a forearm that keeps its direction
// lies ever more towards the head on a neck that is raised, and wrist and elbow
// make up for most of it. The share of a fifth that is left is judgement:
//
//	hand = -angle/5
//
// It is 0, a hand that likes square frets, where nothing is known.
func (p Playing) Hand() unit.Angle {
	switch {
	case p.HandSlant != nil:
		return *p.HandSlant
	case p.NeckAngle != nil:
		return plain(-*p.NeckAngle / 5)
	}
	return 0
}

// NeutralTable is the fan with one neutral fret after another, and the rows that
// stand out, as indexes into Rows: the least worst slant of nut and frets, the
// same with the saddle line, and the least Played. Where rows are equal it is
// the neutral fret nearest the nut; with Parallel they all are.
type NeutralTable struct {
	Rows                                          []NeutralRow
	LeastWorst, LeastWorstWithSaddle, LeastPlayed int
	Parallel                                      bool // equal lengths: the neutral fret has no effect
}

// AdviseNeutral moves the neutral fret from 0 to the last in the given step
// (0.5 or 1; 0.1 to 12 is taken), then to the bridge, and gives the slants of
// each; choices that make no instrument are left out. spec.Neutral is not
// read. There is no hard rule: the table shows the trade, the rows named are
// its ends. The error is a fault.List.
func AdviseNeutral(spec Spec, step float64, p Playing) (NeutralTable, error) {
	if err := checkPlaying(spec, step, p).Err(); err != nil {
		return NeutralTable{}, err
	}
	table := NeutralTable{Parallel: spec.Bass == spec.Treble}
	var why error
	for _, n := range neutrals(spec.Frets, step) {
		spec.Neutral = n
		if frame, err := NewFrame(spec); err == nil {
			table.Rows = append(table.Rows, neutralRow(frame, p))
		} else {
			why = err
		}
	}
	if table.Rows == nil {
		return NeutralTable{}, why
	}
	table.LeastWorst = table.least(func(r NeutralRow) unit.Angle { return r.Worst })
	table.LeastWorstWithSaddle = table.least(func(r NeutralRow) unit.Angle { return r.WorstWithSaddle })
	table.LeastPlayed = table.least(func(r NeutralRow) unit.Angle { return r.Played })
	return table, nil
}

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
	from, to := p.Frets(spec.Frets)
	sum := 0.0
	for n := from; n <= to; n++ {
		off := (slant(n) - p.Hand()).Rad()
		sum += float64(off * off)
	}
	r.Played = unit.Angle(math.Sqrt(sum / float64(to-from+1)))
	return r
}

// least finds the first row of the least size.
func (t NeutralTable) least(size func(NeutralRow) unit.Angle) int {
	at := 0
	for i, r := range t.Rows {
		if size(r) < size(t.Rows[at]) {
			at = i
		}
	}
	return at
}

func checkPlaying(s Spec, step float64, p Playing) (f fault.List) {
	if !(step >= 0.1 && step <= 12) {
		f.Add(keyed("step"), "the step of the neutral fret is out of range", fmt.Sprint(step), "from 0.1 to 12, such as 0.5 or 1")
	}
	if hand := p.Hand(); !(abs(hand) <= math.Pi/3) {
		f.Add(keyed("hand"), "the hand's slant is out of range", fmt.Sprintf("%.1f degrees", hand.Degrees()), "within 60 degrees of square")
	}
	if from, to := p.Frets(s.Frets); !(from <= to && to <= s.Frets) {
		f.Add(keyed("playing.to_fret"), "the played frets are not a range on the board", fmt.Sprintf("%d to %d", from, to),
			fmt.Sprintf("lower fret first, up to %d", s.Frets))
	}
	return f
}
