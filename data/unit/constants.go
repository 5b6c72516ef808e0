package unit

// The defined sizes of the units in SI. All are exact: each is defined by
// agreement and carries no uncertainty.
const (
	// Inch in metres. International yard and pound agreement of 1959;
	// W3C CSS Values and Units Level 3, absolute lengths, states 1in = 2.54cm.
	Inch = 0.0254
	// Millimetre in metres, by the SI prefix.
	Millimetre = 1e-3
	// Pound is the avoirdupois pound in kilograms. National Physical
	// Laboratory, frequently asked questions on mass: 0.45359237 kg exactly.
	Pound = 0.45359237
	// Ounce is the avoirdupois ounce in kilograms: a sixteenth of a pound.
	Ounce = Pound / 16
	// Grain in kilograms: a pound holds 7000.
	Grain = Pound / 7000
	// StandardGravity in m/s2: the conventional value, CODATA, uncertainty 0.
	// Weight at a place differs from it by up to 0.3 %.
	StandardGravity = 9.80665
	// PoundForce in newtons: a pound's weight in standard gravity.
	PoundForce = Pound * StandardGravity
	// KilogramForce in newtons: a kilogram's weight in standard gravity.
	KilogramForce = StandardGravity
	// PoundPerInch in kilograms per metre.
	PoundPerInch = Pound / Inch
	// KilopoundPerSquareInch (ksi) in pascals, the unit of the wire tables.
	KilopoundPerSquareInch = 1000 * PoundForce / (Inch * Inch)
)
