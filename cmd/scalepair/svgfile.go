package main

import (
	"path/filepath"
	"strings"

	"scalepair/data/fault"
)

// svgFile is the path of a picture to write, for a flag.
type svgFile string

// UnmarshalText refuses a file that would not be what its name says.
func (f *svgFile) UnmarshalText(text []byte) error {
	path := string(text)
	if !strings.EqualFold(filepath.Ext(path), ".svg") {
		return fault.Fault{What: "the plot is an SVG drawing", Given: path,
			Remedy: "name the file \"" + strings.TrimSuffix(path, filepath.Ext(path)) + ".svg\"; a browser shows it and prints it"}
	}
	*f = svgFile(path)
	return nil
}
