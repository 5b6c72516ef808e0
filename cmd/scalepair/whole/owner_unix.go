//go:build unix

package whole

import (
	"io/fs"
	"syscall"
)

// ownerOf gives a file's owner and group.
func ownerOf(info fs.FileInfo) (uid, gid int, ok bool) {
	s, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return 0, 0, false
	}
	return int(s.Uid), int(s.Gid), true
}
