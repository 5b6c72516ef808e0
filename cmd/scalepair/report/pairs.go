package report

import (
	"scalepair/data/unit"
	"scalepair/tension/choice"
)

// Pairs is every pair that a search tried, for a map that is drawn elsewhere. What
// stands by pair is a list by bass of lists by treble; null where the pair was
// dropped.
type Pairs struct {
	Head
	Bass          []unit.Length     `json:"bass_mm"`
	Treble        []unit.Length     `json:"treble_mm"`
	Error         [][]*unit.Ratio   `json:"feel_error_percent"`
	Inharmonicity [][]*unit.Cents   `json:"inharmonicity_cents"`
	AsGood        [][]bool          `json:"as_good"`
	Limit         [][]string        `json:"limit"`  // that dropped the pair; "" where it was kept
	Limits        map[string]string `json:"limits"` // the words of each limit by its key
	Thinned       bool              `json:"thinned"`
	NoneNear      bool              `json:"none_near"`
	Picks         []PickAt          `json:"picks"`
}

// PickAt is where a pick lies.
type PickAt struct {
	Kind   choice.PickKind `json:"pick"`
	Bass   unit.Length     `json:"bass_mm"`
	Treble unit.Length     `json:"treble_mm"`
}

// NewPairs works up the pairs of a search.
func NewPairs(in *Input, r *choice.Result) *Pairs {
	g := r.Grid(mostPairs)
	p := &Pairs{Head: in.head(), Bass: g.Bass, Treble: g.Treble, Limits: map[string]string{}, Thinned: g.Thinned, NoneNear: r.NoneNear, Picks: []PickAt{}}
	for _, of := range g.Pairs {
		row := struct {
			errors []*unit.Ratio
			cents  []*unit.Cents
			good   []bool
			limits []string
		}{}
		for i := range of {
			one := &of[i]
			limit := ""
			if one.Limit != choice.Kept {
				key, _ := one.Limit.MarshalText()
				limit = string(key)
				p.Limits[limit] = one.Limit.String()
				row.errors, row.cents = append(row.errors, nil), append(row.cents, nil)
			} else {
				row.errors, row.cents = append(row.errors, &one.Error), append(row.cents, &one.Inharmonicity)
			}
			row.good, row.limits = append(row.good, one.AsGood), append(row.limits, limit)
		}
		p.Error, p.Inharmonicity = append(p.Error, row.errors), append(p.Inharmonicity, row.cents)
		p.AsGood, p.Limit = append(p.AsGood, row.good), append(p.Limit, row.limits)
	}
	for _, k := range r.Picks {
		p.Picks = append(p.Picks, PickAt{k.Kind, k.Bass, k.Treble})
	}
	return p
}
