package unit

// Quantities that a build file or a flag states in one unit only.
var (
	ratios      = kind{"a ratio", []spelling{{[]string{"%", "percent", "percentage points"}, 1, 100}}}
	intervals   = kind{"an interval", []spelling{{[]string{"cents", "cent"}, 1, 1}}}
	frequencies = kind{"a frequency", []spelling{{[]string{"Hz", "hertz"}, 1, 1}}}
)

// UnmarshalText reads percent, "75 %", or a plain number as a part of one.
func (r *Ratio) UnmarshalText(text []byte) error {
	x, err := ParseNumber(string(text))
	if err != nil {
		x, _, err = ratios.parse(string(text), "")
	}
	*r = Ratio(x)
	return err
}

// UnmarshalText reads "20 cents".
func (c *Cents) UnmarshalText(text []byte) error {
	x, _, err := intervals.parse(string(text), "")
	*c = Cents(x)
	return err
}

// UnmarshalText reads "442 Hz", or a plain number of hertz.
func (f *Frequency) UnmarshalText(text []byte) error {
	x, _, err := frequencies.parse(string(text), "Hz")
	*f = Frequency(x)
	return err
}
