package report

import "scalepair/tension/choice"

// formatVersion counts the changes of the JSON's keys that break a reader.
const formatVersion = 2

// Head stands at the top of every result's JSON.
type Head struct {
	FormatVersion int      `json:"format_version"`
	Build         string   `json:"build"`
	Warnings      []string `json:"warnings"`
}

// head gives what every result begins with. Warnings are those of the build,
// and of the pair and set in force where there is one.
func (in *Input) head(d ...*choice.Detail) Head {
	return Head{FormatVersion: formatVersion, Build: in.Run.Build.Name, Warnings: in.watched(d...)}
}

// Warned gives the warnings, which are also printed beside the result.
func (h Head) Warned() []string { return h.Warnings }
