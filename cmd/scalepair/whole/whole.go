// Package whole writes files whole or not at all: each is written under a
// passing name in its own folder, brought to the disk, and moved to its place
// at one stroke. Whatever ends the program, a path holds the old file or the
// new one, never a part of either.
//
// Several files are written together: all are staged before the first is
// moved, and when one cannot be moved, those before it are put back. Only what
// ends a program without a word, a kill or a power cut, can come between two
// moves; then some files are old and some new, and each is whole.
//
// A new file gets the rights that the umask leaves. One that is replaced keeps
// its own, and its owner and group where the system allows it; other names of
// it (hard links) keep the old text, and access lists are those of the folder.
// A link is followed, and stays.
package whole

import "scalepair/data/fault"

// File is one file to write.
type File struct {
	Path string
	Text []byte
	// Was is what this run has read there, where it is to change a file that it
	// read; nil else. When anything else stands there by now nothing is written.
	Was []byte
}

// Order is what one run is to write.
type Order struct {
	Files  []File
	Folder string   // made first where it is missing; "" for none
	Force  bool     // files that exist are replaced
	Inputs []string // what this run has read, never to be written over, with Force neither
	// Stopped is asked before each step up to the first move; an error ends the
	// order with nothing written. Nil never stops.
	Stopped func() error
}

// Write writes all files of the order, or none. Every path that cannot be
// written is named: the error is then a fault.List.
func (o Order) Write() error { return o.write(osDisk{}) }

func (o Order) write(d disk) error {
	w := &writing{disk: d, stopped: o.Stopped}
	if w.stopped == nil {
		w.stopped = func() error { return nil }
	}
	err := w.order(o)
	if err == nil {
		w.settle()
		return nil
	}
	if lost := w.undo(); lost != nil {
		var faults fault.List
		faults.Include(fault.Place{}, err)
		faults.Include(fault.Place{}, lost)
		return faults.Err()
	}
	return err
}

// order stages and moves. Some paths may be refused: the others are staged all
// the same, so that every fault is named.
func (w *writing) order(o Order) error {
	var faults fault.List
	allowed := o.allowed(&faults)
	if err := w.makeFolder(o.Folder); err != nil {
		return err
	}
	for _, t := range allowed {
		if err := w.stopped(); err != nil {
			return err
		}
		faults.Include(fault.Place{Input: t.Path}, w.stage(t))
	}
	if err := faults.Err(); err != nil {
		return err
	}
	return w.place()
}

// allowed looks at every place, and gives those that may be written to.
func (o Order) allowed(faults *fault.List) []target {
	var out []target
	for _, f := range o.Files {
		t, err := o.look(f)
		if err == nil {
			err = t.twice(out)
		}
		if err == nil {
			out = append(out, t)
		}
		faults.Include(fault.Place{Input: f.Path}, err)
	}
	return out
}
