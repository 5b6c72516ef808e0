package fan

import (
	"strconv"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// Neutral names the line that stands square to the centreline: a fret, which
// may lie between two frets (7.5), 0 for the nut, or the saddle line.
type Neutral struct {
	Fret   float64 `json:"neutral_fret"` // 0 to the last fret; 0 where Bridge is set
	Bridge bool    `json:"neutral_at_bridge"`
}

// K gives the neutral line's fraction of the length: k(Fret), or 1 for the
// bridge.
func (n Neutral) K() float64 {
	if n.Bridge {
		return 1
	}
	return K(n.Fret)
}

// String is the line as a builder names it: "7.5" or "bridge".
func (n Neutral) String() string {
	if n.Bridge {
		return "bridge"
	}
	return strconv.FormatFloat(n.Fret, 'f', -1, 64)
}

// UnmarshalText reads a fret, which may lie between two, or "bridge".
func (n *Neutral) UnmarshalText(text []byte) error {
	if strings.EqualFold(strings.TrimSpace(string(text)), "bridge") {
		*n = Neutral{Bridge: true}
		return nil
	}
	x, err := unit.ParseNumber(string(text))
	if err != nil {
		return fault.Fault{What: "not a neutral fret", Given: string(text), Remedy: `a number such as 7 or 7.5, or "bridge"`}
	}
	*n = Neutral{Fret: x}
	return nil
}
