package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"scalepair/cmd/scalepair/show"
	"scalepair/fan"
)

// Neutral is what neutral found for one pair.
type Neutral struct {
	Layout  *fan.Layout // with the neutral fret in force
	Advice  fan.NeutralTable
	Playing fan.Playing
	// NeckAngleRad is the neck angle that Playing.HoldRad came from;
	// AngleGiven tells it from a hold that was measured, or none.
	NeckAngleRad float64
	AngleGiven   bool
}

// NeutralFret prints what moving the neutral fret costs and gains.
func NeutralFret(in *Input, n *Neutral) *show.Report {
	l := n.Layout
	r := &show.Report{Title: in.title("Neutral fret for")}
	r.Para("Pair %s, %d frets, %d strings; %s stands square now.", in.Pair(l.Spec.Bass, l.Spec.Treble),
		l.Spec.Frets, l.Spec.Strings, squareWords(l.Spec.Neutral))
	if n.Advice.Parallel {
		r.Text("Both lengths are equal: every fret is square, and the neutral fret has no effect.")
		return r
	}
	n.choices(r)
	n.trade(r)
	n.table(r)
	r.Cautions(steepCautions(n.Layout)...)
	return r
}

// squareWords names the line that stands square.
func squareWords(n fan.Neutral) string {
	return neutralWords(fan.Neutral{Fret: n.Fret, Bridge: n.Bridge})
}

// neutralCell is the neutral fret in a table.
func neutralCell(n fan.Neutral) string {
	if n.Bridge {
		return "bridge"
	}
	return strconv.FormatFloat(math.Round(n.Fret*1000)/1000, 'f', -1, 64)
}

// slantColumns are the slants of one row, in order from nut to saddle.
func (n *Neutral) slantColumns() []show.Column {
	return []show.Column{show.Figures("nut °"), show.Figures("fret 1 °"), show.Figures("fret 12 °"),
		show.Figures(fmt.Sprintf("fret %d °", n.Layout.Spec.Frets)), show.Figures("saddle line °"),
		show.Figures("worst, nut and frets °")}
}

func slantCells(r fan.NeutralRow) []string {
	return []string{show.Deg(r.Nut.Rad()), show.Deg(r.Fret1.Rad()), show.Deg(r.Fret12.Rad()), show.Deg(r.Last.Rad()),
		show.Deg(r.Saddle.Rad()), show.Deg(r.Worst.Rad())}
}

// mine is the row of the neutral fret in force, -1 where the step passes over
// it.
func (n *Neutral) mine() int {
	for i, r := range n.Advice.Rows {
		if r.Neutral.Bridge == n.Layout.Spec.Neutral.Bridge && math.Abs(r.Neutral.Fret-n.Layout.Spec.Neutral.Fret) < 1e-9 {
			return i
		}
	}
	return -1
}

// standout is one row that stands out, with the words for it.
type standout struct {
	words, key string
	row        int
}

// standing lists the rows that stand out, the one in force first.
func (n *Neutral) standing() []standout {
	var out []standout
	if i := n.mine(); i >= 0 {
		out = append(out, standout{"as it is now", "as_it_is_now", i})
	}
	return append(out,
		standout{"smallest worst slant of nut and frets", "least_worst_of_nut_and_frets", n.Advice.LeastWorst},
		standout{"the same, the saddle line counted too", "least_worst_with_saddle_line", n.Advice.LeastWorstWithSaddle},
		standout{"nearest the hand on " + n.played(), "nearest_the_hand_where_played", n.Advice.LeastPlayed})
}

// played names the frets that count as played most.
func (n *Neutral) played() string {
	from, to := n.Playing.Frets(n.Layout.Spec.Frets)
	switch {
	case n.Playing.FromFret == 0 && n.Playing.ToFret == 0:
		return "all frets"
	case from == 0:
		return fmt.Sprintf("nut to fret %d", to)
	}
	return fmt.Sprintf("frets %d to %d", from, to)
}

func (n *Neutral) choices(r *show.Report) {
	t := r.Table("choices", "Choices that stand out", append([]show.Column{show.Words("choice"), show.Figures("neutral fret")}, n.slantColumns()...)...)
	for _, c := range n.standing() {
		row := n.Advice.Rows[c.row]
		t.Row(append([]string{c.words, neutralCell(row.Neutral)}, slantCells(row)...)...)
	}
	t.Note("Slants in degrees, positive where the bass end is nearer the bridge.")
}

