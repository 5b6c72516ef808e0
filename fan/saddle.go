package fan

import "fmt"

// Compensation is how far a saddle stands behind its theoretical line to play in
// tune, from the least to the most expected, along the string in mm.
type Compensation struct{ LoMM, HiMM float64 }

// Middle is the place to try first (judgement: the saddle stands between).
func (s Compensation) Middle() float64 { return (s.LoMM + s.HiMM) / 2 }

// SaddlePoint is where one string leaves its saddle, compensation included. "Along"
// is along the centreline towards the bridge, "out" square to it, positive on
// the bass side.
type SaddlePoint struct {
	String         int
	Compensation   Compensation
	FromNutMM      float64 // along the string: own length and the middle of the compensation
	Theoretical    Point   // without compensation
	At             Point   // at the middle of the compensation
	Least, Most    Point   // at the two ends of the compensation
	Foremost       Point   // at Saddles.ForwardMM: the saddle screwed fully forward
	Along12MM      float64 // At from where fret 12 crosses the centreline, or would on a board of fewer frets
	AlongLastMM    float64 // At from where the last fret crosses it
	AlongBodyEndMM float64 // At from where the body end crosses it
	OutMM          float64 // At from the centreline
}

// Saddles is the bridge's layout.
type Saddles struct {
	Points []SaddlePoint // string 1 first
	// ForwardMM and RearMM bound what the saddles must reach, along their
	// strings from the theoretical line: 1 mm in front of the line (of the
	// least compensation where that is in front of it), and 1 mm behind the
	// greatest. The bridge is placed so that a saddle at the front of its
	// travel stands at ForwardMM. NeedMM is their distance, to be held against
	// the travel of the saddles.
	ForwardMM, RearMM, NeedMM float64
}

const (
	saddleRoomMM      = 1.0  // to spare at either end of the saddles' travel (judgement)
	maxCompensationMM = 50.0 // more is a slip (judgement)
)

// Saddles gives the saddle points for one compensation a string, string 1 first.
// A wrong number of compensations, or one that is not finite, beyond ±50 mm, or
// whose ends are exchanged is a fault.
func (l *Layout) Saddles(compensations []Compensation) (Saddles, error) {
	if err := l.checkCompensations(compensations); err != nil {
		return Saddles{}, err
	}
	var s Saddles
	for _, back := range compensations {
		s.ForwardMM, s.RearMM = min(s.ForwardMM, back.LoMM), max(s.RearMM, back.HiMM)
	}
	s.ForwardMM -= saddleRoomMM
	s.RearMM += saddleRoomMM
	s.NeedMM = s.RearMM - s.ForwardMM
	for i, back := range compensations {
		s.Points = append(s.Points, l.saddlePoint(l.Strings[i], back, s.ForwardMM))
	}
	return s, nil
}

func (l *Layout) saddlePoint(s StringLine, back Compensation, forward float64) SaddlePoint {
	behind := func(mm float64) Point { return s.At((s.LengthMM + mm) / s.LengthMM) }
	at := behind(back.Middle())
	bodyEnd, _ := l.Frame.bodyEnd()
	return SaddlePoint{
		String: s.Number, Compensation: back, FromNutMM: s.LengthMM + back.Middle(),
		Theoretical: s.Saddle, At: at,
		Least: behind(back.LoMM), Most: behind(back.HiMM), Foremost: behind(forward),
		Along12MM:      at.X - l.Frame.crossMM(K(12)),
		AlongLastMM:    at.X - l.Frets[l.Spec.Frets].Line.CrossMM,
		AlongBodyEndMM: at.X - bodyEnd,
		OutMM:          at.Y,
	}
}

func (l *Layout) checkCompensations(compensations []Compensation) error {
	var f faults
	if len(compensations) != len(l.Strings) {
		f.add("saddle", "the compensations have another number than the strings", fmt.Sprint(len(compensations)),
			fmt.Sprintf("one for each of the %d strings", len(l.Strings)))
		return f.list.Err()
	}
	for i, back := range compensations {
		name := fmt.Sprintf("the compensation of string %d", i+1)
		ok := f.length("saddle", name, back.LoMM, -maxCompensationMM, maxCompensationMM)
		ok = f.length("saddle", name, back.HiMM, -maxCompensationMM, maxCompensationMM) && ok
		if ok && back.LoMM > back.HiMM {
			f.add("saddle", name+" has its ends exchanged", number(back.LoMM)+" to "+number(back.HiMM)+" mm", "least first")
		}
	}
	return f.list.Err()
}
