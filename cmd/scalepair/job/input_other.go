//go:build !unix

package job

import "os"

func openInput(path string) (*os.File, error) { return os.Open(path) }
