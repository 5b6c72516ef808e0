package tension

import "scalepair/data/trace"

// Explain shows the work for one string: from its linear density to the tension
// with its uncertainty and what share of the variance each input has, the
// stress, the inharmonicity, and, where at has a fret, the bend. Every step can
// be followed with a pocket calculator from those above it, but for the bend
// distance, which is found by trial.
//
// What needs a number that is not known is left out. The error is that of
// [BendString], and the steps up to the bend stand even then.
func Explain(w Wire, at BendAt) ([]trace.Step, error) {
	var tr trace.Trace
	t := Open(&tr, w, at.Length, at.Pitch)
	w.WithU(&tr, t)
	w.BreakingTraced(&tr, "open", "T", t)
	Inharmonicity(&tr, w, t, at.Length)
	if at.Fret == 0 {
		return tr.Steps, nil
	}
	_, err := BendString(&tr, w, at)
	return tr.Steps, err
}
