package choice

import (
	"slices"

	"scalepair/data/unit"
)

// Result is the outcome of a search over a grid.
type Result struct {
	Tried  int `json:"pairs_tried"`
	Kept   int `json:"pairs_kept"`
	AsGood int `json:"pairs_as_good"`
	// Best is the least feel error of the pairs kept, Allowed the greatest that is
	// as good, and NotRemovable U, what no set can remove, which both contain.
	Best         unit.Ratio `json:"least_feel_error_percent"`
	Allowed      unit.Ratio `json:"allowed_feel_error_percent"`
	NotRemovable unit.Ratio `json:"not_removable_percent"`
	// AllAsGood says that every pair kept is as good as the best: only limits and
	// range decide. NoneNear says that no pair comes near what is wanted, so that
	// nothing is called as good.
	AllAsGood bool `json:"all_as_good"`
	NoneNear  bool `json:"none_near"`

	Picks []Pick `json:"picks"`
	// ClearEnoughLacks, above 0, says that no pair as good is clear enough; that
	// pick is then the one with the least inharmonicity, which misses by so much.
	ClearEnoughLacks unit.Cents `json:"clear_enough_lacks_cents,omitempty"`
	TradeOff         []Step     `json:"trade_off"`
	StopsSmallestFan *Stop      `json:"stops_smallest_fan,omitempty"`
	StopsLongestBass *Stop      `json:"stops_longest_bass,omitempty"`
	Dropped          []Dropped  `json:"dropped"`
	// Settled says that the picks stood once equal gaps were those of their own
	// sets.
	Settled bool `json:"settled"`

	plan  *Plan
	field *field
}

// Pick is one of the pairs among which a builder decides.
type Pick struct {
	Kind PickKind `json:"pick"`
	Pair
	// StockDecides names the strings that are far from the wanted tension for
	// want of a heavier or lighter gauge: this, not feel, moves the lengths.
	StockDecides []Missing `json:"strings_in_stock_decide,omitempty"`
}

// Missing is a string more than 10 % from the wanted tension, strung with the
// heaviest or lightest gauge in stock (of its construction, where that binds).
type Missing struct {
	String    int                `json:"string"`
	Gauge     int                `json:"-"`
	Deviation unit.Ratio         `json:"tension_deviation_percent"`
	Wanted    unit.LinearDensity `json:"wanted_linear_density_g_per_m"`
	Heaviest  bool               `json:"heaviest"`
}

// Step is one row of the trade-off between the fan and the lowest string.
type Step struct {
	Pair
	// MoreInharmonicity is the change from the first row.
	MoreInharmonicity unit.Cents `json:"inharmonicity_change_cents"`
}

// Pick gives the pick of a kind; nil where there is none.
func (r *Result) Pick(k PickKind) *Pick {
	if i := slices.IndexFunc(r.Picks, func(p Pick) bool { return p.Kind == k }); i >= 0 {
		return &r.Picks[i]
	}
	return nil
}

// Preferred is the pick that is taken while no pair is chosen: the one asked
// for, else with gauges given the best feel, else clear enough where a wanted
// inharmonicity is stated, else the middle; nil where no pair was kept.
func (r *Result) Preferred() *Pick {
	order := []PickKind{r.plan.req.Feel.Prefer, ClearEnough, MiddlePick, BestFeel}
	if r.plan.req.Given != nil {
		order = []PickKind{r.plan.req.Feel.Prefer, BestFeel}
	}
	for _, k := range order {
		if p := r.Pick(k); p != nil {
			return p
		}
	}
	return nil
}
