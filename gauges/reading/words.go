package reading

import (
	"fmt"
	"slices"
	"strings"

	"scalepair/data/fault"
	"scalepair/data/suggest"
)

// Word finds a word among those that a key or a column may have; what names the
// key in the fault.
func Word[T ~int](what string, text []byte, words []string) (T, error) {
	if i := slices.Index(words, Key(string(text))); i >= 0 {
		return T(i), nil
	}
	remedy := "write " + strings.Join(words, ", ")
	if best := suggest.Nearest(string(text), words); best != "" {
		remedy = fmt.Sprintf("did you mean %q? %s", best, remedy)
	}
	return 0, fault.Fault{What: what + " does not know this word", Given: string(text), Remedy: remedy}
}

// Kind is the kind of a row.
type Kind int

// The kinds of rows. Listed is a gauge that is in stock without a reading: its
// linear density is estimated from the fit of its family.
const (
	Weighed Kind = iota
	Hung
	Listed
)

var kindWords = []string{"weighed", "hung", "listed"}

// String gives the word that the file uses.
func (k Kind) String() string { return kindWords[k] }

// MarshalText gives the word of String.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// DiameterFrom says how a diameter is known.
type DiameterFrom int

// A diameter is a nominal size off the packet, or measured with the builder's
// calipers.
const (
	Nominal DiameterFrom = iota
	Measured
)

var diameterWords = []string{"nominal", "measured"}

// String gives "nominal" or "measured".
func (d DiameterFrom) String() string { return diameterWords[d] }

// MarshalText gives the word of String.
func (d DiameterFrom) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads one of those words.
func (d *DiameterFrom) UnmarshalText(text []byte) (err error) {
	*d, err = Word[DiameterFrom]("diameters", text, diameterWords)
	return err
}

var shapeWords = []string{"unknown", "round", "hex"}

// String gives "core shape assumed", "round" or "hex".
func (s Shape) String() string {
	if s == ShapeAssumed {
		return "core shape assumed"
	}
	return shapeWords[s]
}

// MarshalText gives "unknown", "round" or "hex".
func (s Shape) MarshalText() ([]byte, error) { return []byte(shapeWords[s]), nil }

// UnmarshalText reads one of those words.
func (s *Shape) UnmarshalText(text []byte) (err error) {
	*s, err = Word[Shape]("core shape", text, shapeWords)
	return err
}
