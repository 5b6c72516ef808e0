package whole

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"

	"scalepair/data/fault"
)

// Passing names. A dot hides them where that is the custom; the words are for
// whoever finds one after a power cut.
const (
	unfinished = ".scalepair-unfinished-" // a new file, not yet in its place
	former     = ".scalepair-former-"     // the old file, while others of its set are moved
)

// writing is an order being carried out.
type writing struct {
	disk    disk
	stopped func() error
	staged  []*stagedFile
	folders []string // made by this run, outermost first
}

// stagedFile is a file written beside its place.
type stagedFile struct {
	target
	beside string // its passing name; "" once that is gone
	kept   string // where a second copy of the file it replaces stands; "" for none
	moved  bool   // it stands in its place
}

// stage writes a file under a passing name in its folder.
func (w *writing) stage(t target) error {
	beside, err := w.writeBeside(t, unfinished, t.Text)
	if err != nil {
		return writeFault(t.Path, err)
	}
	w.staged = append(w.staged, &stagedFile{target: t, beside: beside})
	return nil
}

// writeBeside writes text under a new name in the target's folder, with the
// rights of the file that stands there, and brings it to the disk.
func (w *writing) writeBeside(t target, kind string, text []byte) (string, error) {
	mode := fs.FileMode(0o666) // less what the umask takes
	if t.info != nil {
		mode = 0o600 // until owner and group are those of the old file
	}
	f, path, err := w.createBeside(t.real, kind, mode)
	if err != nil {
		return "", err
	}
	_, err = f.Write(text)
	if err = errors.Join(err, keepRights(f, t.info), f.Sync(), f.Close()); err != nil {
		_ = w.disk.remove(path)
		return "", err
	}
	return path, nil
}

// passing gives a new name in the folder of a path.
func passing(path, kind string) string {
	dir, _ := filepath.Split(path)
	return fmt.Sprintf("%s%s%08x", dir, kind, rand.Uint32())
}

// folderOf is the folder of a path, as the system understands it: filepath.Dir
// would strike out "link/..", which leads elsewhere.
func folderOf(path string) string {
	dir, _ := filepath.Split(path)
	return cmp.Or(dir, ".")
}

// createBeside makes an empty file of a new name in a path's folder.
func (w *writing) createBeside(path, kind string, mode fs.FileMode) (openFile, string, error) {
	for {
		name := passing(path, kind)
		f, err := w.disk.create(name, mode)
		if !errors.Is(err, fs.ErrExist) {
			return f, name, err
		}
	}
}

// keepRights gives a file the owner, the group and the rights of another; nil
// for none. Where the group cannot be kept, ours gets no more than others have.
func keepRights(f openFile, info fs.FileInfo) error {
	if info == nil {
		return nil
	}
	mode := info.Mode().Perm()
	if uid, gid, ok := ownerOf(info); ok && f.Chown(uid, gid) != nil && f.Chown(-1, gid) != nil {
		mode &^= ^(mode << 3) & 0o070
	}
	return f.Chmod(mode)
}

// makeFolder makes a folder and those above it, where they are missing.
func (w *writing) makeFolder(path string) error {
	if path == "" {
		return nil
	}
	var missing []string
	for at := filepath.Clean(path); !slices.Contains(missing, at); at = filepath.Dir(at) {
		if _, err := os.Stat(at); !errors.Is(err, fs.ErrNotExist) {
			break
		}
		missing = append(missing, at)
	}
	for _, at := range slices.Backward(missing) {
		switch err := w.disk.mkdir(at); {
		case err == nil:
			w.folders = append(w.folders, at)
		case !errors.Is(err, fs.ErrExist):
			return writeFault(path, err)
		}
	}
	return nil
}

// keep makes a second copy of the file that is to be replaced: another name of
// it, or on a file system without second names a copy.
func (w *writing) keep(f *stagedFile) error {
	for f.kept == "" {
		name := passing(f.real, former)
		switch err := w.disk.link(f.real, name); {
		case err == nil:
			f.kept = name
		case !errors.Is(err, fs.ErrExist):
			text, err := os.ReadFile(f.real)
			if err == nil {
				f.kept, err = w.writeBeside(f.target, former, text)
			}
			if err != nil {
				return writeFault(f.Path, err)
			}
		}
	}
	return nil
}

// unchanged refuses to replace what is no longer what this run has read.
func (f *stagedFile) unchanged() error {
	if f.Was == nil {
		return nil
	}
	if now, err := os.ReadFile(f.real); err != nil || !bytes.Equal(now, f.Was) {
		return fault.Fault{Place: fault.Place{Input: f.Path}, What: "the file has changed since this run read it", Remedy: "run the command again"}
	}
	return nil
}
