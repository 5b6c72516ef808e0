package whole

import (
	"io/fs"
	"os"
)

// disk is what writing does to the file system, step by step, so that a test
// can let each step fail or be the last.
type disk interface {
	create(path string, mode fs.FileMode) (openFile, error) // fs.ErrExist where there is one
	link(from, to string) error                             // fs.ErrExist where there is one
	rename(from, to string) error                           // what stands at to is replaced
	remove(path string) error
	mkdir(path string) error
	syncFolder(path string) error
}

// openFile is a file being written.
type openFile interface {
	Write(text []byte) (int, error)
	Chown(uid, gid int) error
	Chmod(mode fs.FileMode) error
	Sync() error
	Close() error
}

// osDisk is the real one.
type osDisk struct{}

func (osDisk) create(path string, mode fs.FileMode) (openFile, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
}
func (osDisk) link(from, to string) error   { return os.Link(from, to) }
func (osDisk) rename(from, to string) error { return os.Rename(from, to) }
func (osDisk) remove(path string) error     { return os.Remove(path) }
func (osDisk) mkdir(path string) error      { return os.Mkdir(path, 0o777) }

func (osDisk) syncFolder(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}
