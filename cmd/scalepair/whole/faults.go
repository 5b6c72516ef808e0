package whole

import (
	"errors"
	"io/fs"
	"os"
	"syscall"

	"scalepair/data/fault"
)

func refuse(path, what, remedy string) error {
	return fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: remedy}
}

// writeFault says why a file cannot be written to its folder.
func writeFault(path string, err error) error {
	what, remedy := "the file cannot be written", "name a path in a folder of yours"
	switch {
	case errors.Is(err, fs.ErrPermission):
		what = "the folder does not allow writing"
	case errors.Is(err, fs.ErrNotExist):
		what = "there is no such folder"
	case NoRoom(err):
		what, remedy = what+": "+Reason(err), "make room there, or name a path on another disk"
	default:
		what += ": " + Reason(err)
	}
	return refuse(path, what, remedy)
}

// moveFault says why a file that was written beside its place cannot be moved
// there: the folder is not the reason.
func moveFault(path string, err error) error {
	if errors.Is(err, fs.ErrExist) {
		return refuse(path, "a file of that name has come meanwhile", "look at it, and name another, or say --force to replace it")
	}
	return refuse(path, "the file cannot be put in its place: "+Reason(err), "close the program that holds it open, or name another file")
}

// windowsDiskFull is what Windows says of a disk without room.
const windowsDiskFull = syscall.Errno(112)

// NoRoom says whether writing failed for want of room: a full disk, a quota, or
// a limit on the size of files.
func NoRoom(err error) bool {
	for _, full := range []error{syscall.ENOSPC, syscall.EDQUOT, syscall.EFBIG} {
		if errors.Is(err, full) {
			return true
		}
	}
	return os.PathSeparator == '\\' && errors.Is(err, windowsDiskFull)
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
