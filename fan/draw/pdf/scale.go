package pdf

import (
	"bytes"
	"fmt"
)

// The library has no call for what print dialogues are asked, and insists on
// dates. Both are put right in its finished file, in as many bytes, so that its
// table of objects holds. Their places stand behind everything that a user
// wrote. A change of the library that moved them makes Write fail, and never a
// file that scales.
const (
	language = "language-and-printing-come-here-in-as-many-bytes--and-on-one-side" // as the library is asked for it
	dates    = "/CreationDate (D:20000101000000)\n/ModDate (D:20000101000000)"
)

// trueScale asks print dialogues not to scale and to print one side (ISO 32000-1,
// 12.2, PrintScaling and Duplex), and takes the dates out.
func trueScale(file []byte) error {
	for _, change := range [][2]string{
		{"/Lang (" + language + ")", "/Lang (en) /ViewerPreferences << /PrintScaling /None /Duplex /Simplex >>"}, {dates, ""},
	} {
		at := bytes.LastIndex(file, []byte(change[0]))
		if at < 0 {
			return fmt.Errorf("pdf: no %.10q found to amend", change[0])
		}
		copy(file[at:], fmt.Sprintf("%-*s", len(change[0]), change[1]))
	}
	return nil
}
