// Package atomicfile writes a file whole: it is written under a passing name in
// its own folder, brought to the disk, and moved to its place at one stroke.
// Whatever ends the program, the path holds the old file or the new one, never a
// part of either.
package atomicfile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"scalepair/data/fault"
)

// passing begins the name of a file that is not yet in its place. A dot hides
// it where that is the custom; the words are for whoever finds one after a
// power cut.
const passing = ".scalepair-unfinished-"

// Check returns why a path may not be written to: it is no plain file, it is
// protected, or it exists and force does not allow it to be replaced.
func Check(path string, force bool) error {
	refuse := func(what, remedy string) error {
		return fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: remedy}
	}
	info, err := os.Stat(path)
	switch {
	case path == "-":
		return refuse("nothing is written to the screen here", "name a file in a folder of yours")
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return failure(path, err)
	case !info.Mode().IsRegular():
		return refuse("a folder or device of that name exists", "name another file")
	case !force:
		return refuse("the file exists already", "name another, or say --force to replace it")
	case info.Mode().Perm()&0o200 == 0:
		return refuse("the file is protected against writing", "allow it, or name another file")
	}
	return nil
}

// Write writes text to a path that Check allows. A file that is replaced keeps
// its rights; a link is followed, and stays.
func Write(path string, text []byte, force bool) error {
	if err := Check(path, force); err != nil {
		return err
	}
	place, mode := path, fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
		if place, err = filepath.EvalSymlinks(path); err != nil {
			return failure(path, err)
		}
	}
	f, err := os.CreateTemp(filepath.Dir(place), passing+"*")
	if err != nil {
		return failure(path, err)
	}
	_, err = f.Write(text)
	if err = errors.Join(err, f.Chmod(mode), f.Sync(), f.Close()); err == nil {
		err = os.Rename(f.Name(), place)
	}
	if err != nil {
		_ = os.Remove(f.Name())
		return failure(path, err)
	}
	return nil
}

func failure(path string, err error) error {
	return fault.Fault{Place: fault.Place{Input: path}, What: "the file cannot be written: " + Reason(err), Remedy: "name a path in a folder of yours"}
}

// Reason is what the system says of a failure, without the path and the call
// that package os puts before it.
func Reason(err error) string {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err.Error()
	case errors.As(err, &link):
		return link.Err.Error()
	}
	return err.Error()
}
