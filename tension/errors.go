package tension

import (
	"errors"
	"fmt"

	"scalepair/data/unit"
)

// What keeps a bend or a compensation from being computed.
var (
	// ErrNotReachable is matched by every [*NotReachableError].
	ErrNotReachable = errors.New("the bend is not reachable")
	// ErrNoStiffness: the core's stiffness is not known, so neither bend nor
	// compensation can be computed.
	ErrNoStiffness = errors.New("the stiffness of the core is not known")
	// ErrStretch: so weak a core has no bend that could be computed.
	ErrStretch = errors.New("the string would stretch to more than twice its length")
)

// NotReachableError says how far a bend got.
type NotReachableError struct {
	Wanted   unit.Cents  // the rise asked for
	Breaks   bool        // the wire breaks first; else the board's edge is in the way
	EdgeRise unit.Cents  // rise where the string meets the board's edge (edge only)
	Edge     unit.Length // sideways way to that edge (edge only)
	Breaking unit.Ratio  // stress over strength at the wanted rise, above 1 (breaking only)
}

// Error gives the reason with its numbers.
func (e *NotReachableError) Error() string {
	if e.Breaks {
		return fmt.Sprintf("a bend of %.0f cents is not reachable: the core would stand at %.0f %% of its breaking stress",
			e.Wanted.Value(), e.Breaking.Percent())
	}
	return fmt.Sprintf("a bend of %.0f cents is not reachable: at the board's edge, %.1f mm away, it has risen %.0f cents",
		e.Wanted.Value(), e.Edge.MM(), e.EdgeRise.Value())
}

// Is matches [ErrNotReachable].
func (e *NotReachableError) Is(target error) bool { return target == ErrNotReachable }
