package gauges

import (
	"slices"

	"scalepair/data/odd"
)

// Rows of the table.
const (
	watchWireDensity = iota
	watchWrapDensity
	watchStringDensity
	watchWireOuter
	watchPlasticOuter
	watchWoundOuter
	watchCoreShare
	watchPieceLength
	watchPieces
	watchWinding
	watchHungMass
	watchSpeaking
	watchHungPitch
	watchWrapWire
	watchPacking
	watchDensity
	watchMetalModulus
	watchPlasticModulus
	watchMetalStrength
	watchPlasticStrength
	watchBalanceResolution
	watchBalanceBound
	watchRulerResolution
	watchRulerBound
	watchCaliperResolution
	watchCaliperBound
	watchHungResolution
	watchPitchCents
)

const (
	noSource    = "common practice, no source"
	checkWeight = "check diameter, mass, length and number of pieces, and their units"
	checkPitch  = "check diameter, hung mass, speaking length and pitch, and their units"
	checkUnit   = "check the number and its unit"
)

// densityRoom is how far the density of a plain string may stand from its
// material's, as a share of it and beside three standard uncertainties. The
// figures printed for music wire run from 7.80 to 7.92 g/cm3 (spring-materials
// sheets and tables of metal densities), for stainless steel from 7.48 to 8.0.
const densityRoom = 0.03

