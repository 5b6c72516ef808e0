package fan

import "scalepair/data/unit"

// Compensation is how far a saddle stands behind its theoretical line to play in
// tune, from the least to the most expected, along the string.
type Compensation struct{ Lo, Hi unit.Length }

// Middle is the place to try first (judgement: the saddle stands between).
func (s Compensation) Middle() unit.Length { return (s.Lo + s.Hi) / 2 }

// With is the range that holds both.
func (s Compensation) With(o Compensation) Compensation {
	return Compensation{min(s.Lo, o.Lo), max(s.Hi, o.Hi)}
}

// SaddlePoint is where one string leaves its saddle, compensation included. "Along"
// is along the centreline towards the bridge, "out" square to it, positive on
// the bass side.
type SaddlePoint struct {
	String       int
	At           Point       // at the middle of the compensation
	Least, Most  Point       // at the two ends of the compensation
	Foremost     Point       // at Saddles.Forward: the saddle screwed fully forward
	Along12      unit.Length // At from where fret 12 crosses the centreline, or would on a board of fewer frets
	AlongLast    unit.Length // At from where the last fret crosses it
	AlongBodyEnd unit.Length // At from where the body end crosses it
	Out          unit.Length // At from the centreline
}

// Saddles is the bridge's layout.
type Saddles struct {
	Points []SaddlePoint // string 1 first
	// Forward and Rear bound what the saddles must reach, along their
	// strings from the theoretical line: 1 mm in front of the line (of the
	// least compensation where that is in front of it), and 1 mm behind the
	// greatest. The bridge is placed so that a saddle at the front of its
	// travel stands at Forward. Need is their distance, to be held against
	// the travel of the saddles.
	Forward, Rear, Need unit.Length
}

// saddleRoom is to spare at either end of the saddles' travel (judgement).
const saddleRoom unit.Length = 1 * unit.Millimetre

// Saddles gives the saddle points for one compensation a string, string 1 first.
func (l *Layout) Saddles(compensations []Compensation) (s Saddles) {
	var all Compensation
	for _, back := range compensations {
		all = all.With(back)
	}
	s.Forward, s.Rear = all.Lo-saddleRoom, all.Hi+saddleRoom
	s.Need = s.Rear - s.Forward
	for i, back := range compensations {
		s.Points = append(s.Points, l.saddlePoint(l.Strings[i], back, s.Forward))
	}
	return s
}

func (l *Layout) saddlePoint(s StringLine, back Compensation, forward unit.Length) SaddlePoint {
	behind := func(by unit.Length) Point { return s.At(float64((s.Length + by) / s.Length)) }
	at := behind(back.Middle())
	return SaddlePoint{
		String: s.Number,
		At:     at, Least: behind(back.Lo), Most: behind(back.Hi), Foremost: behind(forward),
		Along12:      at.X - unit.Length(l.cross(K(12))),
		AlongLast:    at.X - l.Last().Line.Cross,
		AlongBodyEnd: at.X - l.Board().BodyEnd.Cross,
		Out:          at.Y,
	}
}
