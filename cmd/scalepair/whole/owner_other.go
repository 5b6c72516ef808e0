//go:build !unix

package whole

import "io/fs"

// ownerOf knows no owners here: a new file's are those of its folder.
func ownerOf(fs.FileInfo) (uid, gid int, ok bool) { return 0, 0, false }
