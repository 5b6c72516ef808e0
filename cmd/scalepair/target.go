package main

import (
	"io/fs"
	"os"
	"path/filepath"

	"scalepair/data/fault"
)

// mayWrite refuses a path that must not be written to: one that is no plain
// file, one of the inputs of this run, and without force any that exists.
func mayWrite(path string, force bool, inputs []string) error {
	refuse := func(what, remedy string) error {
		return fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: remedy}
	}
	if path == "-" {
		return refuse("this is no file, and nothing is written to the screen here", "name a file in a folder of yours")
	}
	_, info, err := targetOf(path)
	switch {
	case err != nil:
		return err
	case info == nil:
		return nil
	case isOneOf(info, inputs):
		return refuse("this run reads that file, and does not write over it, with --force neither", "name another file")
	case !force:
		return refuse("the file exists already", "move it away, name another, or say --force to replace it")
	}
	return nil
}

// targetOf follows links to the file that a path leads to, and looks at it;
// nil where there is none yet. What is no plain file is refused.
func targetOf(path string) (string, fs.FileInfo, error) {
	refuse := func(what, remedy string) (string, fs.FileInfo, error) {
		return "", nil, fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: remedy}
	}
	link, err := os.Lstat(path)
	if err != nil {
		return path, nil, nil // whether it can be made shows when it is
	}
	target := path
	if link.Mode()&fs.ModeSymlink != 0 {
		if target, err = filepath.EvalSymlinks(path); err != nil {
			return refuse("a link of that name leads nowhere", "remove it, or name another file")
		}
	}
	info, err := os.Stat(target)
	switch {
	case err != nil:
		return "", nil, writeFault(path, err)
	case info.IsDir():
		return refuse("there is a folder of that name", "name a file in it, or another")
	case !info.Mode().IsRegular():
		return refuse("that is no plain file but a device or the like", "name a file in a folder of yours")
	}
	return target, info, nil
}

// isOneOf says whether a file is one of several, whatever their names.
func isOneOf(info fs.FileInfo, paths []string) bool {
	for _, p := range paths {
		if other, err := os.Stat(p); err == nil && os.SameFile(info, other) {
			return true
		}
	}
	return false
}
