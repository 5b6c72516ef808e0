package main

import (
	"archive/tar"
	"archive/zip"
	"compress/flate"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// stamp is the time of every entry: the earliest that a zip file can hold.
var stamp = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// entry is one file of an archive.
type entry struct {
	name string // with slashes, the archive's folder first
	mode fs.FileMode
	data []byte
}

// collect reads the files of a folder in the order of their names.
func collect(root, folder string) ([]entry, error) {
	var out []entry
	files := os.DirFS(root)
	err := fs.WalkDir(files, folder, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		if !d.Type().IsRegular() {
			return fmt.Errorf("%s is no plain file", filepath.Join(root, name))
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		data, err := fs.ReadFile(files, name)
		mode := fs.FileMode(0o644)
		if info.Mode()&0o100 != 0 {
			mode = 0o755
		}
		out = append(out, entry{name, mode, data})
		return err
	})
	return out, err
}

// writeFile writes an archive to a file and gives its SHA-256.
func writeFile(path string, entries []entry, write func(io.Writer, []entry) error) (sum []byte, err error) {
	f, err := os.Create(path)
	if err != nil {
		return nil, err
	}
	h := sha256.New()
	err = write(io.MultiWriter(f, h), entries)
	return h.Sum(nil), errors.Join(err, f.Close())
}

func writeTarGz(w io.Writer, entries []entry) error {
	z, err := gzip.NewWriterLevel(w, gzip.BestCompression)
	if err != nil {
		return err
	}
	t := tar.NewWriter(z)
	for _, e := range entries {
		h := &tar.Header{Name: e.name, Mode: int64(e.mode), Size: int64(len(e.data)), ModTime: stamp, Format: tar.FormatUSTAR}
		if err := t.WriteHeader(h); err != nil {
			return err
		}
		if _, err := t.Write(e.data); err != nil {
			return err
		}
	}
	return errors.Join(t.Close(), z.Close())
}

func writeZip(w io.Writer, entries []entry) error {
	z := zip.NewWriter(w)
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) { return flate.NewWriter(w, flate.BestCompression) })
	for _, e := range entries {
		h := &zip.FileHeader{Name: e.name, Method: zip.Deflate, Modified: stamp}
		h.SetMode(e.mode)
		file, err := z.CreateHeader(h)
		if err != nil {
			return err
		}
		if _, err := file.Write(e.data); err != nil {
			return err
		}
	}
	return z.Close()
}
