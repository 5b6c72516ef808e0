package whole

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"scalepair/data/fault"
)

// place moves every staged file to its place. From the first move on nothing
// stops it. The last file needs no second copy of what it replaces: nothing
// can fail after it.
func (w *writing) place() error {
	for i, f := range w.staged {
		if err := w.stopped(); err != nil {
			return err
		}
		if f.info != nil && i < len(w.staged)-1 {
			if err := w.keep(f); err != nil {
				return err
			}
		}
	}
	for _, f := range w.staged {
		if err := f.unchanged(); err != nil {
			return err
		}
	}
	if err := w.stopped(); err != nil {
		return err
	}
	for _, f := range w.staged {
		if err := w.move(f); err != nil {
			return moveFault(f.Path, err)
		}
	}
	return nil
}

// move puts a file in its place at one stroke. Where nothing stood there, a
// file that came meanwhile is not replaced.
func (w *writing) move(f *stagedFile) error {
	if f.info == nil {
		switch err := w.disk.link(f.beside, f.real); {
		case err == nil:
			f.moved = true
			w.drop(&f.beside)
			return nil
		case errors.Is(err, fs.ErrExist):
			return err
		}
		if _, err := os.Lstat(f.real); err == nil { // a file system without second names
			return fs.ErrExist
		}
	}
	if err := w.disk.rename(f.beside, f.real); err != nil {
		return err
	}
	f.moved, f.beside = true, ""
	return nil
}

// drop removes a file of ours. When that fails its name stays, for another try.
func (w *writing) drop(path *string) {
	if *path != "" && w.disk.remove(*path) == nil {
		*path = ""
	}
}

// undo takes away all that this run has made, and puts back what it moved. The
// error tells of old files that could not be put back, and where they are.
func (w *writing) undo() error {
	var faults fault.List
	for _, f := range slices.Backward(w.staged) {
		faults.Include(fault.Place{}, w.takeBack(f))
		w.drop(&f.beside)
		w.drop(&f.kept)
	}
	for _, path := range slices.Backward(w.folders) {
		_ = w.disk.remove(path) // fails where somebody has put something there
	}
	return faults.Err()
}

// takeBack undoes move.
func (w *writing) takeBack(f *stagedFile) error {
	switch {
	case !f.moved:
		return nil
	case f.info == nil:
		if err := w.disk.remove(f.real); err != nil {
			return refuse(f.Path, "the new file stands here, and cannot be taken away: "+Reason(err), "remove it")
		}
		return nil
	}
	kept := f.kept
	f.kept = ""
	if err := w.disk.rename(kept, f.real); err != nil {
		return refuse(f.Path, "the new file stands here, and the old one cannot be put back: "+Reason(err), "it is kept as "+kept)
	}
	return nil
}

// settle brings the moves to the disk, takes the second copies away, and
// clears what earlier runs have left. Nothing in it can spoil what was written:
// where a folder cannot be brought to the disk, a power cut leaves the old file.
func (w *writing) settle() {
	var folders []string
	for _, f := range w.staged {
		folders = append(folders, folderOf(f.real))
	}
	for _, f := range w.folders {
		folders = append(folders, filepath.Dir(f))
	}
	slices.Sort(folders)
	for _, folder := range slices.Compact(folders) {
		_ = w.disk.syncFolder(folder)
	}
	for _, f := range w.staged {
		w.drop(&f.beside)
		w.drop(&f.kept)
		w.sweep(f.real)
	}
}

// leftAfter is how old an unfinished file must be before it counts as left
// behind, and not as that of a run going on beside (judgement).
const leftAfter = time.Hour

// sweep removes the unfinished files of runs that were cut off from the folder
// of a path. An old file under its former name stays: it may be the only copy.
func (w *writing) sweep(path string) {
	entries, _ := os.ReadDir(folderOf(path))
	dir, _ := filepath.Split(path)
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), unfinished) || !e.Type().IsRegular() {
			continue
		}
		if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > leftAfter {
			_ = w.disk.remove(dir + e.Name())
		}
	}
}
