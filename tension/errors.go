package tension

import (
	"errors"
	"fmt"
)

// What keeps a bend or a compensation from being computed.
var (
	// ErrNotReachable is matched by every [*NotReachableError].
	ErrNotReachable = errors.New("the bend is not reachable")
	// ErrNoStiffness: the core's stiffness is not known, so neither bend nor
	// compensation can be told.
	ErrNoStiffness = errors.New("the stiffness of the core is not known")
	// ErrFret: there is no bend behind the nut or before the first fret.
	ErrFret = errors.New("a bend needs a fret from 1 on")
	// ErrInput: a length, pitch or other number is not finite or out of range.
	ErrInput = errors.New("a number is missing, not finite or out of range")
)

// NotReachableError says how far a bend got.
type NotReachableError struct {
	WantedCents float64 // the rise asked for
	Breaks      bool    // the wire breaks first; else the board's edge is in the way
	EdgeCents   float64 // rise where the string meets the board's edge (edge only)
	EdgeM       float64 // sideways way to that edge, m (edge only)
	Share       float64 // stress over strength at the wanted rise, above 1 (breaking only)
}

// Error gives the reason with its numbers.
func (e *NotReachableError) Error() string {
	if e.Breaks {
		return fmt.Sprintf("a bend of %.0f cents is not reachable: the core would stand at %.0f %% of its breaking stress",
			e.WantedCents, 100*e.Share)
	}
	return fmt.Sprintf("a bend of %.0f cents is not reachable: at the board's edge, %.1f mm away, it has risen %.0f cents",
		e.WantedCents, 1000*e.EdgeM, e.EdgeCents)
}

// Is matches [ErrNotReachable].
func (e *NotReachableError) Is(target error) bool { return target == ErrNotReachable }
