package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"scalepair/data/fault"
)

// newFile is a file that a command is to write.
type newFile struct {
	path string
	text []byte
}

// writeFiles writes files whole or not at all. Without force none may exist
// yet; every one that does is named. With force too, nothing is written over
// what this run has read.
func (a *app) writeFiles(files []newFile, force bool) error {
	var faults fault.List
	for _, f := range files {
		faults.Include(fault.Place{}, mayWrite(f.path, force, a.inputs))
	}
	if err := faults.Err(); err != nil {
		return err
	}
	for _, f := range files {
		if err := replaceFile(f.path, f.text); err != nil {
			return err
		}
	}
	return nil
}

// replaceFile writes text to a file beside path and then moves it there, so
// that a failed run leaves path as it was. A link is followed, and stays.
func replaceFile(path string, text []byte) error {
	target, info, err := targetOf(path)
	if err != nil {
		return err
	}
	mode := fs.FileMode(0o644)
	if info != nil {
		mode = info.Mode().Perm()
	}
	tmp, err := os.CreateTemp(filepath.Dir(target), ".scalepair-*")
	if err != nil {
		return writeFault(path, err)
	}
	defer os.Remove(tmp.Name())
	_, err = tmp.Write(text)
	err = errors.Join(err, tmp.Chmod(mode), tmp.Close())
	if err == nil {
		err = os.Rename(tmp.Name(), target)
	}
	if err != nil {
		return writeFault(path, err)
	}
	return nil
}

func writeFault(path string, err error) error {
	what := "the file cannot be written"
	var pe *fs.PathError
	switch {
	case errors.Is(err, fs.ErrPermission):
		what = "the folder does not allow writing"
	case errors.Is(err, fs.ErrNotExist):
		what = "there is no such folder"
	case errors.As(err, &pe):
		what += ": " + pe.Err.Error()
	}
	return fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: "name a path in a folder of yours"}
}

// makeFolder makes a folder unless it is there.
func makeFolder(path string) error {
	if err := os.MkdirAll(path, 0o755); err != nil {
		return writeFault(path, err)
	}
	return nil
}
