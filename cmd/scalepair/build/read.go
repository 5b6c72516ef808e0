package build

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"scalepair/data/fault"
)

var byteOrderMark = []byte("\xEF\xBB\xBF")

// mostBytes bounds a build file, which has some ten thousand bytes (judgement).
// A larger one is another file, and is not read.
const mostBytes = 1 << 20

// mostFaults is from where the rest of a file is not looked at, since nobody
// reads more.
const mostFaults = 100

// Read reads a build file and puts the flags over it;
// without flags they are nil. file is its name for
// messages. The error is a fault.List; the Build is then nil.
func Read(src []byte, file string, flags *Flags) (*Build, error) {
	b, faults := read(src, file, flags)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return b, nil
}

// read reads as Read does; what could be read comes with the faults.
func read(src []byte, file string, flags *Flags) (b *Build, faults fault.List) {
	b = Defaults()
	b.File = file
	text := bytes.TrimPrefix(src, byteOrderMark)
	faults.Include(fault.Place{}, isText(text, file))
	if len(faults) == 0 {
		var err error
		b.places, err = findPlaces(file, text)
		faults.Include(fault.Place{}, err)
	}
	if len(faults) == 0 {
		b.places.decode(b, &faults)
	}
	if len(faults) == 0 && flags != nil {
		faults.Include(fault.Place{Input: file}, flags.over(b))
	}
	if len(faults) == 0 {
		b.settle(&faults)
	}
	return b, faults
}

// isText refuses what is no build file at all.
func isText(text []byte, file string) error {
	refuse := func(what, remedy string) error {
		return fault.List{{Place: fault.Place{Input: file}, What: what, Remedy: remedy}}
	}
	switch {
	case len(text) > mostBytes:
		return refuse(fmt.Sprintf("the file is larger than %d MB, which no build file is", mostBytes>>20), "name the right file")
	case len(bytes.TrimSpace(text)) == 0:
		return refuse("the build file is empty", "'scalepair init' writes one to begin with")
	case !utf8.Valid(text) || bytes.IndexByte(text, 0) >= 0:
		return refuse("the file is not text in UTF-8", "name the build file, or save it as UTF-8; 'scalepair init' writes one to begin with")
	case !bytes.ContainsRune(text, '\n') && bytes.ContainsRune(text, '\r'):
		return refuse("the lines end with carriage returns alone", "save the file with the line ends of Unix or Windows")
	}
	return nil
}
