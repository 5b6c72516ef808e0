package report

import (
	"fmt"
	"math"
	"slices"

	"scalepair/cmd/scalepair/document"
	"scalepair/cmd/scalepair/table"
	"scalepair/data/unit"
	"scalepair/fan"
)

// NeutralTable says what moving the neutral fret does to one pair.
type NeutralTable struct {
	Head
	Bass   unit.Length `json:"bass_mm"`
	Treble unit.Length `json:"treble_mm"`
	fan.Neutral
	NoEffect  bool                `json:"neutral_has_no_effect"`
	From      int                 `json:"played_from_fret"`
	To        int                 `json:"played_to_fret"`
	Hand      unit.Angle          `json:"hand_slant_deg"`
	NeckAngle *unit.Angle         `json:"neck_angle_deg"` // null where it is not given
	Rows      []fan.NeutralRow    `json:"rows"`
	StandsOut map[string]standout `json:"neutral_fret_that"`
	Cautions  []string            `json:"cautions"` // of the neutral fret in force

	in   *Input
	l    *fan.Layout
	play fan.Playing
}

// standout is a row that stands out.
type standout struct {
	fan.Neutral
	words string
	row   fan.NeutralRow
}

// The rows that stand out, in the order in which they are printed.
const (
	asNow      = "as_it_is_now"
	leastFrets = "least_worst_of_nut_and_frets"
	leastAll   = "least_worst_with_saddle_line"
	nearHand   = "nearest_the_hand_where_played"
)

// NewNeutralTable works up the table of one layout, whose neutral fret is in
// force.
func NewNeutralTable(in *Input, l *fan.Layout, t fan.NeutralTable, play fan.Playing) *NeutralTable {
	r := &NeutralTable{Head: in.head(), Bass: l.Spec.Bass, Treble: l.Spec.Treble, Neutral: l.Spec.Neutral, NoEffect: t.Parallel, Hand: play.Hand(), NeckAngle: play.NeckAngle,
		Rows: t.Rows, StandsOut: map[string]standout{}, Cautions: steepCautions(l), in: in, l: l, play: play}
	r.From, r.To = play.Frets(l.Spec.Frets)
	add := func(key, words string, row fan.NeutralRow) { r.StandsOut[key] = standout{row.Neutral, words, row} }
	if i := r.mine(); i >= 0 {
		add(asNow, "as it is now", t.Rows[i])
	}
	add(leastFrets, "smallest worst slant of nut and frets", t.Rows[t.LeastWorst])
	add(leastAll, "smallest worst slant of nut, frets and saddle line", t.Rows[t.LeastWorstWithSaddle])
	add(nearHand, "nearest the hand on "+r.played(), t.Rows[t.LeastPlayed])
	return r
}

// mine is the row of the neutral fret in force, -1 where the step passes over it.
func (r *NeutralTable) mine() int {
	return slices.IndexFunc(r.Rows, func(row fan.NeutralRow) bool {
		return row.Bridge == r.Bridge && math.Abs(row.Fret-r.Fret) < 1e-9
	})
}

// Document prints what the neutral fret costs and gains.
func (r *NeutralTable) Document() *document.Document {
	doc := &document.Document{Title: r.in.title("Neutral fret for")}
	doc.Para("%s", r.in.fanWords(r.l))
	if r.NoEffect {
		doc.Para("Both lengths are equal: every fret is square, and the neutral fret has no effect.")
		return doc
	}
	var rows []standout
	for _, key := range []string{asNow, leastFrets, leastAll, nearHand} {
		if row, ok := r.StandsOut[key]; ok {
			rows = append(rows, row)
		}
	}
	doc.Table(table.Of("choices", "Choices that stand out", rows, append([]table.Column[standout]{
		table.Words("choice", "choice", func(s standout) string { return s.words })},
		slantColumns(r.l, func(s standout) fan.NeutralRow { return s.row })...)...).
		Note("Slants in degrees, positive where the bass end is nearer the bridge."))
	doc.List(r.trade()...)
	doc.Table(r.slants())
	doc.Cautions(r.Cautions...)
	return doc
}

