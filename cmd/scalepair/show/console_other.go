//go:build !windows && !linux && !darwin && !freebsd && !netbsd && !openbsd && !dragonfly

package show

import "os"

// console knows no terminals on this system.
func console(*os.File) (columns int, ok bool) { return 0, false }

func paints(*os.File) bool { return false }

func codePage() int { return 65001 }
