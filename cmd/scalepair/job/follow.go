package job

import (
	"fmt"

	"scalepair/cmd/scalepair/build"
)

// follow gives what the file leaves open the value that follows from what the
// command line has changed, as build.Read gives it the one that follows from the
// file: a flag then means what its key in the file means.
func follow(b *build.Build) {
	if r := b.Reference; r != nil {
		if !b.Given("reference.pitch_standard_hz") {
			r.PitchStandardHz = b.Strings.PitchStandardHz
		}
		if !b.Given("reference.neutral_fret") {
			r.Neutral = b.Neck.Neutral.Within(r.Frets)
		}
	}
	for i := range b.Columns {
		if !b.Given(fmt.Sprintf("compare[%d].pitch_standard_hz", i)) {
			b.Columns[i].PitchStandardHz = b.Strings.PitchStandardHz
		}
	}
	if !b.Given("feel.tension") && b.Reference == nil {
		b.Feel.Tension.Source = build.NoTarget
		if b.Strings.Gauges != nil || b.Chosen != nil && b.Chosen.Gauges != nil {
			b.Feel.Tension.Source = build.Even
		}
	}
}
