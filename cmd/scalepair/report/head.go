package report

import (
	"fmt"
	"slices"

	"scalepair/gauges"
	"scalepair/tension/choice"
)

// formatVersion counts the changes of the JSON's keys that break a reader.
const formatVersion = 2

// Head stands at the top of every result's JSON.
type Head struct {
	FormatVersion int      `json:"format_version"`
	Build         string   `json:"build"`
	Warnings      []string `json:"warnings"`
	// Suspects are the gauges that may be chosen, or are the reference's, and have a
	// suspect reading: a right one may move every choice, whatever is chosen now.
	Suspects []string `json:"suspect_gauges"`
}

// head gives what every result begins with. Warnings are those of the build,
// and of the pair and set in force where there is one.
func (in *Input) head(d ...*choice.Detail) Head {
	return Head{FormatVersion: formatVersion, Build: in.Run.Build.Name, Warnings: in.watched(d...), Suspects: in.suspects()}
}

// Warned gives the warnings, which are also printed beside the result.
func (h Head) Warned() []string { return h.Warnings }

func (in *Input) suspects() []string {
	if in.Plan == nil {
		return []string{}
	}
	req := in.Plan.Request()
	set := req.Usable
	if req.Given != nil {
		set = req.Given
	}
	if req.Reference != nil {
		set = slices.Concat(set, req.Reference.Gauges)
	}
	return append([]string{}, in.labelled(set, func(g gauges.Gauge) bool { return g.Suspect || g.Disagrees })...)
}

// weighAgain asks for fresh readings of suspects; "" where there are none.
func (h Head) weighAgain() string {
	if len(h.Suspects) == 0 {
		return ""
	}
	return fmt.Sprintf("Weigh %s again first: suspect, and may move the choice.", listed(h.Suspects))
}
