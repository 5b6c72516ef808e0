package main

import (
	"path/filepath"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/unit"
)

// boundedLength reads a length within bounds, for a flag.
type boundedLength struct {
	to          *unit.Length
	least, most unit.Length
}

// UnmarshalText reads a length with its unit.
func (b boundedLength) UnmarshalText(text []byte) error {
	l, err := unit.ParseLength(string(text))
	if err != nil {
		return err
	}
	if !(l >= b.least && l <= b.most) {
		return fault.Fault{What: "this is out of range", Given: string(text), Remedy: "it goes from " + b.least.String() + " to " + b.most.String()}
	}
	*b.to = l
	return nil
}

// namedFile reads the path of a file to write, which must end as its kind does.
type namedFile struct {
	to     *string
	ending string // ".svg"
}

// UnmarshalText refuses a file that would not be what its name says.
func (f namedFile) UnmarshalText(text []byte) error {
	path := string(text)
	if !strings.EqualFold(filepath.Ext(path), f.ending) {
		return fault.Fault{What: "the file's name does not end in " + f.ending, Given: path,
			Remedy: `name it "` + strings.TrimSuffix(path, filepath.Ext(path)) + f.ending + `"; a browser shows it and prints it`}
	}
	*f.to = path
	return nil
}

// plot writes a picture that was asked for.
func (a *app) plot(path, svg string, force bool) error {
	if err := a.writeFiles([]newFile{{Path: path, Text: []byte(svg)}}, force); err != nil {
		return err
	}
	a.hint("%s: wrote the picture", path)
	return nil
}
