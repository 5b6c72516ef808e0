package report

import (
	"fmt"
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
	NoEffect  bool                   `json:"neutral_has_no_effect"`
	From      int                    `json:"played_from_fret"`
	To        int                    `json:"played_to_fret"`
	Hand      unit.Angle             `json:"hand_slant_deg"`
	NeckAngle *unit.Angle            `json:"neck_angle_deg"` // null where it is not given
	Rows      []fan.NeutralRow       `json:"rows"`
	StandsOut map[string]fan.Neutral `json:"neutral_fret_that"`
	Cautions  []string               `json:"cautions"` // of the neutral fret in force

	in   *Input
	l    *fan.Layout
	t    fan.NeutralTable
	play fan.Playing
	mine int // the row of the neutral fret in force, -1 where the step passes over it
}

// NewNeutralTable works up the table of one layout, whose neutral fret is in
// force.
func NewNeutralTable(in *Input, l *fan.Layout, t fan.NeutralTable, play fan.Playing) *NeutralTable {
	r := &NeutralTable{Head: in.head(), Bass: l.Spec.Bass, Treble: l.Spec.Treble, Neutral: l.Spec.Neutral, NoEffect: t.Parallel, Hand: play.Hand(), NeckAngle: play.NeckAngle,
		Rows: t.Rows, Cautions: steepCautions(l), in: in, l: l, t: t, play: play,
		StandsOut: map[string]fan.Neutral{"least_worst_of_nut_and_frets": t.Rows[t.LeastWorst].Neutral,
			"least_worst_with_saddle_line": t.Rows[t.LeastWorstWithSaddle].Neutral, "nearest_the_hand_where_played": t.Rows[t.LeastPlayed].Neutral}}
	r.From, r.To = play.Frets(l.Spec.Frets)
	r.mine = slices.IndexFunc(r.Rows, func(row fan.NeutralRow) bool {
		return row.Bridge == r.Bridge && size(row.Fret-r.Fret) < 1e-9
	})
	if r.mine >= 0 {
		r.StandsOut["as_it_is_now"] = t.Rows[r.mine].Neutral
	}
	return r
}

// Document prints what the neutral fret costs and gains.
func (r *NeutralTable) Document() *document.Document {
	doc := &document.Document{Title: r.in.title("Neutral fret for")}
	doc.Para("%s", r.in.fanWords(r.l))
	if r.NoEffect {
		doc.Para("Both lengths are equal: every fret is square, and the neutral fret has no effect.")
		return doc
	}
	square := func(row int) string { return neutralWords(r.Rows[row].Neutral) + " square" }
	var out lines
	out.say("Smallest worst slant of nut and frets: %s.", square(r.t.LeastWorst))
	out.say("Smallest worst slant of nut, frets and saddle line: %s.", square(r.t.LeastWorstWithSaddle))
	out.say("Nearest the hand on %s: %s. %s", r.played(), square(r.t.LeastPlayed), r.hand())
	out.say("A neutral fret near the nut keeps the first frets square and slants the high frets and the bridge; one near the body does the opposite.")
	out.say("No rule decides. Before you choose, lay a straight edge over a neck you know at the angles below, and put your hand to it.")
	doc.List(out...)
	doc.Table(r.slants())
	doc.Cautions(r.Cautions...)
	return doc
}

// played names the frets that count as played most.
func (r *NeutralTable) played() string { return fmt.Sprintf("frets %d to %d", r.From, r.To) }

// hand says what is taken of the hand.
func (r *NeutralTable) hand() string {
	switch {
	case r.play.HandSlant != nil:
		return fmt.Sprintf("Your hand lies at %s.", table.DegText(r.Hand))
	case r.NeckAngle != nil:
		return fmt.Sprintf("On a neck that points up by %s a forearm that keeps its direction lies at about %s, a fifth of that towards the head (judgement). To count your own hand, lay a straight edge under your fingers on the neck and give its angle as --hand.",
			table.DegText(*r.NeckAngle), table.DegText(r.Hand))
	}
	return "It is taken to like square frets; --neck-angle (how far the neck points up) or --hand (the slant under your own fingers) count the hand as it is."
}

func (r *NeutralTable) slants() *table.Table {
	slant := func(heading string, f func(fan.NeutralRow) unit.Angle) table.Column[fan.NeutralRow] {
		return table.Angle(heading, "", f)
	}
	t := table.Of("slants", "Slants as the neutral fret moves", r.Rows,
		table.Number("neutral fret", "", 0, func(row fan.NeutralRow) float64 { return row.Fret }).As(func(row fan.NeutralRow) string { return row.Neutral.String() }),
		slant("nut", func(row fan.NeutralRow) unit.Angle { return row.Nut }),
		slant("fret 1", func(row fan.NeutralRow) unit.Angle { return row.Fret1 }),
		slant("fret 12", func(row fan.NeutralRow) unit.Angle { return row.Fret12 }),
		slant(fmt.Sprintf("fret %d", r.l.Spec.Frets), func(row fan.NeutralRow) unit.Angle { return row.Last }),
		slant("saddle line", func(row fan.NeutralRow) unit.Angle { return row.Saddle }),
		slant("worst, nut and frets", func(row fan.NeutralRow) unit.Angle { return row.Worst }),
		slant("off the hand, "+r.played(), func(row fan.NeutralRow) unit.Angle { return row.Played }))
	var notes lines
	notes.say("Slants in degrees, positive where the bass end is nearer the bridge. Off the hand: root mean square, over %s, of the fret's slant less the hand's.", r.played())
	steep := slices.ContainsFunc(r.Rows, func(row fan.NeutralRow) bool { return size(row.WorstWithSaddle) > steepest })
	notes.sayIf(steep, "Beyond about %s (judgement) a slant is hard to finger, and little hardware is made for it.", table.DegText(steepest))
	notes.sayIf(r.mine < 0, "The neutral fret in force, %s, lies between two rows.", r.Neutral)
	return t.Note(notes...)
}
