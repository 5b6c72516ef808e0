package fan

// NeutralRow is the fan's slants, in radians, with one choice of neutral fret.
type NeutralRow struct {
	Neutral                                          Neutral
	NutRad, FirstRad, TwelfthRad, LastRad, SaddleRad float64
	WorstRad                                         float64 // greatest size among nut and frets
	WorstWithSaddleRad                               float64 // the saddle line counted too
	PlayedRad                                        float64 // root mean square of slant less hold over the played frets
}

// Playing says where and how the player plays, for NeutralAdvice.
type Playing struct {
	FromFret, ToFret int     // the frets played most; 0, 0 for all of them
	HoldRad          float64 // the slant that lies best under the hand as the neck is held
}

// NeutralAdvice is the table over neutral frets and the rows that stand out, as
// indexes into Rows.
type NeutralAdvice struct {
	Rows                                          []NeutralRow
	LeastWorst, LeastWorstWithSaddle, LeastPlayed int
}

// AdviseNeutral moves the neutral fret from 0 to the last in the given step
// (0.5 or 1), then to the bridge, and gives the slants of each. There is no
// hard rule: the table shows the trade, the rows named are its ends.
func AdviseNeutral(spec Spec, step float64, p Playing) (NeutralAdvice, error) {
	return NeutralAdvice{}, nil
}
