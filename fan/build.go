package fan

import (
	"math"

	"scalepair/data/unit"
)

// New builds the layout of a spec. The error is a fault.List, each place naming the
// build file's key.
func New(spec Spec) (*Layout, error) {
	f, err := NewFrame(spec)
	if err != nil {
		return nil, err
	}
	return f.layout(), nil
}

func (f Frame) layout() *Layout {
	l := &Layout{
		Spec: f.base.spec, Frame: f, Strings: f.stringLines(), Frets: f.frets(),
		Nut: f.across(0), Saddle: f.across(1), Neutral: f.neutralLine(),
		NutOffset: unit.Length(plain(f.pt - f.pb)), Parallel: f.diff == 0,
	}
	l.Spec.Bass, l.Spec.Treble = unit.Length(f.bass), unit.Length(f.treble)
	l.NutPositions, l.SaddlePositions = l.StringsAt(l.Nut), l.StringsAt(l.Saddle)
	last := l.Last().Line
	l.DiagonalBassNut, l.DiagonalTrebleNut = l.Nut.Bass.Distance(last.Treble), l.Nut.Treble.Distance(last.Bass)
	return l
}

// across is the line at fraction k of the outer strings.
func (f *Frame) across(k float64) Across {
	t := f.tan(k)
	return Across{
		Bass: f.along(k, 1), Treble: f.along(k, 0),
		Cross: unit.Length(f.cross(k)), TanSlant: t, Slant: unit.Angle(math.Atan(t)),
	}
}

func (f *Frame) stringLines() []StringLine {
	lines := make([]StringLine, f.base.spec.Strings)
	for i := range lines {
		s := &lines[i]
		s.Number, s.Length = i+1, f.Length(i)
		s.Nut, s.Saddle = f.ends(i)
	}
	return lines
}

func (f *Frame) frets() []Fret {
	frets := make([]Fret, f.base.spec.Frets+1)
	for n := range frets {
		k := K(float64(n))
		fret := &frets[n]
		*fret = Fret{
			Number: n, Line: f.across(k),
			Bass: mark(f.bass, n), Treble: mark(f.treble, n),
			CentsSharp: make([]unit.Cents, f.base.spec.Strings),
		}
		fret.Slot = f.slot(fret.Line)
		for i := range fret.CentsSharp {
			fret.CentsSharp[i] = f.centsSharp(i, n)
		}
	}
	return frets
}

// mark places fret n on an outer line of length L: x = L k(n) from the nut.
// One cent is worth (L - x) ln2/1200 mm there, the derivative of
// 1200 log2(1/(L - x)) turned over. Follows from frequency as 1/length
// (OpenStax, University Physics 1, section 16.6).
func mark(length float64, n int) Mark {
	x := float64(length * K(float64(n)))
	m := Mark{FromNut: unit.Length(x), OneCent: unit.Length((length - x) * math.Ln2 / 1200)}
	if n > 0 {
		m.Step = unit.Length(x - float64(length*K(float64(n-1))))
	}
	return m
}

// slot runs a line across the strings on to the board's edges.
func (f *Frame) slot(line Across) Slot {
	bassY, trebleY := f.edges(line.Cross.M(), line.TanSlant)
	s := Slot{Bass: on(line, bassY), Treble: on(line, trebleY)}
	s.Length = s.Bass.Distance(s.Treble)
	return s
}

// on is the point of a line at y.
func on(line Across, y float64) Point {
	return at(line.Cross.M()+float64(y*line.TanSlant), y)
}

// noCents is far below what arithmetic at 2 m resolves, and far above its
// rounding: less is no error of the fan.
const noCents = 1e-10

// centsSharp is by how much string i sounds sharp on fret n for its place
// alone:
//
//	1200 log2((1 - k)/(1 - u))
//
// k  the fret's fraction of the outer lines, u  the fraction of the string's
// length at which it meets the straight fret; u > k is sharp. Exactly 0
// where the string has the same fraction at nut and saddle. Ours, from
// frequency as 1/length.
func (f *Frame) centsSharp(i, n int) unit.Cents {
	a, b := f.fractions(i)
	if a == b || n == 0 {
		return 0
	}
	k := K(float64(n))
	u := meets(f.along(0, a), f.along(1, b), f.cross(k), f.tan(k))
	cents := 1200 * math.Log2((1-k)/(1-u))
	if math.Abs(cents) < noCents {
		return 0
	}
	return unit.Cents(cents)
}

func (f *Frame) neutralLine() NeutralLine {
	k := f.base.neutralK
	return NeutralLine{f.base.spec.Neutral, unit.Length(plain(f.bassX(k))), unit.Length(f.bass * k), unit.Length(f.treble * k)}
}