// slantColumns are a neutral fret and the slants that it makes, from nut to
// saddle.
func slantColumns[T any](l *fan.Layout, row func(T) fan.NeutralRow) []table.Column[T] {
	slant := func(heading, key string, f func(fan.NeutralRow) unit.Angle) table.Column[T] {
		return table.Angle(heading, key, func(t T) unit.Angle { return f(row(t)) })
	}
	return []table.Column[T]{
		table.Number("neutral fret", "neutral_fret", 0, func(t T) float64 { return row(t).Fret }).As(func(t T) string { return row(t).Neutral.String() }),
		slant("nut", "nut_slant", func(r fan.NeutralRow) unit.Angle { return r.Nut }),
		slant("fret 1", "fret_1_slant", func(r fan.NeutralRow) unit.Angle { return r.Fret1 }),
		slant("fret 12", "fret_12_slant", func(r fan.NeutralRow) unit.Angle { return r.Fret12 }),
		slant(fmt.Sprintf("fret %d", l.Spec.Frets), "last_fret_slant", func(r fan.NeutralRow) unit.Angle { return r.Last }),
		slant("saddle line", "saddle_slant", func(r fan.NeutralRow) unit.Angle { return r.Saddle }),
		slant("worst, nut and frets", "worst_of_nut_and_frets", func(r fan.NeutralRow) unit.Angle { return r.Worst }),
	}
}

// played names the frets that count as played most.
func (r *NeutralTable) played() string {
	switch {
	case r.play.FromFret == 0 && r.play.ToFret == 0:
		return "all frets"
	case r.From == 0:
		return fmt.Sprintf("nut to fret %d", r.To)
	}
	return fmt.Sprintf("frets %d to %d", r.From, r.To)
}

// trade says what is traded, and that no rule decides.
func (r *NeutralTable) trade() []string {
	hand := "The last choice takes a hand that likes square frets. --neck-angle (how far the neck points up) or --hand (the slant under your own fingers) count the hand as it is."
	switch {
	case r.play.HandSlant != nil:
		hand = fmt.Sprintf("Your hand lies at %s: the last choice holds the frets you play against it.", table.DegText(r.Hand))
	case r.NeckAngle != nil:
		hand = fmt.Sprintf("Your neck points up by %s. A forearm that keeps its direction then lies across the neck at about %s, a fifth of that towards the head (judgement): the last choice holds the frets you play against it. To count your own hand instead, lay a straight edge under your fingers on the neck and give its angle as --hand.",
			table.DegText(*r.play.NeckAngle), table.DegText(r.Hand))
	}
	return []string{
		"A neutral fret near the nut keeps the first frets square and slants the high frets and the bridge; one near the body does the opposite. Nut and last fret always stand at about the same angle to one another: less slant of the one is more of the other.",
		hand,
		"No rule decides. Before you choose, lay a straight edge over a neck you know at the angles above, and put your hand to it.",
	}
}

func (r *NeutralTable) slants() *table.Table {
	t := table.Of("slants", "Slants as the neutral fret moves", r.Rows, append(
		slantColumns(r.l, func(row fan.NeutralRow) fan.NeutralRow { return row }),
		table.Angle("", "worst_with_saddle_line", func(row fan.NeutralRow) unit.Angle { return row.WorstWithSaddle }),
		table.Angle("off the hand, "+r.played(), "off_the_hand_rms", func(row fan.NeutralRow) unit.Angle { return row.Played }))...)
	t.Note(fmt.Sprintf("Off the hand: root mean square, over %s, of the fret's slant less the hand's.", r.played()))
	if slices.ContainsFunc(r.Rows, func(row fan.NeutralRow) bool { return steep(row.WorstWithSaddle) }) {
		t.Note(fmt.Sprintf("Beyond about %s (judgement) a slant is hard to finger, and little hardware is made for it.", table.DegText(steepest)))
	}
	if r.mine() < 0 {
		t.Note(fmt.Sprintf("The neutral fret in force, %s, lies between two rows.", r.Neutral))
	}
	return t
}
