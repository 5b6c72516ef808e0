package mark

import "io"

// ReadReadings reads a measurement file. file is the name for places; the
// error is a fault.List of everything that is wrong with it.
func ReadReadings(in io.Reader, file string) ([]Reading, error) { return nil, nil }
