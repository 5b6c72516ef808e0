package unit

// spelling is one unit of a quantity: its names, the first of them the one
// that messages use, and its exact size in SI, num/den.
type spelling struct {
	names    []string
	num, den int64
}

// kind is one quantity: the word for it in messages and its units. The first
// two units are the ones suggested where a unit is missing.
type kind struct {
	what  string
	units []spelling
}

// Sizes follow constants.go; a test compares them. Names are compared in
// lower case with blanks removed.
var (
	lengths = kind{"a length", []spelling{
		{[]string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}, 1, 1000},
		{[]string{"in", "inch", "inches", `"`}, 254, 10000},
		{[]string{"cm", "centimetre", "centimetres", "centimeter", "centimeters"}, 1, 100},
		{[]string{"m", "metre", "metres", "meter", "meters"}, 1, 1},
	}}
	masses = kind{"a mass", []spelling{
		{[]string{"g", "gram", "grams", "gramme", "grammes"}, 1, 1000},
		{[]string{"oz", "ounce", "ounces"}, 45359237, 16 * 100000000},
		{[]string{"mg", "milligram", "milligrams"}, 1, 1000000},
		{[]string{"kg", "kilogram", "kilograms"}, 1, 1},
		{[]string{"lb", "lbs", "pound", "pounds"}, 45359237, 100000000},
		{[]string{"gr", "grain", "grains"}, 45359237, 7000 * 100000000},
	}}
	// On a string a pound or a kilogram can only mean its weight, and players
	// write it so.
	forces = kind{"a force", []spelling{
		{[]string{"N", "newton", "newtons"}, 1, 1},
		{[]string{"lbf", "lb", "lbs", "pound", "pounds"}, 44482216152605, 10000000000000},
		{[]string{"kgf", "kg", "kilogram", "kilograms", "kp"}, 980665, 100000},
	}}
	linearDensities = kind{"a linear density", []spelling{
		{[]string{"g/m", "gram/metre", "grams/metre", "mg/mm"}, 1, 1000},
		{[]string{"lb/in", "lbs/in", "lb/inch"}, 45359237, 2540000},
		{[]string{"kg/m"}, 1, 1},
	}}
	degrees = kind{"an angle", []spelling{
		{[]string{"deg", "°", "degree", "degrees"}, 1, 1},
	}}
	numbers     = kind{"a number", []spelling{{[]string{""}, 1, 1}}}
	ratios      = kind{"a ratio", []spelling{{[]string{"%", "percent", "percentage points"}, 1, 100}}}
	intervals   = kind{"an interval", []spelling{{[]string{"cents", "cent"}, 1, 1}}}
	frequencies = kind{"a frequency", []spelling{{[]string{"Hz", "hertz"}, 1, 1}}}
)

// ParseLength reads a length: "648 mm", "64.8 cm", "0.648 m", "25.5 in",
// `25.5"`, `25 1/2"`, "25-1/2 in", "25½ in". Negative lengths are read too;
// the caller knows the range. The error says what would do.
func ParseLength(s string) (Length, error) { return parse[Length](lengths, s, "") }

// ParseLengthIn reads a length under a heading that states its unit, such as
// "mm": the text may leave the unit out, and must not give another one. With
// unit "" it is ParseLength.
func ParseLengthIn(s, unit string) (Length, error) { return parse[Length](lengths, s, unit) }

// ParseMass reads a mass in g, mg, kg, lb, oz or gr (grains).
func ParseMass(s string) (Mass, error) { return parse[Mass](masses, s, "") }

// ParseMassIn reads a mass under the rules of ParseLengthIn.
func ParseMassIn(s, unit string) (Mass, error) { return parse[Mass](masses, s, unit) }

// ParseForce reads a force in N, lbf or kgf; lb and kg mean the weight of that
// mass in standard gravity, as players write a string's tension.
func ParseForce(s string) (Force, error) { return parse[Force](forces, s, "") }

// ParseLinearDensity reads a mass per length in g/m, kg/m, mg/mm or lb/in.
func ParseLinearDensity(s string) (LinearDensity, error) {
	return parse[LinearDensity](linearDensities, s, "")
}

// ParseAngle reads an angle in degrees, "12 deg" or "12°".
func ParseAngle(s string) (Angle, error) {
	x, err := parse[float64](degrees, s, "")
	return Degrees(x), err
}

// ParseNumber reads a plain finite number such as "7.5" or "-1e-3".
func ParseNumber(s string) (float64, error) { return parse[float64](numbers, s, "") }

func parse[Q ~float64](k kind, s, headed string) (Q, error) {
	x, _, err := k.parse(s, headed)
	return Q(x), err
}