// trade says what is traded, and that no rule decides.
func (n *Neutral) trade(r *show.Report) {
	items := []string{
		"A neutral fret near the nut keeps the first frets square and slants the high frets and the bridge; one near the body does the opposite. Nut and last fret always stand at about the same angle to one another; it can only be shared out.",
	}
	switch hold := n.Playing.Hand().Rad(); {
	case n.AngleGiven:
		items = append(items, fmt.Sprintf("Your neck points up by %s. A forearm that keeps its direction then lies across the neck at about %s, a fifth of that towards the head (judgement): the last choice holds the frets you play against it. To count your own hand instead, lay a straight edge under your fingers on the neck and give its angle as --hold.",
			show.DegText(n.NeckAngleRad), show.DegText(hold)))
	case hold != 0:
		items = append(items, fmt.Sprintf("Your hand lies at %s: the last choice holds the frets you play against it.", show.DegText(hold)))
	default:
		items = append(items, "The last choice takes a hand that likes square frets. --neck-angle (how far the neck points up) or --hold (the slant under your own fingers) count the hand as it is.")
	}
	items = append(items, "There is no hard rule in the trade, and this table decrees none. Before you choose, lay a straight edge over a neck you know at the angles above, and put your hand to it.")
	r.Bullets(items...)
}

func (n *Neutral) table(r *show.Report) {
	columns := append([]show.Column{show.Figures("neutral fret")}, n.slantColumns()...)
	columns = append(columns, show.Figures("off the hand, "+n.played()+" °"))
	t := r.Table("slants", "Slants as the neutral fret moves", columns...)
	for _, row := range n.Advice.Rows {
		t.Row(append(append([]string{neutralCell(row.Neutral)}, slantCells(row)...), show.Deg(row.Played.Rad()))...)
	}
	t.Note("Off the hand: root mean square, over %s, of the fret's slant less the hand's.", n.played())
	if slices.ContainsFunc(n.Advice.Rows, func(r fan.NeutralRow) bool { return steep(r.WorstWithSaddle.Rad()) }) {
		t.Note("Beyond about %d° (judgement) a slant is hard to finger, and little hardware is made for it.", steepDeg)
	}
	if n.mine() < 0 {
		t.Note("The neutral fret in force, %s, lies between two rows.", neutralCell(n.Layout.Spec.Neutral))
	}
}

// NeutralRowJSON is one choice of neutral fret.
type NeutralRowJSON struct {
	NeutralFret      string  `json:"neutral_fret"`
	NutDeg           float64 `json:"nut_slant_deg"`
	FirstDeg         float64 `json:"fret_1_slant_deg"`
	TwelfthDeg       float64 `json:"fret_12_slant_deg"`
	LastDeg          float64 `json:"last_fret_slant_deg"`
	SaddleDeg        float64 `json:"saddle_slant_deg"`
	WorstDeg         float64 `json:"worst_of_nut_and_frets_deg"`
	WorstWithSaddle  float64 `json:"worst_with_saddle_line_deg"`
	OffTheHandRMSDeg float64 `json:"off_the_hand_rms_deg"`
}

// NeutralJSON is the whole table with the rows that stand out.
type NeutralJSON struct {
	BassMM       float64           `json:"bass_mm"`
	TrebleMM     float64           `json:"treble_mm"`
	NeutralFret  string            `json:"neutral_fret"`
	NoEffect     bool              `json:"neutral_has_no_effect"`
	PlayedFrom   int               `json:"played_from_fret"`
	PlayedTo     int               `json:"played_to_fret"`
	HandSlantDeg float64           `json:"hand_slant_deg"`
	Rows         []NeutralRowJSON  `json:"rows"`
	StandsOut    map[string]string `json:"neutral_fret_that"`
	Cautions     []string          `json:"cautions"` // of the neutral fret in force
}

// NeutralValues gives what neutral prints as JSON.
func NeutralValues(in *Input, n *Neutral) NeutralJSON {
	s := n.Layout.Spec
	out := NeutralJSON{BassMM: s.Bass.MM(), TrebleMM: s.Treble.MM(), NeutralFret: squareWords(s.Neutral), NoEffect: n.Advice.Parallel,
		HandSlantDeg: deg(n.Playing.Hand().Rad()), StandsOut: map[string]string{},
		Cautions: append([]string{}, steepCautions(n.Layout)...)}
	out.PlayedFrom, out.PlayedTo = n.Playing.Frets(s.Frets)
	for _, r := range n.Advice.Rows {
		out.Rows = append(out.Rows, NeutralRowJSON{squareWords(r.Neutral), deg(r.Nut.Rad()), deg(r.Fret1.Rad()), deg(r.Fret12.Rad()),
			deg(r.Last.Rad()), deg(r.Saddle.Rad()), deg(r.Worst.Rad()), deg(r.WorstWithSaddle.Rad()), deg(r.Played.Rad())})
	}
	for _, c := range n.standing() {
		out.StandsOut[c.key] = squareWords(n.Advice.Rows[c.row].Neutral)
	}
	return out
}
