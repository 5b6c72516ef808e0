package report

import (
	"scalepair/cmd/scalepair/table"
)

// formatVersion counts the changes of the JSON's keys that break a reader.
const formatVersion = 2

// Head stands at the top of every result's JSON.
type Head struct {
	FormatVersion int      `json:"format_version"`
	Build         string   `json:"build"`
	Warnings      []string `json:"warnings"`
}

// head gives what every result begins with.
func (in *Input) head() Head {
	return Head{FormatVersion: formatVersion, Build: in.Job.Build.Name, Warnings: []string{}}
}

// units are the units to print in.
func (in *Input) units() table.Units {
	return table.Units{Length: in.Units.Length, Force: in.Units.Force}
}
