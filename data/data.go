// Package data holds the embedded defaults, each with its provenance in the
// comment lines at its head: named tunings, materials, the strength of music
// wire, and a demo build with invented readings.
package data

import "embed"

//go:embed tunings.csv materials.csv a228.csv demo
var files embed.FS

// Demo returns a file of the demo build: build.toml, or the readings that it
// names. The error is that of [embed.FS.ReadFile] for any other name.
func Demo(name string) ([]byte, error) { return files.ReadFile("demo/" + name) }

// Tunings returns the table of named tunings, with the columns name, also and
// notes (low string first).
func Tunings() []byte { return mustRead("tunings.csv") }

// Materials returns the table of materials.
func Materials() []byte { return mustRead("materials.csv") }

// WireStrength returns the tensile strength of music wire by diameter, with the
// columns diameter_in, min_ksi, max_ksi.
func WireStrength() []byte { return mustRead("a228.csv") }

func mustRead(name string) []byte {
	b, err := files.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return b
}
