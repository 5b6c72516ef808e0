package job

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"syscall"

	"scalepair/data/fault"
)

// mostInput is more than any reader of a file here takes: a larger one is cut
// off, and its reader says that it is too large.
const mostInput = 5 << 20

// readInput reads a file of the builder's. A pipe will do, as a shell makes of
// <(...); one that nobody writes to is refused, not waited for. The error is a
// fault with the file as its place; remedy is for a file that is not there.
func readInput(path, remedy string) ([]byte, error) {
	refuse := func(what, remedy string) ([]byte, error) {
		return nil, fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: remedy}
	}
	f, err := openInput(path)
	if err != nil {
		return nil, readFault(path, err, remedy)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, readFault(path, err, remedy)
	}
	if info.IsDir() {
		return refuse("this is a folder, not a file", "name the file in it")
	}
	src, err := io.ReadAll(io.LimitReader(f, mostInput))
	switch {
	case err != nil:
		return nil, readFault(path, err, remedy)
	case len(src) == 0 && info.Mode()&fs.ModeNamedPipe != 0:
		return refuse("nothing comes through this pipe", "name a file, or start what writes to the pipe first")
	}
	return src, nil
}

// readFault puts a failed reading of a file in words.
func readFault(path string, err error, remedy string) error {
	what := "the file cannot be read"
	var pe *fs.PathError
	switch {
	case errors.Is(err, syscall.ELOOP):
		what, remedy = "this link leads round in a circle", "remove the link, or name the file itself"
	case errors.Is(err, fs.ErrNotExist) && isLink(path):
		what, remedy = "this link leads to no file", "put the file back, or name the file itself"
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		what = "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		what, remedy = "the file may not be read", "give yourself the right to read it, or copy it"
	case errors.As(err, &pe):
		what += ": " + pe.Err.Error()
	}
	return fault.Fault{Place: fault.Place{Input: path}, What: what, Remedy: remedy}
}

func isLink(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.Mode()&fs.ModeSymlink != 0
}
