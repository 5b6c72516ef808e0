package tension

// Step is one line of the work: a number with the formula it came from.
type Step struct {
	Name    string  // what it is, in plain words
	Formula string  // in the symbols of the steps above it; "" for a given number
	Value   float64 // in Unit
	Unit    string  // "" for a pure number
	Source  string  // where formula or constant comes from
}
