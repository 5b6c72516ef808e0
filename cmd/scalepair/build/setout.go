package build

import (
	"fmt"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
	"scalepair/data/unit"
	"scalepair/fan"
	"scalepair/fan/mark"
	"scalepair/tension/choice"
)

// SetOut is all that is set out and made by hand for one chosen pair.
type SetOut struct {
	Layout *fan.Layout
	// Detail holds the strings with their gauges; nil while no set is settled.
	Detail *choice.Detail
	List   mark.List
	// Fineness is how finely List is rounded, and why.
	Fineness Fineness
	Sawing   fan.Sawing
	// Depths are empty while the tang's depth is not known; LeastThicknessMM is
	// then 0.
	Depths           []fan.SlotDepth
	LeastThicknessMM float64
	Blanks           []BlankFit // in the file's order
	Blank            int        // the one worked with, an index into Blanks; -1 for none
	Wire             fan.WireList
	// Saddles holds a point a string; nil without gauges, or where no string's
	// compensation can be computed. A string of unknown stiffness has compensation 0
	// there, and its CompensationErr in Detail says why.
	Saddles *fan.Saddles
	Lines   []fan.PlacedLine
}

// SetOutOptions are the choices of one run.
type SetOutOptions struct {
	Resolution  Fineness
	Blank       string // the name of a blank on offer; "" takes the first that serves
	RadiusFirst bool   // see fan.Sawing
}

// BlankFit says whether one blank on offer serves, thickness included.
type BlankFit struct {
	fan.Fit
	// LeftUnderMM is left under the deepest slot and LeftAtEdgeMM at the
	// thinnest slot end after radiusing; 0 while thickness or tang are not
	// known.
	LeftUnderMM, LeftAtEdgeMM float64
	Thin                      error // why it is too thin; nil where it is not, or where that is not known
}

// WillDo says that the blank is large enough and not known to be too thin.
func (b BlankFit) WillDo() bool { return b.Fits && b.Thin == nil }

// SetOut works a layout out for the bench. d may be nil. The error is a
// fault.List of everything the build file has wrong, each at its place.
func (r *Run) SetOut(l *fan.Layout, d *choice.Detail, o SetOutOptions) (*SetOut, error) {
	s := &SetOut{Layout: l, Detail: d, Fineness: o.Resolution, Sawing: fan.Sawing{FretWire: r.Build.FretWire}, Blank: -1}
	s.Sawing.RadiusFirst = o.RadiusFirst
	var faults fault.List
	include := func(err error) { faults.Include(fault.Place{Input: r.Build.File}, r.atFile(err)) }
	var err error
	s.List, err = mark.SettingOut(l, mark.Bench{Resolution: o.Resolution.Resolution, KerfMM: s.Sawing.Kerf.MM(),
		Dots: &r.Build.Dots})
	include(err)
	s.Wire, err = l.Wire(s.Sawing.FretWire)
	include(err)
	s.Lines, err = r.FurtherLines(l)
	include(err)
	include(s.depths())
	s.fitBlanks(r.Build.Blanks)
	include(s.pickBlank(r, o.Blank))
	include(s.saddles())
	return s, faults.Err()
}

// depths finds the slots' depth once the tang is known.
func (s *SetOut) depths() error {
	if s.Sawing.TangDepth == 0 {
		return nil
	}
	var err error
	if s.Depths, err = s.Layout.Depths(s.Sawing); err != nil {
		return err
	}
	least, err := s.Layout.LeastThickness(s.Sawing)
	s.LeastThicknessMM = least.MM()
	return err
}

// fitBlanks judges every blank on offer.
func (s *SetOut) fitBlanks(offers []fan.Blank) {
	for _, fits := range s.Layout.LeastBlank().Fit(offers) {
		fit := BlankFit{Fit: fits}
		if t := fits.Blank.Thickness.MM(); t > 0 && s.Depths != nil {
			under, drop := 0.0, 0.0
			for _, d := range s.Depths {
				fall := max(d.BassDrop.MM(), d.TrebleDrop.MM())
				under, drop = max(under, d.Middle.MM()+fall), max(drop, fall)
			}
			fit.LeftUnderMM, fit.LeftAtEdgeMM = t-under, t-drop
			thick := s.Sawing
			thick.Thickness = unit.MM(t)
			_, fit.Thin = s.Layout.Depths(thick)
		}
		s.Blanks = append(s.Blanks, fit)
	}
}

// pickBlank takes the blank of a name, else the first that serves. It is a
// fault when that one does not serve, or when every blank that is large enough
// is too thin; that none is large enough is no fault, since one can be bought.
func (s *SetOut) pickBlank(r *Run, name string) error {
	var thin fault.List
	for i, b := range s.Blanks {
		if name == "" && b.WillDo() || name != "" && labelled(b.Blank.Name, name) {
			s.Blank = i
			break
		}
		if b.Fits && b.Thin != nil {
			thin.Include(fault.Place{}, at(b.Thin, r.Build.Place(fmt.Sprintf("blanks[%d].thickness", i))))
		}
	}
	switch {
	case s.Blank < 0 && name != "":
		return noBlank(name, s.Blanks)
	case s.Blank < 0:
		return thin.Err()
	case !s.Blanks[s.Blank].Fits:
		b := s.Blanks[s.Blank]
		return fault.Fault{Place: r.entry("blanks", s.Blank), What: fmt.Sprintf("%s is too small for this board", b.Blank.Name),
			Given:  r.size(b.Blank.Length.MM(), b.Blank.Width.MM()),
			Remedy: "at least " + r.size(b.Blank.Length.MM()-b.SpareLength.MM(), b.Blank.Width.MM()-b.SpareWidth.MM()) + ", saw allowance included"}
	case s.Blanks[s.Blank].Thin != nil:
		return at(s.Blanks[s.Blank].Thin, r.Build.Place(fmt.Sprintf("blanks[%d].thickness", s.Blank)))
	}
	return nil
}

func labelled(have, want string) bool {
	return strings.EqualFold(strings.TrimSpace(have), strings.TrimSpace(want))
}

func noBlank(name string, blanks []BlankFit) error {
	var names []string
	for _, b := range blanks {
		names = append(names, b.Blank.Name)
	}
	remedy := "list it under [[blanks]]"
	if s := suggest.Nearest(name, names); s != "" {
		remedy = fmt.Sprintf("did you mean %q?", s)
	}
	return fault.Fault{Place: fault.Place{Input: "--blank"}, What: "no such blank on offer", Given: name, Remedy: remedy}
}

// saddles places every string's saddle.
func (s *SetOut) saddles() error {
	if s.Detail == nil {
		return nil
	}
	backs, known := make([]fan.Compensation, len(s.Detail.Strings)), false
	for i, d := range s.Detail.Strings {
		if d.CompensationErr == nil {
			backs[i], known = fan.Compensation{Lo: d.Compensation[0], Hi: d.Compensation[1]}, true
		}
	}
	if !known {
		return nil
	}
	found, err := s.Layout.Saddles(backs)
	s.Saddles = &found
	return err
}
