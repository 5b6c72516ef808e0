package build

// Start says what a first build file is to be about.
type Start struct {
	// Name of the build; "My build" when empty.
	Name string
	// Tuning as notes or by name, 4 to 10 strings; when empty the usual tuning
	// of that number of Strings is taken.
	Tuning string
	// Strings is the number of strings when Tuning is empty: 4 to 9; 0 is 6.
	Strings int
	// Bass asks for a bass where Strings alone would leave it open (5, 6).
	Bass bool
	// Inches writes inches and pounds-force, else millimetres and newtons.
	Inches bool
}

// Template gives a commented build file and readings file to begin with. The
// readings are invented and say so; they are there so that every command runs
// at once, and are to be replaced.
func Template(s Start) (buildFile, readingsFile []byte, err error) { return nil, nil, nil }
