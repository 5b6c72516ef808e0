package whole

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scalepair/data/fault"
)

// target is where a file goes.
type target struct {
	File
	real string      // the path with links followed
	info fs.FileInfo // what stands there; nil for nothing
}

// look finds out where a file goes. It refuses a path that must not be written
// to: one that is no plain file, one that this run has read, one whose own
// rights forbid it, and without force any that exists.
func (o Order) look(f File) (target, error) {
	if f.Path == "-" {
		return target{}, refuse(f.Path, "this is no file, and nothing is written to the screen here", "name a file in a folder of yours")
	}
	t, err := targetOf(f)
	switch {
	case err != nil:
		return t, err
	case f.Was == nil && t.isOneOf(o.Inputs):
		return t, refuse(f.Path, "this run reads that file, and does not write over it, with --force neither", "name another file")
	case t.info == nil:
		return t, nil
	case f.Was == nil && !o.Force:
		return t, refuse(f.Path, "the file exists already", "move it away, name another, or say --force to replace it")
	}
	return t, t.writable()
}

// targetOf follows links to the file that a path leads to. What is no plain
// file is refused.
func targetOf(f File) (target, error) {
	t := target{File: f, real: f.Path}
	link, err := os.Lstat(f.Path)
	if err != nil {
		return t, nil // whether it can be made shows when it is
	}
	if link.Mode()&fs.ModeSymlink != 0 {
		if t.real, err = filepath.EvalSymlinks(f.Path); err != nil {
			return t, refuse(f.Path, "a link of that name leads nowhere", "remove it, or name another file")
		}
	}
	t.info, err = os.Stat(t.real)
	switch {
	case err != nil:
		return t, writeFault(f.Path, err)
	case t.info.IsDir():
		return t, refuse(f.Path, "there is a folder of that name", "name a file in it, or another")
	case !t.info.Mode().IsRegular():
		return t, refuse(f.Path, "that is no plain file but a device or the like", "name a file in a folder of yours")
	}
	return t, nil
}

// writable says why a file that exists may not be written to. Moving another
// into its place would not ask its rights, but whoever took them away meant it.
func (t target) writable() error {
	f, err := os.OpenFile(t.real, os.O_WRONLY, 0)
	switch {
	case errors.Is(err, fs.ErrPermission):
		return refuse(t.Path, "the file is protected against writing", "allow it, or name another file")
	case err != nil:
		return writeFault(t.Path, err)
	}
	return f.Close()
}

// isOneOf says whether a file is one of several, whatever their names. One
// that does not exist yet goes by folder and name.
func (t target) isOneOf(paths []string) bool {
	for _, p := range paths {
		info, err := os.Stat(p)
		if t.info == nil && err != nil && samePlace(t.real, p, strings.EqualFold) {
			return true
		}
		if t.info != nil && err == nil && os.SameFile(t.info, info) {
			return true
		}
	}
	return false
}

// twice refuses a target that is one of those before it.
func (t target) twice(others []target) error {
	for _, other := range others {
		if samePlace(t.real, other.real, func(a, b string) bool { return a == b }) {
			return fault.Fault{Place: fault.Place{Input: t.Path}, What: "this is the same file as another", Given: other.Path, Remedy: "name every file once"}
		}
	}
	return nil
}

// samePlace says whether two paths are one name in one folder.
func samePlace(a, b string, sameName func(a, b string) bool) bool {
	if !sameName(filepath.Base(a), filepath.Base(b)) {
		return false
	}
	in, err := os.Stat(folderOf(a))
	other, otherErr := os.Stat(folderOf(b))
	return err == nil && otherErr == nil && os.SameFile(in, other)
}
