package choice

import (
	"fmt"

	"scalepair/data/fault"
)

// check collects what is wrong with a request, under the build-file keys of its
// inputs. Ranges of single values, and lists that must be as long as the tuning,
// are the build file's to check; a list of another length panics later.
func check(req *Request) error {
	var faults fault.List
	bad := func(wrong bool, input, what, given, remedy string) {
		if wrong {
			faults.Add(fault.Place{Input: input}, what, given, remedy)
		}
	}
	n, f, ref := len(req.Cases[0].Pitches), &req.Feel, req.Reference
	bad(req.Given == nil && req.Usable != nil && len(req.Usable) == 0, "strings.stock", "no gauge may be chosen", "", "list the gauges that may, or leave the key out")
	bad(len(req.Bass) == 0, "scales.bass", "no length to try", "", `give one length, or a range such as "660 mm to 720 mm by 5 mm"`)
	bad(len(req.Treble) == 0, "scales.treble", "no length to try", "", `give one length, or a range such as "620 mm to 690 mm by 5 mm"`)

	bad(f.Tension.NoHarder, "feel.tension", "'no harder' is for bends", f.Tension.String(), `give the tension itself, or "like the reference"`)
	bad(f.Tension.Kind == Even && ref == nil && req.Given == nil, "feel.tension", "even tension without a reference needs given gauges", "even",
		"give strings.gauges, a reference, or another target")
	bad(f.BendingForce.Kind == Even, "feel.bending_force", "'even' is for tension", "even", `give a force, or "no harder than the reference"`)
	for _, s := range f.BendStrings {
		bad(s < 1 || s > n, "feel.bend_strings", "there is no such string", fmt.Sprint(s), fmt.Sprintf("use 1 to %d; 1 is the highest", n))
	}
	bad(f.ReferenceStrings != nil && ref == nil, "feel.reference_strings", "there is no reference instrument", "", "describe one under [reference]")
	for _, s := range f.ReferenceStrings {
		bad(ref != nil && (s < 1 || s > len(ref.Pitches)), "feel.reference_strings", "the reference has no such string", fmt.Sprint(s), "1 is the highest")
	}
	return faults.Err()
}
