// Command pack writes release archives: each folder of a staging folder
// becomes OUT/FOLDER.tar.gz, or OUT/FOLDER.zip where its name says windows, and
// OUT/SHA256SUMS lists them all.
//
//	go run ./.ci/pack STAGING OUT
//
// The same folders give the same bytes: entries are sorted, times fixed, owners
// left out, and a file may be run or not, nothing else. The compressor is Go's,
// so the bytes hold for one Go release.
package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: pack STAGING OUT")
		os.Exit(2)
	}
	if err := pack(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}

// pack writes one archive for every folder in staging, and the sums.
func pack(staging, out string) error {
	folders, err := os.ReadDir(staging)
	if err != nil {
		return err
	}
	var sums strings.Builder
	for _, folder := range folders { // sorted by name
		if !folder.IsDir() {
			return fmt.Errorf("%s is not a folder", folder.Name())
		}
		entries, err := collect(staging, folder.Name())
		if err != nil {
			return err
		}
		name, write := folder.Name()+".tar.gz", writeTarGz
		if strings.Contains(folder.Name(), "windows") {
			name, write = folder.Name()+".zip", writeZip
		}
		sum, err := writeFile(filepath.Join(out, name), entries, write)
		if err != nil {
			return err
		}
		fmt.Fprintf(&sums, "%x  %s\n", sum, name)
	}
	if sums.Len() == 0 {
		return fmt.Errorf("%s holds no folder", staging)
	}
	return os.WriteFile(filepath.Join(out, "SHA256SUMS"), []byte(sums.String()), 0o644)
}
