package gauges

import (
	"fmt"
	"math"

	"scalepair/data/fault"
)

// sourceClamps is how firmly the ends of hung strings are held: the same hands
// and the same clamps hold them all.
const sourceClamps = "clamps of hung strings"

// inputClamps names the clamps in the parts of a reading.
const inputClamps = "clamps, between hinged and firm"

// unknownClamps is the standard uncertainty taken for the ends of a hung string
// whose bending stiffness is unknown: cores of 0.30 to 0.65 mm under 60 to 80 N
// over 600 mm have between 0.3 and 1.6 % on the linear density, and it is left
// out. Judgement.
const unknownClamps = 0.008

// slimness is how stiff a hung string is for its pull and length.
//
//	eps = sqrt(EI/T)/l
//
// ei: bending stiffness, N m2; pull T, N, above 0; l: clamp to clamp, m, above
// 0. A firm clamp keeps about sqrt(EI/T) of string from swinging. Source:
// Fletcher (1964), see clamped.
func slimness(ei, pull, l float64) float64 { return math.Sqrt(ei/pull) / l }

// hinged is what stiffness alone adds to the square of the pitch where the ends
// are held but free to turn.
//
//	(f/f0)^2 = 1 + pi^2 eps^2
//
// f0: pitch without stiffness; eps: see slimness, any. Exact. Source: H.
// Fletcher, Journal of the Acoustical Society of America 36 (1964) 203, with
// B = pi^2 eps^2, from memory.
func hinged(eps float64) float64 { return 1 + math.Pi*math.Pi*eps*eps }

// clamped is what ends that cannot turn add to that again.
//
//	f/f_hinged = 1 + 2 eps + 4 eps^2,  squared
//
// eps: see slimness; at 0.05, the greatest that is let in, the pitch comes out
// within 0.12 %. Source: Fletcher (1964), and Fletcher and Rossing, The Physics of
// Musical Instruments, 2nd ed., section 2.18, where it stands as
// 1 + (2/pi) sqrt(B) + (4/pi^2) B; both from memory.
func clamped(eps float64) float64 {
	x := 1 + 2*eps + 4*eps*eps
	return x * x
}

// clampFactor corrects the linear density of a hung string for its ends, which lie
// somewhere between hinged and clamped.
//
//	factor = h (1 + c)/2,  u/factor = (c - 1)/(sqrt(3) (c + 1))
//
// h: hinged, c: clamped, at the same eps. To first order 1 + 2 eps with the
// range +-2 eps; 1 and 0 where eps is 0. Core of a wound string only: its wrap
// adds a little, so that eps is a lower bound. That real clamps stand anywhere
// between is judgement; the rectangle's uncertainty: the Guide 4.3.7.
func clampFactor(eps float64) (factor, relU float64) {
	h, c := hinged(eps), clamped(eps)
	return h * (1 + c) / 2, BoundU((c - 1) / (c + 1))
}

// mostStiff is the greatest slimness that a hung test may have: there the ends
// raise the pitch by up to a tenth, and the linear density is known to 6 % at
// best. Judgement.
const mostStiff = 0.05

// checkStiff reports a hung test of a string too stiff for its load and length.
func (e *entry) checkStiff(r *Reading, faults *fault.List) {
	if r.Kind != Hung {
		return
	}
	_, ei := e.stiffness()
	if eps := slimness(ei, r.HungKg*nearGravity, r.SpeakingM); eps > mostStiff {
		faults.Add(r.Place, fmt.Sprintf("gauge %q: too stiff a string for so light a weight on so short a length; its clamps alone may raise the pitch by %s %%",
			r.Gauge, decimals(100*(math.Sqrt(clamped(eps))-1), 0)), e.entered(r), "hang it longer, or hang more, up to half the breaking load")
	}
}
