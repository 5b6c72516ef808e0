package main

import (
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
