package fan

import (
	"math"
	"slices"

	"scalepair/data/odd"
)

// Rows of the table.
const (
	watchLength = iota
	watchDifference
	watchFretSlant
	watchSaddleSlant
	watchFrets
	watchLastStep
	watchNutStep
	watchSaddleStep
	watchTaper
	watchMargin
	watchNutShelf
	watchOverhang
	watchAllowance
	watchRadius
	watchCone
	watchTang
	watchClearance
	watchKerf
	watchTangWidth
	watchBarbWidth
	watchWireOverhang
	watchSpare
	watchDepth
	watchBlankLength
	watchBlankWidth
	watchThickness
	watchLineSlant
)

// leastCourseStepMM is the least mean step between strings at an end whose
// steps are listed, since pairs of strings lie about 2 mm apart (judgement).
const leastCourseStepMM = 2.5

const (
	noSource   = "common practice, no source"
	checkSlant = "check both lengths, the neutral fret and the string spread"
	checkUnit  = "check the number and its unit"
)

// watched are the usual ranges of a board's geometry. Slants beyond them are
// no matter of taste any more, which is what steep slants within them are: 37 and
// 34 in over a five-string bass's 76 mm of bridge slant the saddle line by 34
// degrees about neutral fret 7.
var watched = [...]odd.Usual{
	watchLength: {Quantity: "scale length", Measure: odd.Millimetres, Low: 300, High: 1000,
		Check:  "is the unit right? a guitar has about 650 mm, a bass 860 mm",
		Source: "mandolins and small ukuleles to the longest basses (" + noSource + "); 25.5 in: University Physics, 14th ed., problem 15.74"},
	watchDifference: {Quantity: "difference of the lengths", Measure: odd.Millimetres, Low: -60, High: 100,
		Check:  "check both lengths",
		Source: "37 to 34 in is 76 mm and the widest in use; a reverse fan is small (" + noSource + ")"},
	watchFretSlant: {Quantity: "slant", Measure: odd.Radians, Low: -36 * degree, High: 36 * degree,
		Check: checkSlant, Source: "judgement: hard to finger from 25 degrees on; 34 degrees at the nut of a five-string bass of 37 and 34 in about neutral fret 7"},
	watchSaddleSlant: {Quantity: "slant of the saddle line", Measure: odd.Radians, Low: -38 * degree, High: 38 * degree,
		Check: checkSlant, Source: "judgement: 34 degrees on a five-string bass of 37 and 34 in about neutral fret 7, with some room"},
	watchFrets: {Quantity: "number of frets", Measure: odd.Plain, Low: 12, High: 30,
		Check: "count them", Source: "small folk instruments to extended boards (" + noSource + ")"},
	watchLastStep: {Quantity: "room between the last two frets", Measure: odd.Millimetres, Low: 4.5, High: odd.Open,
		Check: "check the number of frets and the shorter length", Source: "judgement: a fingertip and the wire find no room in less; 5.2 mm on a mandolin of 24 frets"},
	watchNutStep: {Quantity: "string spacing at the nut", Measure: odd.Millimetres, Low: 5, High: 14,
		Check:  "check the span between the outer strings at the nut, and the number of strings",
		Source: "6 to 8 mm on guitars, up to 11 on basses (" + noSource + "); listed steps may be courses, from 2.5 mm"},
	watchSaddleStep: {Quantity: "string spacing at the saddles", Measure: odd.Millimetres, Low: 5, High: 22,
		Check:  "check the span between the outer strings at the saddles, and the number of strings",
		Source: "9 to 12 mm on guitars, up to 20 on basses (" + noSource + "); listed steps may be courses, from 2.5 mm"},
	watchTaper: {Quantity: "widening from the nut", Measure: odd.Times, Low: 0.95, High: 2.4,
		Check:  "are the two exchanged?",
		Source: "lap steels are parallel, guitars widen 1.4 times, basses up to twice (" + noSource + ")"},
	watchMargin: {Quantity: "edge margin", Measure: odd.Millimetres, Low: 1.5, High: 10,
		Check: "it goes from the outer string to the board's edge", Source: "3 to 4 mm is common; less than 1.5 mm lets the string slip off (" + noSource + ")"},
	watchNutShelf: {Quantity: "nut shelf", Measure: odd.Millimetres, Low: 0, High: 15,
		Check: checkUnit, Source: "nuts are 3 to 10 mm thick (" + noSource + ")"},
	watchOverhang: {Quantity: "body end overhang", Measure: odd.Millimetres, Low: 0, High: 40,
		Check: checkUnit, Source: "5 to 15 mm is common (" + noSource + ")"},
	watchAllowance: {Quantity: "saw allowance", Measure: odd.Millimetres, Low: 0, High: 12,
		Check: "it is added on every side", Source: "judgement: a band saw's kerf and a planed edge take 2 to 5 mm"},
	watchRadius: {Quantity: "crown radius", Measure: odd.Millimetres, Low: 150, High: 800,
		Check: "is the unit right? 12 in is 305 mm; leave it out for a flat board", Source: "7 1/4 to 20 in on guitars and basses (" + noSource + ")"},
	watchCone: {Quantity: "radius at the last fret against the nut's", Measure: odd.Times, Low: 1, High: 2.5,
		Check: "are the two exchanged? a compound crown flattens towards the bridge", Source: "10 to 16 in and 7 1/4 to 12 in are common (" + noSource + ")"},
	watchTang: {Quantity: "tang depth", Measure: odd.Millimetres, Low: 1, High: 2.6,
		Check: "it goes from the underside of the crown to the tang's foot", Source: "fret wire: 1.3 to 2.2 mm (" + noSource + ")"},
	watchClearance: {Quantity: "clearance under the tang", Measure: odd.Millimetres, Low: 0.1, High: 1,
		Check: "it is the air under the tang, not the slot's depth", Source: "judgement: 0.3 to 0.5 mm holds glue and dust"},
	watchKerf: {Quantity: "saw kerf", Measure: odd.Millimetres, Low: 0.35, High: 0.9,
		Check: "it is the width of the cut, not the blade's depth", Source: "fret saws: 0.5 to 0.64 mm (" + noSource + ")"},
	watchTangWidth: {Quantity: "tang width", Measure: odd.Millimetres, Low: 0.35, High: 0.8,
		Check: "measure the web between the barbs", Source: "fret wire: 0.5 to 0.6 mm (" + noSource + ")"},
	watchBarbWidth: {Quantity: "width over the barbs", Measure: odd.Millimetres, Low: 0.5, High: 1.2,
		Check: "measure over the barbs, not over the crown", Source: "fret wire: 0.7 to 1 mm (" + noSource + ")"},
	watchWireOverhang: {Quantity: "overhang of the fret wire", Measure: odd.Millimetres, Low: 0, High: 15,
		Check: checkUnit, Source: "judgement: 2 to 5 mm is trimmed off at either edge"},
	watchSpare: {Quantity: "spare fret wire", Measure: odd.Share, Low: 0, High: 0.5,
		Check: "it is in per cent", Source: "judgement: a tenth, or a few frets"},
	watchDepth: {Quantity: "slot depth", Measure: odd.Millimetres, Low: 1.3, High: 7,
		Check: "check tang, clearance and the crown's radius", Source: "judgement: tang and clearance take 2 mm, the fall of the crown of a wide bass board up to 5 mm more"},
	watchBlankLength: {Quantity: "blank length", Measure: odd.Millimetres, Low: 250, High: 1000,
		Check: checkUnit, Source: "fingerboard blanks: 350 mm for a ukulele to 800 mm for a bass (" + noSource + ")"},
	watchBlankWidth: {Quantity: "blank width", Measure: odd.Millimetres, Low: 35, High: 160,
		Check: checkUnit, Source: "fingerboard blanks: 45 to 110 mm (" + noSource + ")"},
	watchThickness: {Quantity: "blank thickness", Measure: odd.Millimetres, Low: 3, High: 14,
		Check: "is the unit right? a quarter of an inch is 6.35 mm", Source: "fingerboard blanks: 5 to 10 mm (" + noSource + ")"},
	watchLineSlant: {Quantity: "slant of a further line", Measure: odd.Radians, Low: -38 * degree, High: 38 * degree,
		Check: "it is measured from square, in degrees", Source: "as for the saddle line"},
}

// Watched gives the usual ranges of a board's geometry, row by row.
func Watched() []odd.Usual { return slices.Clone(watched[:]) }

// degree in radians.
const degree = math.Pi / 180
