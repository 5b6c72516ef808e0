package tension

// SetBack is how far the saddle stands behind its theoretical line so that
// the string pressed at fret 12 sounds the octave of the open string, in m:
// lo with hinged ends, hi with clamped ends. The error is [ErrNoStiffness]
// or [ErrInput].
func SetBack(w Wire, lengthM, freqHz, heightM float64, tails Tails) (lo, hi float64, err error) {
	return 0, 0, ErrNoStiffness
}
