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

// writeFiles writes all files whole, or none at all. Without force none may
// exist yet; every one that does is named. With force too, nothing is written
// over what this run has read.
func (a *app) writeFiles(files []newFile, force bool) error {
	var faults fault.List
	var allowed []newFile
	for _, f := range files {
		err := mayWrite(f.path, force, a.inputs)
		faults.Include(fault.Place{}, err)
		if err == nil {
			allowed = append(allowed, f)
		}
	}
	staged, err := stage(allowed) // even when some are refused, so that every fault is named
	defer staged.clear()
	faults.Include(fault.Place{}, err)
	if err := faults.Err(); err != nil {
		return err
	}
	return staged.place()
}

// replaceFile writes a file whole, or leaves it as it was. A link is followed,
// and stays.
func replaceFile(path string, text []byte) error {
	staged, err := stage([]newFile{{path, text}})
	defer staged.clear()
	if err != nil {
		return err
	}
	return staged.place()
}

// stagedFile is a file written beside its place and not yet moved there.
type stagedFile struct {
	path   string // as the user named it
	target string // where it goes, links followed
	beside string // where it is meanwhile; "" once it is moved
	kept   string // where the file it replaced waits; "" for none
}

type stagedFiles []*stagedFile

// stage writes every file beside its place. The error names every place that
// cannot be written.
func stage(files []newFile) (stagedFiles, error) {
	var faults fault.List
	var out stagedFiles
	for _, f := range files {
		staged, err := writeBeside(f)
		if err != nil {
			faults.Include(fault.Place{}, err)
			continue
		}
		out = append(out, staged)
	}
	return out, faults.Err()
}

// writeBeside writes a file under a passing name in its folder, with the rights
// of the file that it will replace.
func writeBeside(f newFile) (*stagedFile, error) {
	target, info, err := targetOf(f.path)
	if err != nil {
		return nil, err
	}
	mode := fs.FileMode(0o644)
	if info != nil {
		mode = info.Mode().Perm()
	}
	tmp, err := os.CreateTemp(filepath.Dir(target), ".scalepair-*")
	if err != nil {
		return nil, writeFault(f.path, err)
	}
	_, err = tmp.Write(f.text)
	if err = errors.Join(err, tmp.Chmod(mode), tmp.Sync(), tmp.Close()); err != nil {
		_ = os.Remove(tmp.Name())
		return nil, writeFault(f.path, err)
	}
	return &stagedFile{path: f.path, target: target, beside: tmp.Name()}, nil
}

// place moves every file to its place. When one cannot be moved, those already
// moved are taken back, and what they replaced is put there again.
func (s stagedFiles) place() error {
	for i, f := range s {
		if err := f.move(i < len(s)-1); err != nil {
			for _, done := range s[:i] {
				done.takeBack()
			}
			return writeFault(f.path, err)
		}
	}
	for _, f := range s {
		if f.kept != "" {
			_ = os.Remove(f.kept) // what is left then is a second copy, and no harm
		}
	}
	return nil
}

// move puts the file in its place at one stroke. With keep what stands there
// stays under another name; the last file needs no keeping, since nothing can
// fail after it.
func (f *stagedFile) move(keep bool) error {
	if keep {
		kept := f.beside + "-kept"
		switch err := os.Link(f.target, kept); {
		case err == nil:
			f.kept = kept
		case errors.Is(err, fs.ErrNotExist):
		default: // a file system without second names
			if err := os.Rename(f.target, kept); err != nil {
				return err
			}
			f.kept = kept
		}
	}
	if err := os.Rename(f.beside, f.target); err != nil {
		f.restore()
		return err
	}
	f.beside = ""
	return nil
}

// takeBack undoes move.
func (f *stagedFile) takeBack() {
	if f.kept == "" {
		_ = os.Remove(f.target)
	}
	f.restore()
}

// restore puts back what was kept; when it fails the old file stays under its
// other name. Two names of one file are not moved on to one another: then the
// second is taken away.
func (f *stagedFile) restore() {
	if f.kept != "" && os.Rename(f.kept, f.target) == nil {
		_ = os.Remove(f.kept)
	}
}

// clear takes away what was staged and not moved.
func (s stagedFiles) clear() {
	for _, f := range s {
		if f.beside != "" {
			_ = os.Remove(f.beside)
		}
	}
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