// watched are the usual ranges of readings, materials and measuring tools. The
// range of the wire density is that of music wire, sharply known; Stock.Odd
// takes that of the gauge's own material, and adds three standard
// uncertainties of readings and diameter.
var watched = [...]odd.Usual{
	watchWireDensity: {Quantity: "wire density", Measure: odd.GramsPerCM3, Low: 7.85 * (1 - densityRoom), High: 7.85 * (1 + densityRoom),
		Check:  checkWeight,
		Source: "a plain string has its material's density: music wire 7.80 to 7.92 g/cm3 (spring-materials sheets), here with 3 % of room; other materials theirs"},
	watchWrapDensity: {Quantity: "wrap density", Measure: odd.GramsPerCM3, Low: 3.6, High: 9,
		Check:  checkWeight,
		Source: "close round wire fills pi/4 of its ring: steel 6.2, bronze 7; solid nickel or silver-plated copper 8.9 g/cm3; tape over steel about 4 (judgement)"},
	watchStringDensity: {Quantity: "density of a wound string", Measure: odd.GramsPerCM3, Low: 3.2, High: 9,
		Check: checkWeight, Source: "judgement: metal on a nylon core from 4, on a steel core 6 to 8 g/cm3"},
	watchWireOuter: {Quantity: "diameter of a plain metal string", Measure: odd.Millimetres, Low: 0.15, High: 0.75,
		Check: "is the unit that of the column? 0.010 in is 0.254 mm", Source: "0.007 to 0.028 in (" + noSource + ")"},
	watchPlasticOuter: {Quantity: "diameter of a plain plastic string", Measure: odd.Millimetres, Low: 0.35, High: 1.5,
		Check: "is the unit that of the column? 0.028 in is 0.711 mm", Source: "nylon and fluorocarbon, 0.5 to 1.1 mm on guitars (" + noSource + ")"},
	watchWoundOuter: {Quantity: "outer diameter of a wound string", Measure: odd.Millimetres, Low: 0.4, High: 4.2,
		Check: "is the unit that of the column? 0.046 in is 1.168 mm", Source: "0.017 in on guitars to 0.160 in on basses (" + noSource + ")"},
	watchCoreShare: {Quantity: "core diameter against the outside", Measure: odd.Share, Low: 0.18, High: 0.8,
		Check: "are the two in one unit, and the core measured over its flats?", Source: "judgement: a quarter on thick bass strings, two thirds on the thinnest wound ones"},
	watchPieceLength: {Quantity: "length of a weighed piece", Measure: odd.Millimetres, Low: 20, High: 2500,
		Check: "is it the length of one piece, in the unit of the column?", Source: "judgement: less cannot be weighed well even of the heaviest, and no string is longer"},
	watchPieces: {Quantity: "number of pieces weighed together", Measure: odd.Plain, Low: 1, High: 20,
		Check: "count them", Source: "judgement"},
	watchWinding: {Quantity: "wound length", Measure: odd.Millimetres, Low: 350, High: 1500,
		Check: checkUnit, Source: "from small ukuleles to extra-long basses (" + noSource + ")"},
	watchHungMass: {Quantity: "hung mass", Measure: odd.Kilograms, Low: 0.5, High: 25,
		Check: "is the unit kg or lb?", Source: "judgement: about the pull of a string at pitch, 3 to 20 kg"},
	watchSpeaking: {Quantity: "speaking length of a hung string", Measure: odd.Millimetres, Low: 150, High: 1500,
		Check: "is it measured from clamp to clamp, in the unit of the column?", Source: "judgement"},
	watchHungPitch: {Quantity: "pitch of a hung string", Measure: odd.Hertz, Low: 20, High: 700,
		Check: "is the octave right?", Source: "judgement: the pitches of strings in use"},
	watchWrapWire: {Quantity: "wrap wire", Measure: odd.Millimetres, Low: 0.04, High: 0.9,
		Check: "is the unit right? a wrap of 0.012 in is 0.305 mm", Source: "0.002 to 0.030 in (" + noSource + ")"},
	watchPacking: {Quantity: "packing", Measure: odd.Share, Low: 0.6, High: 1,
		Check: "it is the share of the wrap's ring that metal fills", Source: "close round wire fills pi/4, 0.785; ground and flat wire up to 1"},
	watchDensity: {Quantity: "density of a material", Measure: odd.GramsPerCM3, Low: 0.85, High: 9,
		Check: "is it in g/cm3, or kg/m3 in a column of that name?", Source: "nylon from 0.88 to nickel and copper at 8.9 g/cm3 (Gere, Mechanics of Materials, 5th ed.; University Physics 1, 14.1)"},
	watchMetalModulus: {Quantity: "modulus of a metal", Measure: odd.Gigapascals, Low: 60, High: 250,
		Check: "is it in GPa, and that against stretching?", Source: "brass 90 to steel and nickel 210 GPa (University Physics 1, 12.3; Shigley, Table 10-5)"},
	watchPlasticModulus: {Quantity: "modulus of a light material", Measure: odd.Gigapascals, Low: 0.5, High: 25,
		Check: "is it in GPa?", Source: "nylon 5 GPa (College Physics, 5.3); drawn plastics and gut 2 to 10 (judgement)"},
	watchMetalStrength: {Quantity: "strength of a metal", Measure: odd.Megapascals, Low: 250, High: 3500,
		Check: "is it in MPa? 1 ksi is 6.9 MPa", Source: "soft copper to music wire of 0.1 mm, 3027 MPa (ASTM A228, through a secondary table)"},
	watchPlasticStrength: {Quantity: "strength of a light material", Measure: odd.Megapascals, Low: 40, High: 1500,
		Check: "is it in MPa? 1 ksi is 6.9 MPa", Source: "judgement: moulded nylon 60, drawn fibres up to 1000 MPa"},
	watchBalanceResolution: {Quantity: "step of the balance", Measure: odd.Grams, Low: 0.0001, High: 0.1,
		Check: "a string end weighs about 1 g: what is the least step that the balance shows?", Source: "pocket balances 0.01 to 0.1 g, laboratory ones 0.1 mg (" + noSource + ")"},
	watchBalanceBound: {Quantity: "accuracy of the balance", Measure: odd.Grams, Low: 0.00005, High: 0.3,
		Check: checkUnit, Source: "judgement: a few steps of such balances"},
	watchRulerResolution: {Quantity: "step of the ruler", Measure: odd.Millimetres, Low: 0.1, High: 3.2,
		Check: "what is the distance between two of its lines?", Source: "0.5 or 1 mm, 1/64 to 1/8 in (" + noSource + ")"},
	watchRulerBound: {Quantity: "accuracy of the ruler", Measure: odd.Millimetres, Low: 0.005, High: 2,
		Check: checkUnit, Source: "judgement: 0.1 mm on a steel rule, 1 mm on a worn tape"},
	watchCaliperResolution: {Quantity: "step of the calipers", Measure: odd.Millimetres, Low: 0.001, High: 0.1,
		Check: "is the unit right? calipers show 0.01 mm or 0.0005 in", Source: "micrometers 0.001 mm, verniers 0.1 mm (" + noSource + ")"},
	watchCaliperBound: {Quantity: "accuracy of the calipers", Measure: odd.Millimetres, Low: 0.001, High: 0.1,
		Check: checkUnit, Source: "0.02 to 0.05 mm (" + noSource + ")"},
	watchHungResolution: {Quantity: "step of the scales", Measure: odd.Grams, Low: 0.01, High: 100,
		Check: "what is the least step that they show?", Source: "kitchen scales 1 g, luggage scales 10 to 50 g (" + noSource + ")"},
	watchPitchCents: {Quantity: "uncertainty of a pitch", Measure: odd.Cents, Low: 0.1, High: 20,
		Check: "it is a standard uncertainty, in cents", Source: "judgement: a strobe 0.1, an ear 5 to 10 cents"},
}

// Watched gives the usual ranges of readings, materials and measuring tools, row by row.
func Watched() []odd.Usual { return slices.Clone(watched[:]) }
